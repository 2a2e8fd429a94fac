package haywright.forage.hazard;

import static org.assertj.core.api.Assertions.assertThat;

import haywright.forage.Analyte;
import haywright.forage.Composition;
import haywright.forage.hazard.MineralTies.Tie;
import haywright.workings.Origin;
import java.util.EnumMap;
import java.util.List;
import org.junit.jupiter.api.Test;

class MineralTiesTest {
    private static List<MineralTies.Finding> of(Object... pairs) {
        var values = new EnumMap<Analyte, Composition.Known>(Analyte.class);
        for (int i = 0; i < pairs.length; i += 2) {
            values.put(
                    (Analyte) pairs[i],
                    new Composition.Known(((Number) pairs[i + 1]).doubleValue(), new Origin.Typed("report")));
        }
        return new MineralTies(new Composition(values)).findings();
    }

    // Limits in use, from memory: Cu:Mo under 3 to 4, Mo over 1 to 2 ppm, S over 0.3 %, Fe over 250 to 400 ppm.
    @Test
    void whatTiesUpCopperIsNamedWithBothLimits() {
        assertThat(of(Analyte.CU, 6, Analyte.MO, 1.8))
                .extracting(MineralTies.Finding::words)
                .containsExactly(
                        "copper to molybdenum 3.3 to 1, below 4 to 1 (others say 3)",
                        "molybdenum 1.8 ppm, above 1 ppm (others say 2)");
        assertThat(of(Analyte.CU, 8, Analyte.MO, 0.9)).isEmpty();
        assertThat(of(Analyte.FE, 300))
                .singleElement()
                .satisfies(f -> assertThat(f.clear()).isFalse());
        assertThat(of(Analyte.FE, 500))
                .singleElement()
                .satisfies(f -> assertThat(f.clear()).isTrue());
        assertThat(of(Analyte.S, 0.31)).hasSize(1);
        assertThat(of(Analyte.S, 0.3)).isEmpty();
    }

    // NZ tetany pastures, means of 27 sites: K 3.29, Ca 0.39, Mg 0.19 %, ratio of means 2.40 (mean of ratios 2.45).
    @Test
    void tetanyPasturesAreNamedByAllThreeSigns() {
        assertThat(of(Analyte.K, 3.29, Analyte.CA, 0.39, Analyte.MG, 0.19))
                .extracting(MineralTies.Finding::tie)
                .containsExactly(Tie.TETANY, Tie.TETANY, Tie.TETANY);
        assertThat(of(Analyte.K, 2.0, Analyte.CA, 1.0, Analyte.MG, 0.25)).isEmpty();
    }

    @Test
    void calciumIsHeldAgainstPhosphorus() {
        assertThat(of(Analyte.CA, 1.5, Analyte.P, 0.2))
                .singleElement()
                .satisfies(f -> assertThat(f.words()).isEqualTo("calcium to phosphorus 7.5 to 1, above 7"));
        assertThat(of(Analyte.CA, 0.03, Analyte.P, 0.3))
                .singleElement()
                .satisfies(f -> assertThat(f.words()).endsWith("below 1"));
        assertThat(of(Analyte.CA, 0.6, Analyte.P, 0.3)).isEmpty();
    }

    @Test
    void whatIsNotKnownIsNoFinding() {
        assertThat(of()).isEmpty();
        assertThat(of(Analyte.CU, 5)).isEmpty();
        assertThat(of(Analyte.CA, 1.4)).isEmpty();
    }
}
