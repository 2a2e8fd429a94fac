package haywright.ration;

import static haywright.ration.Lots.calf;
import static haywright.ration.Lots.cold;
import static haywright.ration.Lots.cow;
import static haywright.ration.Lots.lot;
import static haywright.ration.Lots.mild;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import haywright.cattle.Published;
import haywright.diet.Diet;
import haywright.diet.DietOptions;
import haywright.diet.DietRow;
import haywright.diet.Sureness;
import haywright.forage.Analyte;
import haywright.forage.FeedClass;
import haywright.forage.lot.Shared;
import haywright.lp.Optimum;
import haywright.ration.LeastCostRation.Amounts;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.ojalgo.optimisation.ExpressionsBasedModel;

/**
 * Rations held against what shares nothing with them: another solver from the ration's own MPS, the cone rows written out
 * again, prices by small changes, and how often all holds by plain draws.
 */
class RationsByOtherMeansTest {
    private static final int QUESTIONS = 60;

    // Standard normal quantiles as any table prints them: 75, 90 and 99 %.
    private static final double Z75 = 0.674490;
    private static final double Z90 = 1.281552;
    private static final double Z99 = 2.326348;

    @Test
    void anUnrelatedSolverFindsTheSameCost(@TempDir Path folder) throws Exception {
        var random = new RandomQuestions(31);
        int compared = 0;
        for (int k = 0; k < QUESTIONS; k++) {
            var asked = random.next();
            for (var sureness : List.of(Sureness.EXPECTED, Sureness.USUAL)) {
                for (var amounts : Amounts.values()) {
                    if (asked.as(sureness, amounts).solve() instanceof Ration ration) {
                        var file = Files.writeString(
                                folder.resolve("ration.mps"), ration.program().toMps());
                        var other = ExpressionsBasedModel.parse(file.toFile()).minimise();
                        assertThat(other.getState().isOptimal()).isTrue();
                        assertThat(other.getValue())
                                .as("question %d, %s, %s", k, sureness, amounts)
                                .isCloseTo(ration.cost(), within(1e-6 * ration.cost()));
                        assertThat(ration.portions().stream()
                                        .mapToDouble(Portion::cost)
                                        .sum())
                                .isCloseTo(ration.cost(), within(1e-6 * ration.cost()));
                        compared++;
                    }
                }
            }
        }
        assertThat(compared).isGreaterThan(3 * QUESTIONS);
    }

    /** The program holds its cones from outside: what it ends at must keep them as the equations have them. */
    @Test
    void whatIsSureKeepsEveryConeWrittenOutAgain() {
        var random = new RandomQuestions(32);
        int compared = 0;
        for (int k = 0; k < 2 * QUESTIONS; k++) {
            var answer = random.next().as(Sureness.USUAL, Amounts.EXACT).solve();
            if (answer instanceof Ration ration && ration.sureness().equals(Sureness.USUAL)) {
                var diet = ration.diet();
                var kg = amounts(ration);
                for (var row : diet.rows()) {
                    double z =
                            row.kind() == DietRow.Kind.DANGER ? Z99 : row.id().equals("nem") ? Z75 : Z90;
                    double sd = sd(diet, kg, i -> row.spread(diet.feeds().get(i)));
                    double sum = row.beside() - (row.isRatio() ? 0 : row.limit());
                    double size = Math.abs(sum);
                    for (int i = 0; i < kg.length; i++) {
                        double adds = kg[i]
                                * (row.top().get(i)
                                        - (row.isRatio()
                                                ? row.limit() * row.bottom().get(i)
                                                : 0));
                        sum += adds;
                        size += Math.abs(adds);
                    }
                    double left = (row.sense() == DietRow.Sense.AT_LEAST ? sum : -sum) - z * sd;
                    assertThat(left).as("question %d, %s", k, row.id()).isGreaterThanOrEqualTo(-1e-6 * size);
                    compared += sd > 0 ? 1 : 0;
                }
                if (diet.growth().isPresent()) {
                    double u = surely(diet, kg, Analyte.NEM);
                    double v = surely(diet, kg, Analyte.NEG);
                    assertThat(diet.need().nem() / u + diet.need().neg() / v).isLessThan(1 + 1e-6);
                }
            }
        }
        assertThat(compared).isGreaterThan(4 * QUESTIONS);
    }

    private static double surely(Diet diet, double[] kg, Analyte analyte) {
        double sum = 0;
        for (int i = 0; i < kg.length; i++) {
            sum += kg[i] * diet.feeds().get(i).composition().value(analyte).orElse(0);
        }
        return sum
                - Z75
                        * sd(
                                diet,
                                kg,
                                i -> diet.feeds()
                                        .get(i)
                                        .lot()
                                        .map(lot -> lot.of(
                                                made -> made.value(analyte).orElse(0)))
                                        .orElse(haywright.forage.lot.Spread.certain(0)));
    }

    private static double sd(
            Diet diet, double[] kg, java.util.function.IntFunction<haywright.forage.lot.Spread> spread) {
        double squares = 0;
        var shared = new HashMap<Shared, Double>();
        for (int i = 0; i < diet.feeds().size(); i++) {
            var one = spread.apply(i);
            double eaten = kg[i];
            squares += Math.pow(eaten * one.own(), 2);
            one.shared().forEach((doubt, by) -> shared.merge(doubt, eaten * by, Double::sum));
        }
        return Math.sqrt(
                squares + shared.values().stream().mapToDouble(s -> s * s).sum());
    }

    private static double[] amounts(Ration ration) {
        var kg = new double[ration.diet().feeds().size()];
        ration.portions().forEach(p -> kg[ration.diet().feeds().indexOf(p.feed().feed())] = p.kg());
        return kg;
    }

    /** A price lies between what a little less and a little more of the limit really change, of sure rows too. */
    @Test
    void pricesAreWhatASmallChangeCosts() {
        var random = new RandomQuestions(33);
        int compared = 0;
        for (int k = 0; k < 2 * QUESTIONS; k++) {
            var asked = random.next().with(DietOptions.USUAL);
            for (var sureness : List.of(Sureness.EXPECTED, Sureness.USUAL)) {
                var question = asked.as(sureness, Amounts.EXACT);
                if (!(question.solve() instanceof Ration ration)
                        || !ration.sureness().equals(sureness)
                        || !ration.diet().options().isCareful()) {
                    continue;
                }
                for (var limit : ration.limits()) {
                    if (limit.price() > 1e-6 && limit.row().kind() == DietRow.Kind.NEED) {
                        double step = 2e-3 * Math.abs(limit.row().limit());
                        double dearer = limit.row().sense() == DietRow.Sense.AT_LEAST ? step : -step;
                        double up = moved(ration, asked.feeds(), sureness, limit.row(), dearer) - ration.cost();
                        double down = ration.cost() - moved(ration, asked.feeds(), sureness, limit.row(), -dearer);
                        // of a convex cost: the slope behind is no more, the slope ahead no less
                        double exactness = 4e-6 * ration.cost() / step;
                        assertThat(limit.price())
                                .as(
                                        "question %d, %s, %s",
                                        k, sureness, limit.row().id())
                                .isBetween(down / step - exactness, up / step + exactness);
                        compared++;
                    }
                }
            }
        }
        assertThat(compared).isGreaterThan(3 * QUESTIONS);
    }

    /** Infinite where the moved limit leaves no ration. */
    private static double moved(Ration ration, List<PricedFeed> feeds, Sureness sureness, DietRow row, double by) {
        int index = ration.diet().rows().indexOf(row);
        var diet = index >= 0 ? ration.diet().withLimit(index, row.limit() + by) : ration.diet();
        try (var program = new RationProgram(diet, feeds, sureness)) {
            if (index < 0) {
                program.gain(row.limit() + by);
            }
            return program.solve() instanceof Optimum optimum
                    ? optimum.objective()
                    : by > 0 ? Double.POSITIVE_INFINITY : Double.NaN;
        }
    }

    /**
     * How often all holds, by plain draws of another generator: protein and TDN each by a bell of its own about what was
     * stated, and stated TDN off by 4 points for all alike ({@code StatedTdn}), every other figure certain, energy by its polynomial of TDN written out again, needs compared one by one.
     */
    @Test
    void asOftenAsPlainDrawsSay() {
        var hay = doubtful("hay", FeedClass.GRASS_HAY, 120, 55, 8.5, 1.2);
        var straw = doubtful("straw", FeedClass.STRAW, 60, 44, 4.5, 0.6);
        var barley = doubtful("barley", FeedClass.GRAIN, 200, 83, 12.5, 1.1);
        var meal = doubtful("meal", FeedClass.DISTILLERS_GRAINS, 230, 84, 29, 2);
        var feeds = Lots.withMineral(hay, straw, barley, meal);
        var random = new Random(20_261_129);
        int below = 0;
        for (var need : List.of(cold(cow(1300, 200, 0), -10), mild(cow(1300, 0, 6)), mild(calf(550, 1.3)))) {
            for (var sureness : List.of(Sureness.EXPECTED, Sureness.of(75), Sureness.USUAL)) {
                var ration =
                        (Ration) new LeastCostRation(feeds, need, DietOptions.USUAL, sureness, Amounts.EXACT).solve();
                double[] kg = amounts(ration);
                double floor = ration.limit("cp_floor").row().limit();
                double[] undegradable = ration.diet().feeds().stream()
                        .mapToDouble(f -> f.composition().value(Analyte.RUP).orElse(18.75) / 100)
                        .toArray();
                var certain = ration.limits().stream()
                        .filter(l -> List.of("ca", "p").contains(l.row().id()))
                        .allMatch(LimitAnswer::isMet);
                assertThat(certain).isTrue();
                int kept = 0;
                int all = 40_000;
                for (int draw = 0; draw < all; draw++) {
                    double nem = 0;
                    double neg = 0;
                    double cp = 0;
                    double eaten = 0;
                    double byEnergy = 0;
                    double byProtein = 0;
                    double stated = 4 * random.nextGaussian();
                    for (int i = 0; i < kg.length; i++) {
                        eaten += kg[i];
                        var feed = DOUBTFUL.get(ration.diet().feeds().get(i).id());
                        if (feed != null) {
                            double tdn = feed[0] + 3 * random.nextGaussian() + stated;
                            double protein = Math.max(0, feed[1] + feed[2] * random.nextGaussian());
                            nem += kg[i] * Published.nem(tdn);
                            neg += kg[i] * neg(tdn);
                            cp += kg[i] * protein / 100;
                            // NRC 1996, written out: 0.13 of TDN eaten, less below 55; of what passes 80 % counts
                            double e = Math.max(0.07, 0.13 - 0.006 * Math.max(0, 55 - tdn));
                            double passes = 0.80 * undegradable[i] * protein;
                            byEnergy += 10 * kg[i] * (0.64 * e * tdn + passes);
                            byProtein += 10 * kg[i] * (0.64 * (1 - undegradable[i]) * protein + passes);
                        }
                    }
                    boolean energy = need.neg() > 0
                            ? need.nem() / nem + need.neg() / neg <= 1 + 1e-6
                            : nem >= need.nem() * (1 - 1e-6);
                    boolean protein = cp >= need.crudeProtein() * (1 - 1e-6) && 100 * cp / eaten >= floor * (1 - 1e-6);
                    boolean made = Math.min(byEnergy, byProtein) >= need.metabolizableProtein() * (1 - 1e-6);
                    kept += energy && protein && made ? 1 : 0;
                }
                double percent = 100.0 * kept / all;
                // three standard errors of both counts together
                double error = 300 * Math.sqrt(0.25 / all + 0.25 / JointChance.DRAWS);
                assertThat(ration.chance().percent())
                        .as("%s, %s", need.animals(), sureness)
                        .isCloseTo(percent, within(error));
                below += percent < 90 ? 1 : 0;
            }
        }
        assertThat(below).isPositive();
    }

    private static final Map<String, double[]> DOUBTFUL = new HashMap<>();

    private static PricedFeed doubtful(String name, FeedClass kind, double price, double tdn, double cp, double sd) {
        DOUBTFUL.put(name, new double[] {tdn, cp, sd});
        var sds = new HashMap<Analyte, Double>();
        for (var analyte : Analyte.values()) {
            sds.put(analyte, 0.0);
        }
        sds.put(Analyte.TDN, 3.0);
        sds.put(Analyte.CP, sd);
        return lot(name, kind, "", price, Map.of(Analyte.TDN, tdn, Analyte.CP, cp), sds);
    }

    /** NEg, Mcal/kg, of a diet by its TDN: NRC 1996, written out here. */
    private static double neg(double tdn) {
        double me = 0.82 * 0.04409 * tdn;
        return 1.42 * me - 0.174 * me * me + 0.0122 * me * me * me - 1.65;
    }
}
