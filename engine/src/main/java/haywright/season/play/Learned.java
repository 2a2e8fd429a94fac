package haywright.season.play;

import haywright.chance.Draws;
import haywright.season.given.Body;
import haywright.season.given.Energies;
import haywright.season.given.Facts;
import haywright.season.given.Season;
import java.util.Arrays;

/**
 * What is seen on the way of what is not known: bales are counted, so that the true weight of a lot shows as it is fed out,
 * and condition is scored every four weeks with an error, so that what the figures say of energy is corrected. It is the same
 * Gaussian update for all groups at once:
 * <pre>
 * lean = Σ(−d·N/σ²) / (Σ N²/σ² + 1/s²)      d = seen − expected reserve, N = Mcal needed so far, of one head
 * </pre>
 */
public final class Learned {
    private static final int WEEKS_BETWEEN_SCORES = 4;

    /** Of the energy of all lots together, beside what the herd itself needs (judgment). */
    private static final double FEED_SD = 0.04;

    private final Season season;
    private final Truth truth;
    private final Energies expected;
    private final Draws errors;
    private final double[] byFigures;
    private final double[] needed;
    private double lean;

    public Learned(Season season, Truth truth) {
        this.season = season;
        this.truth = truth;
        expected = Energies.expected(season.feeds());
        errors = new Draws(truth.seed());
        byFigures = season.eaters().stream()
                .mapToDouble(eater -> eater.body().map(Body::start).orElse(0.0))
                .toArray();
        needed = new double[byFigures.length];
    }

    public double lean() {
        return lean;
    }

    /** As the figures have it, corrected by what was seen. */
    public double[] reserve() {
        var seen = byFigures.clone();
        Arrays.setAll(seen, e -> seen[e] - lean * needed[e]);
        return seen;
    }

    /** kg as they are believed: bales left times what a bale is taken to weigh. */
    public double[] stock(Ledger ledger) {
        var kg = new double[season.feeds().size()];
        for (int f = 0; f < kg.length; f++) {
            double weight = truth.weight()[f];
            double all = season.feeds().get(f).kg() * weight;
            double share = all > 0 ? Math.min(1, ledger.fed(f) / all / Facts.value("learned_share")) : 1;
            kg[f] = ledger.kg(f) * (1 + (1 / weight - 1) * (1 - share));
        }
        return kg;
    }

    public void after(int week, int[] days, double[][] eaten, double[] reserve) {
        for (int e = 0; e < needed.length; e++) {
            var eater = season.eaters().get(e);
            if (eater.body().isPresent() && days[e] > 0) {
                double nem = season.record().need(truth.winter(), e, week).nem() * days[e];
                needed[e] += nem;
                double over = Judged.sum(expected.nem(), eaten[e]) - nem * eater.head();
                byFigures[e] += Condition.change(eater, week, days[e], over).perHead();
            }
        }
        if ((week + 1) % WEEKS_BETWEEN_SCORES == 0) {
            score(reserve);
        }
    }

    private void score(double[] reserve) {
        double known = 1 / (Math.pow(Facts.value("animals_sd") / 100, 2) + FEED_SD * FEED_SD);
        double sum = 0;
        for (int e = 0; e < reserve.length; e++) {
            var body = season.eaters().get(e).body();
            if (body.isPresent() && needed[e] > 0) {
                double error = Facts.value("score_sd") * body.get().mcalAScore();
                double noise = truth.seed() == 0 ? 0 : error * errors.normal();
                double apart = reserve[e] + noise - byFigures[e];
                known += needed[e] * needed[e] / (error * error);
                sum -= apart * needed[e] / (error * error);
            }
        }
        lean = sum / known;
    }
}
