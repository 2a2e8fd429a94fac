package haywright.season.play;

import haywright.season.given.Forecast;
import haywright.season.given.Season;
import java.util.Arrays;

/**
 * What a plan is made for: one winter to come, as it is expected or as it is.
 *
 * @param nem Mcal a head and day, by group and week
 * @param factor on free-choice intake, by group and week, appetite included
 * @param hard standard deviations by which the winter will have been harder than usual, by week: what purchases cost
 * @param late days that grass comes late
 */
@SuppressWarnings("ArrayRecordComponent")
public record Ahead(double[][] nem, double[][] factor, double[] hard, double late) {
    /** As a forecast has it. @param h hardness */
    public static Ahead expected(Season season, Forecast forecast, Known known, double h) {
        int eaters = season.eaters().size();
        var nem = new double[eaters][season.allWeeks()];
        var factor = new double[eaters][season.allWeeks()];
        for (int e = 0; e < eaters; e++) {
            for (int t = known.week(); t < season.allWeeks(); t++) {
                nem[e][t] = Math.max(0, forecast.nem(e, t, known.week(), known.departed(), h) * (1 + known.lean()));
                factor[e][t] = forecast.factor(e, t, known.week(), h)
                        * season.appetite().times();
            }
        }
        var hard = new double[season.allWeeks()];
        Arrays.fill(hard, known.hardSoFar());
        return new Ahead(nem, factor, hard, forecast.late(h, known.late()));
    }

    /** As it truly is. */
    public static Ahead known(Season season, Forecast forecast, Truth truth) {
        int eaters = season.eaters().size();
        var nem = new double[eaters][season.allWeeks()];
        var factor = new double[eaters][season.allWeeks()];
        for (int e = 0; e < eaters; e++) {
            for (int t = 0; t < season.allWeeks(); t++) {
                var need = season.record().need(truth.winter(), e, t);
                nem[e][t] = need.nem() * truth.animals();
                factor[e][t] = need.factor() * truth.appetite();
            }
        }
        var hard = new double[season.allWeeks()];
        Arrays.setAll(hard, t -> forecast.hardSoFar(truth.winter(), t));
        return new Ahead(nem, factor, hard, season.record().late()[truth.winter()]);
    }
}
