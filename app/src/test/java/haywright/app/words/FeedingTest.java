package haywright.app.words;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Optional;
import java.util.OptionalDouble;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class FeedingTest {
    private static final double KG_IN_A_POUND = 0.45359237;

    private static Feeding of(double pounds, int head) {
        return new Feeding(pounds * KG_IN_A_POUND, head, OptionalDouble.empty());
    }

    private static Optional<String> bales(double aDay, boolean weighs) {
        return new Feeding(aDay * 1000 * KG_IN_A_POUND, 1, OptionalDouble.of(1000 * KG_IN_A_POUND)).bales(weighs);
    }

    @ParameterizedTest
    @CsvSource({
        "24, 24 lb",
        "7.5, 7½ lb",
        "3.5, 3.5 lb",
        "37.6, 37.6 lb",
        "1.25, 1.25 lb",
        "0.5, 8 oz",
        "0.1875, 3 oz",
        "0.96875, 15½ oz"
    })
    void aHeadIsWrittenAsItIs(double pounds, String written) {
        assertThat(of(pounds, 1).aHead()).isEqualTo(written);
    }

    /** By hand: 38 x 180, 8.5 x 90, 3.9 x 160, 10 x 75, 3 x 180 / 16. */
    @ParameterizedTest
    @CsvSource({
        "38, 180, '6,840 lb a day'",
        "8.5, 90, 765 lb a day",
        "3.9, 160, 624 lb a day",
        "10, 75, 750 lb a day",
        "0.1875, 180, 33.8 lb a day"
    })
    void theGroupGetsThePoundsAHeadTimesTheHead(double pounds, int head, String written) {
        assertThat(of(pounds, head).aDay()).isEqualTo(written);
    }

    /** By hand: 6,840 / 1,200 = 5.7. */
    @Test
    void balesAreThePoundsOfTheGroupByThePoundsOfABale() {
        var put = new Feeding(38 * KG_IN_A_POUND, 180, OptionalDouble.of(1200 * KG_IN_A_POUND));
        assertThat(put.bale()).contains("1,200 lb");
        assertThat(put.bales(false)).contains("5.7 bales a day");
    }

    @ParameterizedTest
    @CsvSource({
        "7.5, 7½ bales a day",
        "7.46, 7½ bales a day",
        "0.98, 1 bale a day",
        "0.51, ½ bale a day",
        "2.72, 19 bales a week",
        "0.2, 1 bale every 5 days",
        "7.4, 7.4 bales a day"
    })
    void balesAreCountedByTheDayTheWeekOrTheirDays(double aDay, String written) {
        assertThat(bales(aDay, false)).contains(written);
    }

    @Test
    void anOutfitWithAScaleIsNotAskedToCountHalfBalesThatAreTooCoarse() {
        assertThat(bales(2.72, true)).isEqualTo(Optional.empty());
        assertThat(bales(7.5, true)).contains("7½ bales a day");
    }

    /** As a reader would check: pounds a head as printed, by the head, by the bale, to one decimal of what is printed. */
    @Test
    void everythingWrittenMultipliesWithAPencil() {
        var draws = new SplittableRandom(1);
        for (int i = 0; i < 10_000; i++) {
            int head = 1 + draws.nextInt(600);
            int bale = 40 + draws.nextInt(1600);
            double exact = 0.1 + 40 * draws.nextDouble() * draws.nextDouble();
            var put = new Feeding(exact * KG_IN_A_POUND, head, OptionalDouble.of(bale * KG_IN_A_POUND));
            double group = pounds(put.aHead()) * head;
            assertThat(Math.abs(pounds(put.aDay()) - group)).as(put.toString()).isLessThanOrEqualTo(0.0501);
            double pencil = group / bale;
            put.bales(false).ifPresent(written -> {
                double times = written.endsWith("week") ? 7 : 1;
                boolean waits = written.contains("every");
                double says = waits ? 1 / balesADay(written) : balesADay(written) * times;
                double comes = waits ? 1 / pencil : pencil * times;
                assertThat(Math.abs(says - comes))
                        .as(written + " for " + pencil)
                        .isLessThanOrEqualTo(0.1001);
                assertThat(balesADay(written) / pencil).as(written).isBetween(0.949, 1.051);
            });
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

    @Test
    void besideThePoundsBalesAreCountedInHalves() {
        assertThat(about(4.14)).contains("about 4 bales a day");
        assertThat(about(4.5)).contains("4½ bales a day");
        assertThat(about(1)).contains("1 bale a day");
        assertThat(about(0.33)).contains("about a bale every 3 days");
        assertThat(about(0.7)).contains("about 2 bales every 3 days");
        assertThat(about(0.02)).isEmpty();
    }

    private static Optional<String> about(double aDay) {
        return new Feeding(aDay * 1000 * KG_IN_A_POUND, 1, OptionalDouble.of(1000 * KG_IN_A_POUND)).aboutBales();
    }
}
