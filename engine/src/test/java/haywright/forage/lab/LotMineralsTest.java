package haywright.forage.lab;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import haywright.forage.Analyte;
import haywright.forage.Marginal;
import haywright.forage.book.Prior;
import haywright.forage.lot.LotEstimate;
import haywright.sampling.Design;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** One mineral measured alone, by closed forms over the figures of priors.csv, within_lot.csv and laboratory.csv. */
class LotMineralsTest {
    private static final double SAME = 1e-9;

    private static Marginal now(String kind, Design design, Tested.Method method, Analyte analyte, double value) {
        var tested = new Tested("", method, "", design, 0, Map.of(analyte, value));
        return LotEstimate.of(Prior.named(kind).orElseThrow(), List.of(tested))
                .estimate(analyte)
                .orElseThrow()
                .now();
    }

    /** Calcium of barley: 0.06, SD of ln 0.20; a load 20 %, a laboratory 6 %, each as sqrt(ln(1 + CV²)). */
    @Test
    void mineralsAreWeighedOnTheLogarithm() {
        double error = Math.log1p(0.20 * 0.20) + Math.log1p(0.06 * 0.06);
        double kind = 0.2 * 0.2;
        double weight = kind / (kind + error);
        var calcium = now("barley_grain", Tested.ONE_GRAB, Tested.Method.WET, Analyte.CA, 0.09);
        double sd = Math.sqrt(kind * (1 - weight));
        double center = 0.06 * Math.pow(0.09 / 0.06, weight);
        assertThat(calcium.center()).isCloseTo(center, within(SAME));
        assertThat(calcium.sd()).isCloseTo(sd, within(SAME));
        assertThat(calcium.high90()).isCloseTo(center * Math.exp(1.6448536269514722 * sd), within(SAME));
        assertThat(calcium.mean()).isCloseTo(center * Math.exp(sd * sd / 2), within(SAME));
        assertThat(calcium.standardDeviation())
                .isCloseTo(center * Math.exp(sd * sd / 2) * Math.sqrt(Math.exp(sd * sd) - 1), within(SAME));
    }

    /**
     * Phosphorus of alfalfa-grass hay: 0.19, SD of ln 0.28; a core 8 %; a laboratory 6 %, by NIR seven tenths of how lots
     * differ, and where it does not say how it worked halfway between. So ten cores keep 95, 67 and 78 hundredths of the
     * way from the kind to the result, and one grab 89, 64 and 74.
     */
    @ParameterizedTest
    @CsvSource({
        "WET, 10, 0.95",
        "NIR, 10, 0.67",
        "UNKNOWN, 10, 0.78",
        "WET, 1, 0.89",
        "NIR, 1, 0.64",
        "UNKNOWN, 1, 0.74"
    })
    void phosphorusGoesAsFarAsItsMethodLetsIt(Tested.Method method, int cores, double share) {
        double lots = 0.28 * 0.28;
        double wet = Math.log1p(0.06 * 0.06);
        double nir = 0.7 * 0.7 * lots;
        double laboratory = switch (method) {
            case WET -> wet;
            case NIR -> nir;
            case UNKNOWN -> (wet + nir) / 2;
        };
        double weight = lots / (lots + Math.log1p(0.08 * 0.08 / cores) + laboratory);
        var phosphorus = now("alfalfa_grass_hay", Design.of(cores, 1, 1), method, Analyte.P, 0.30);
        assertThat(weight).isCloseTo(share, within(0.005));
        assertThat(phosphorus.center()).isCloseTo(0.19 * Math.pow(0.30 / 0.19, weight), within(SAME));
        assertThat(phosphorus.sd()).isCloseTo(0.28 * Math.sqrt(1 - weight), within(SAME));
    }
}
