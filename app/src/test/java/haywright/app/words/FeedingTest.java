package haywright.app.words;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Optional;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class FeedingTest {
    private static final double KG_IN_A_POUND = 0.45359237;

    @ParameterizedTest
    @CsvSource({
        "23.6, 24 lb",
        "7.4, 7½ lb",
        "9.8, 10 lb",
        "1.24, 1.2 lb",
        "3, 3 lb",
        "0.5, 8 oz",
        "0.19, 3 oz",
        "0.99, 1 lb",
        "0.625, 10 oz"
    })
    void aHeadGetsWholeOrHalfPoundsAndOuncesOfWhatIsLittle(double pounds, String written) {
        assertThat(Feeding.aHead(pounds * KG_IN_A_POUND)).isEqualTo(written);
    }

    @ParameterizedTest
    @CsvSource({"5713, '5,710 lb a day'", "823, 825 lb a day", "62.4, 62 lb a day", "5.3, 5½ lb a day"})
    void theGroupGetsWhatAWagonScaleShows(double pounds, String written) {
        assertThat(Feeding.aDay(pounds * KG_IN_A_POUND)).isEqualTo(written);
    }

    @ParameterizedTest
    @CsvSource({
        "7.4, 7½ bales a day",
        "0.98, 1 bale a day",
        "0.51, ½ bale a day",
        "2.72, 19 bales a week",
        "0.2, 1 bale every 5 days"
    })
    void balesAreCountedByTheDayTheWeekOrTheirDays(double bales, String written) {
        assertThat(Feeding.bales(bales, false)).contains(written);
    }

    @Test
    void anOutfitWithAScaleIsNotAskedToCountHalfBalesThatAreTooCoarse() {
        assertThat(Feeding.bales(2.72, true)).isEqualTo(Optional.empty());
        assertThat(Feeding.bales(7.4, true)).contains("7½ bales a day");
    }

    @Test
    void nothingWrittenIsMoreThanATwentiethOff() {
        var draws = new SplittableRandom(1);
        for (int i = 0; i < 10_000; i++) {
            double pounds = 0.1 + 40 * draws.nextDouble() * draws.nextDouble();
            assertThat(pounds(Feeding.aHead(pounds * KG_IN_A_POUND)) / pounds).isBetween(0.949, 1.051);
            double bales = 0.05 + 12 * draws.nextDouble();
            Feeding.bales(bales, false)
                    .ifPresent(written ->
                            assertThat(balesADay(written) / bales).as(written).isBetween(0.949, 1.051));
        }
    }

    private static double pounds(String written) {
        var words = written.split(" ");
        return number(words[0]) / (words[1].equals("oz") ? 16 : 1);
    }

    private static double balesADay(String written) {
        var words = written.split(" ");
        return written.contains("every") ? 1 / number(words[3]) : number(words[0]) / (written.endsWith("week") ? 7 : 1);
    }

    private static double number(String written) {
        var digits = written.replace("½", "").replace(",", "");
        return (digits.isEmpty() ? 0 : Double.parseDouble(digits)) + (written.endsWith("½") ? 0.5 : 0);
    }
}
