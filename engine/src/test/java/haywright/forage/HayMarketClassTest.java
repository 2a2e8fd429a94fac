package haywright.forage;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Map;
import java.util.OptionalDouble;
import java.util.function.Function;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class HayMarketClassTest {
    // USDA AMS alfalfa and grass hay classes as reprinted (allqualityhay.com/resources); fair and utility from memory.
    @ParameterizedTest(name = "{0} hay with {1} {2} is {3}")
    @CsvSource({
        "LEGUME_HAY, ADF, 26.9, SUPREME",
        "LEGUME_HAY, ADF, 28, PREMIUM",
        "LEGUME_HAY, ADF, 31, GOOD",
        "LEGUME_HAY, ADF, 34, FAIR",
        "LEGUME_HAY, ADF, 37, UTILITY",
        "LEGUME_HAY, NDF, 33, SUPREME",
        "LEGUME_HAY, NDF, 39, GOOD",
        "LEGUME_HAY, NDF, 45, UTILITY",
        "LEGUME_HAY, RFV, 186, SUPREME",
        "LEGUME_HAY, RFV, 185, PREMIUM",
        "LEGUME_HAY, RFV, 160, GOOD",
        "LEGUME_HAY, RFV, 129, UTILITY",
        "LEGUME_HAY, TDN, 61, PREMIUM",
        "LEGUME_HAY, TDN, 59, GOOD",
        "LEGUME_HAY, CP, 22.5, SUPREME",
        "LEGUME_HAY, CP, 19, GOOD",
        "LEGUME_HAY, CP, 15.9, UTILITY",
        "GRASS_HAY, CP, 13.1, PREMIUM",
        "GRASS_HAY, CP, 10, GOOD",
        "GRASS_HAY, CP, 6, FAIR",
        "GRASS_HAY, CP, 4, UTILITY"
    })
    void aFigureFallsInTheClassThatIsPrinted(
            FeedClass feedClass, Analyte figure, double value, HayMarketClass.Grade grade) {
        assertThat(HayMarketClass.of(feedClass, of(Map.of(figure, value))))
                .extracting(HayMarketClass::grade)
                .containsExactly(grade);
    }

    private static Function<Analyte, OptionalDouble> of(Map<Analyte, Double> figures) {
        return analyte ->
                figures.containsKey(analyte) ? OptionalDouble.of(figures.get(analyte)) : OptionalDouble.empty();
    }

    @Test
    void thePoorestClassComesFirst() {
        var hay = HayMarketClass.of(
                FeedClass.LEGUME_HAY, of(Map.of(Analyte.ADF, 26.0, Analyte.NDF, 38.0, Analyte.CP, 21.0)));
        assertThat(hay)
                .extracting(HayMarketClass::grade)
                .containsExactly(HayMarketClass.Grade.GOOD, HayMarketClass.Grade.PREMIUM, HayMarketClass.Grade.SUPREME);
    }

    @Test
    void everyFigureFallsInOneClassAndNoOtherHayHasAny() {
        for (double value = 0.5; value < 300; value += 0.5) {
            for (var figure : new Analyte[] {Analyte.ADF, Analyte.NDF, Analyte.RFV, Analyte.TDN, Analyte.CP}) {
                assertThat(HayMarketClass.of(FeedClass.LEGUME_HAY, of(Map.of(figure, value))))
                        .as("%s %s", figure, value)
                        .hasSize(1);
            }
        }
        assertThat(HayMarketClass.of(FeedClass.STRAW, of(Map.of(Analyte.CP, 4.0))))
                .isEmpty();
    }
}
