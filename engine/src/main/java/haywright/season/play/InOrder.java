package haywright.season.play;

import haywright.forage.Analyte;
import haywright.season.given.Forecast;
import haywright.season.given.Season;
import java.util.Arrays;

/**
 * Lots fed one after the other in the order in which the ranch has them, each group as much as its energy asks; then hay that
 * is for sale; then emergency hay. Nothing is planned.
 */
public final class InOrder implements Policy {
    private static final String FILL = "fill";
    private static final double GRAMS = 1000;

    private final Season season;
    private final Forecast forecast;

    public InOrder(Season season, Forecast forecast) {
        this.season = season;
        this.forecast = forecast;
    }

    @Override
    public Decision next(Known known) {
        int feeds = season.feeds().size();
        var eaten = new double[season.eaters().size()][feeds];
        var left = known.stock().clone();
        Arrays.setAll(left, f -> left[f] + known.canBuy()[f]);
        for (int e = 0; e < eaten.length; e++) {
            double share = 1;
            for (int f = 0; f < feeds && share > 0; f++) {
                if (season.feeds().get(f).isForage() && isFed(e, known.week(), f)) {
                    double wanted = share * alone(known, e, f);
                    double putOut = season.feeds().get(f).priced().putOut(wanted);
                    double taken = season.feeds().get(f).isTracked() ? Math.min(putOut, left[f]) : putOut;
                    left[f] -= taken;
                    eaten[e][f] = season.feeds().get(f).priced().eaten(taken);
                    share -= putOut > 0 ? share * taken / putOut : 0;
                }
            }
            mineral(known, e, eaten[e]);
        }
        return new Decision(eaten, new double[feeds]);
    }

    private boolean isFed(int e, int week, int f) {
        return Arrays.stream(season.eaters().get(e).stages().get(week).feeds()).anyMatch(i -> i == f);
    }

    /** kg of dry matter of one forage that carries a group alone, as far as they can hold it. */
    private double alone(Known known, int e, int f) {
        var eater = season.eaters().get(e);
        var stage = eater.stages().get(known.week());
        double nem = forecast.nem(e, known.week(), known.week(), known.departed(), 0);
        var feed = season.feeds().get(f);
        double perKg = feed.value(Analyte.NEM);
        double gain = feed.value(Analyte.NEG);
        double kg = nem / perKg
                + stage.growth()
                        .map(growth -> growth.neg() / Math.max(0.1, gain))
                        .orElse(0.0);
        double most = Double.POSITIVE_INFINITY;
        for (var row : stage.diet().rows()) {
            if (row.id().equals(FILL)) {
                most = row.limit()
                        / row.law()
                                .perKg(
                                        feed.priced().feed(),
                                        feed.priced().feed().composition(),
                                        0);
            }
        }
        return Math.min(kg, most) * eater.head() * known.days()[e];
    }

    private void mineral(Known known, int e, double[] eaten) {
        var eater = season.eaters().get(e);
        for (var row : eater.stages().get(known.week()).diet().rows()) {
            if (row.id().equals("mineral")) {
                for (int f = 0; f < eaten.length; f++) {
                    if (season.feeds().get(f).priced().feed().isLooseMineral()) {
                        eaten[f] = row.limit() / GRAMS * eater.head() * known.days()[e];
                        return;
                    }
                }
            }
        }
    }

    @Override
    public void close() {}
}
