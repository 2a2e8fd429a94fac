package haywright.forage.lot;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import haywright.forage.Analyte;
import haywright.forage.FeedClass;
import haywright.forage.book.FeedBook;
import haywright.forage.book.Prior;
import haywright.forage.lab.Tested;
import haywright.sampling.Design;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * What a report that is not made yet would read agrees with what it would do to the estimate: by the law of total variance
 * what is not known now is what would be left on average after it, and how far it would move the middle.
 */
class NextReportTest {
    private static final Prior PRIOR = Prior.of(
                    FeedClass.GRASS_HAY, FeedBook.published().usual(FeedClass.GRASS_HAY))
            .orElseThrow();

    private static Tested report(String laboratory, Map<Analyte, Double> values, Map<Analyte, Double> below) {
        return new Tested(laboratory, Tested.Method.WET, "", Design.of(12, 1, 1), 100, values, Map.of(), below);
    }

    private static double scale(Analyte analyte, double value) {
        return PRIOR.cells().get(PRIOR.index(analyte)).marginal().onScale(value);
    }

    private static double value(Analyte analyte, double onScale) {
        return PRIOR.cells().get(PRIOR.index(analyte)).marginal().log() ? Math.exp(onScale) : onScale;
    }

    /** Of a lot never tested, tested once by the same laboratory, and by it and another with a limit in place of a figure. */
    @ParameterizedTest
    @ValueSource(ints = {0, 1, 2})
    void whatIsNotKnownIsWhatWouldBeLeftAndHowFarItWouldMove(int before) {
        var tested = new ArrayList<Tested>();
        if (before >= 1) {
            tested.add(report("north", Map.of(Analyte.CP, 8.5, Analyte.ADF, 38.0, Analyte.CA, 0.5), Map.of()));
        }
        if (before >= 2) {
            tested.add(report("south", Map.of(Analyte.CP, 9.5), Map.of(Analyte.P, 0.3)));
        }
        var now = LotEstimate.of(PRIOR, tested);
        var like = report("north", Map.of(Analyte.CP, 9.0, Analyte.ADF, 37.0, Analyte.P, 0.2), Map.of());
        var next = now.next(like);
        assertThat(next.analytes()).containsExactlyInAnyOrder(Analyte.CP, Analyte.ADF, Analyte.P);
        // what is only less than a limit is matched anew beside every figure: by two moments, not to the last digit
        double exact = before < 2 ? 1e-6 : 1e-2;
        int n = next.size();
        var middle = new double[n];
        var step = new double[n];
        for (int k = 0; k < n; k++) {
            middle[k] = next.reads().mean(k);
            step[k] = next.reads().sd(k);
            assertThat(step[k]).isPositive();
        }
        var at = after(tested, next, middle);
        for (int i = 0; i < PRIOR.cells().size(); i++) {
            // a report that reads as it is expected moves nothing
            assertThat(at.theta().mean(i))
                    .isCloseTo(now.theta().mean(i), within(exact * now.theta().sd(i)));
            double moves = 0;
            var gain = new double[n];
            for (int k = 0; k < n; k++) {
                var higher = middle.clone();
                higher[k] += step[k];
                gain[k] = (after(tested, next, higher).theta().mean(i)
                                - at.theta().mean(i))
                        / step[k];
            }
            for (int k = 0; k < n; k++) {
                for (int l = 0; l < n; l++) {
                    moves += gain[k] * next.reads().covariance(k, l) * gain[l];
                }
            }
            double all = Math.pow(now.theta().sd(i), 2);
            assertThat(moves + Math.pow(at.theta().sd(i), 2)).isCloseTo(all, within(exact * all));
        }
    }

    private static LotEstimate after(List<Tested> tested, NextReport next, double[] reads) {
        var values = new java.util.EnumMap<Analyte, Double>(Analyte.class);
        for (int k = 0; k < reads.length; k++) {
            values.put(next.analytes().get(k), value(next.analytes().get(k), reads[k]));
            assertThat(scale(next.analytes().get(k), value(next.analytes().get(k), reads[k])))
                    .isCloseTo(reads[k], within(1e-9));
        }
        var all = new ArrayList<>(tested);
        all.add(report("north", values, Map.of()));
        return LotEstimate.of(PRIOR, all);
    }
}
