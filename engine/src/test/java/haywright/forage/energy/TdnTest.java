package haywright.forage.energy;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import haywright.FormulaCheck;
import haywright.forage.Analyte;
import haywright.forage.FeedClass;
import haywright.forage.book.FeedBook;
import haywright.workings.Origin;
import haywright.workings.Refused;
import haywright.workings.Source;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class TdnTest {
    // Worked by hand from the published coefficients, at 40 % ADF; the two-step lines go through NEl.
    @ParameterizedTest(name = "{0} at ADF 40 is {1}")
    @CsvSource({
        "midwest-ddm, 57.74",
        "corn-silage, 59.84",
        "shelled-corn, 30.82",
        "ear-corn, 22.64",
        "western-alfalfa, 52.32",
        "penn-state-legume, 55.902128",
        "penn-state-mixed, 51.59192",
        "penn-state-grass, 48.44906",
        "penn-state-corn-silage, 60.4988",
        "alfalfa-96, 50.35",
        "legume-grass-100, 55.6",
        "grass-98, 56.705"
    })
    void eachPublishedLineIsItsOwn(String id, double byHand) {
        var tdn = new AdfTdn(AdfEquation.named(id), 40);
        assertThat(tdn.percent()).isCloseTo(byHand, within(1e-9));
        FormulaCheck.reEvaluates(tdn);
    }

    @Test
    void moreFiberIsNeverMoreTdn() {
        for (var equation : AdfEquation.published()) {
            for (double adf = 21; adf <= 50; adf++) {
                assertThat(new AdfTdn(equation, adf).percent())
                        .as(equation.id())
                        .isLessThan(new AdfTdn(equation, adf - 1).percent());
            }
        }
    }

    @Test
    void everyLineIsInTheTableOnceWithItsSource() {
        assertThat(AdfEquation.published())
                .hasSize(12)
                .extracting(AdfEquation::id)
                .doesNotHaveDuplicates();
        assertThat(AdfEquation.published())
                .allSatisfy(e -> assertThat(e.source().cite()).isNotBlank());
    }

    @Test
    void aClassHasItsLineForAReasonOrNone() {
        assertThat(AdfEquation.usual(FeedClass.LEGUME_HAY)
                        .orElseThrow()
                        .equation()
                        .id())
                .isEqualTo("western-alfalfa");
        for (var hay : List.of(FeedClass.GRASS_HAY, FeedClass.MIXED_HAY, FeedClass.LEGUME_HAY)) {
            assertThat(AdfEquation.usual(hay).orElseThrow().equation().isReadFor(hay))
                    .isTrue();
        }
        assertThat(AdfEquation.usual(FeedClass.CEREAL_HAY)
                        .orElseThrow()
                        .equation()
                        .isReadFor(FeedClass.CEREAL_HAY))
                .as("no line for small grains was read")
                .isFalse();
        assertThat(AdfEquation.usual(FeedClass.MIXED_HAY).orElseThrow().reason())
                .isNotBlank();
        assertThat(AdfEquation.usual(FeedClass.STRAW)).isEmpty();
        assertThat(AdfEquation.usual(FeedClass.PROTEIN_MEAL)).isEmpty();
    }

    // The reason given for the grass line, held against the book rows it speaks of (they are from memory).
    @Test
    void theGrassLineLiesWithinThreePointsOfTheBooksGrassHays() {
        int rows = 0;
        var line = AdfEquation.named("grass-98");
        for (var feedClass : new FeedClass[] {FeedClass.GRASS_HAY, FeedClass.CEREAL_HAY, FeedClass.CEREAL_SILAGE}) {
            for (var row : FeedBook.published().rows(feedClass)) {
                var adf = row.composition().value(Analyte.ADF);
                var tdn = row.composition().value(Analyte.TDN);
                if (adf.isPresent() && tdn.isPresent()) {
                    rows++;
                    assertThat(new AdfTdn(line, adf.getAsDouble()).percent())
                            .as(row.feed())
                            .isCloseTo(tdn.getAsDouble(), within(3.0));
                }
            }
        }
        assertThat(rows).isEqualTo(5);
    }

    @Test
    void anUnknownLineIsRefusedWithThoseThereAre() {
        assertThatThrownBy(() -> AdfEquation.named("western"))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("no equation from ADF has this name")
                .hasMessageContaining("western-alfalfa");
    }

    @ParameterizedTest
    @ValueSource(doubles = {-0.1, 100.1, Double.NaN, Double.POSITIVE_INFINITY})
    void anImpossibleFiberIsRefused(double adf) {
        assertThatThrownBy(() -> new AdfTdn(AdfEquation.named("grass-98"), adf))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("a share of dry matter is a number from 0 to 100 %");
    }

    @Test
    void aLineSaysWhereItStopsBeingTrue() {
        assertThat(new AdfTdn(AdfEquation.named("grass-98"), 52).inRange()).isFalse();
        assertThat(new AdfTdn(AdfEquation.named("grass-98"), 42).inRange()).isTrue();
    }

    // NRC 2001, Table 15-1, wheat straw: inputs, equation and answer from memory.
    @Test
    void theTwoSummativeEquationsAgreeOnAForageWithoutProcessing() {
        var straw = new Fractions(73, 1.6, 8.8, 4.8, 1.2, 1.6, 7.6);
        var weiss = new WeissTdn(straw);
        assertThat(weiss.percent())
                .isCloseTo(new SummativeTdn(straw, SummativeTdn.Kind.FORAGE, 1).percent(), within(1e-9));
        FormulaCheck.reEvaluates(weiss);
    }

    @Test
    void aSampleWithoutProteinOrFatOrFiberStillHasWorkings() {
        var starch = new Fractions(0, 0, 0, 0, 0, 0.5, 0.5);
        FormulaCheck.reEvaluates(new WeissTdn(starch));
        FormulaCheck.reEvaluates(new SummativeTdn(starch, SummativeTdn.Kind.CONCENTRATE, 1));
    }

    @Test
    void fractionsOfNoSampleAreRefusedTogether() {
        assertThatThrownBy(() -> new Fractions(40, 2, 45, 10, 12, 3, 8))
                .isInstanceOfSatisfying(
                        Refused.class,
                        refused -> assertThat(refused.problems())
                                .extracting(p -> p.field())
                                .containsExactly("lignin", "adicp"))
                .hasMessageContaining("lignin is part of NDF without its protein and cannot be more");
        assertThatThrownBy(() -> new Fractions(70, 2, 5, 20, 1, 5, 10))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("add up to 103 %");
        assertThatThrownBy(() -> new Fractions(Double.NaN, 2, 5, 400, 1, 5, 10))
                .isInstanceOfSatisfying(
                        Refused.class, refused -> assertThat(refused.problems()).hasSize(2))
                .hasMessageContaining("CP 400 %");
    }

    @Test
    void aStatedTdnKeepsWhoStatedIt() {
        var stated = new StatedTdn(58.2, new Origin.Published(Source.read("a book")));
        FormulaCheck.reEvaluates(stated);
        assertThat(stated.lines().get(0).inputs().get(0).origin()).isEqualTo(stated.origin());
        assertThatThrownBy(() -> new StatedTdn(Double.NaN, Origin.TYPED))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("TDN of a feed is from 20 to 110 % of dry matter");
    }

    /** By hand from the printed coefficients: NFE 100 − 10 − 2 − 32 − 8 = 48; 7.5 + 16 + 43.2 + 4.05 = 70.75. */
    @Test
    void proximateTdnIsTheSumOfItsDigestedFractions() {
        var hay = new ProximateTdn(10, 32, 2, 8);
        assertThat(hay.nitrogenFreeExtract()).isCloseTo(48, within(1e-12));
        assertThat(hay.percent()).isCloseTo(70.75, within(1e-12));
        FormulaCheck.reEvaluates(hay);
        assertThatThrownBy(() -> new ProximateTdn(40, 60, 2, 8))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("parts of the dry matter");
    }
}
