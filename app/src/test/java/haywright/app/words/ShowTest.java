package haywright.app.words;

import static org.assertj.core.api.Assertions.assertThat;

import haywright.quantity.Quantity;
import haywright.quantity.Unit;
import java.time.LocalDate;
import java.util.stream.DoubleStream;
import org.junit.jupiter.api.Test;

class ShowTest {
    @Test
    void roundingFollowsTheRange() {
        assertThat(Show.about(24.8, 22.9, 27.1, Unit.POUND)).isEqualTo("about 25 lb, likely 23 to 27");
        assertThat(Show.about(1.376, 1.31, 1.45, Unit.DOLLAR)).isEqualTo("about $1.38, likely 1.31 to 1.45");
        assertThat(Show.about(412.3, 250, 600, Unit.DOLLAR)).isEqualTo("about $400, likely 300 to 600");
    }

    @Test
    void aTonIsTwoThousandPounds() {
        assertThat(Show.tons(1020 * 907.18474)).isEqualTo("1,020 tons");
        assertThat(Show.tons(8.44 * 907.18474)).isEqualTo("8.4 tons");
        // 299.6, 168.6 and 262.6 stand as 300, 169 and 263
        assertThat(Show.totalTons(DoubleStream.of(299.6 * 907.18474, 168.6 * 907.18474, 262.6 * 907.18474)))
                .isEqualTo("732 tons");
        assertThat(Show.totalTons(DoubleStream.of(1020.3 * 907.18474, 8.44 * 907.18474)))
                .isEqualTo("1,028.4 tons");
        assertThat(Show.totalTons(DoubleStream.empty())).isEqualTo("0 tons");
        assertThat(Show.pounds(0.45359237 * 19.46)).isEqualTo("19.5 lb");
        assertThat(Show.pounds(0.45359237 * 1210.2)).isEqualTo("1,210 lb");
    }

    @Test
    void moneyKeepsItsCentsWhileTheyMatter() {
        assertThat(Show.dollars(1.375)).isEqualTo("$1.38");
        assertThat(Show.dollars(1250.4)).isEqualTo("$1,250");
        assertThat(Show.dollars(-0.14)).isEqualTo("−$0.14");
        assertThat(Show.dollars(-0.001)).isEqualTo("$0.00");
        assertThat(Show.centsMore(-0.14)).isEqualTo("−14 ¢");
        assertThat(Show.centsMore(0.05)).isEqualTo("+5 ¢");
        assertThat(Show.price(Quantity.of(185, Unit.DOLLAR_PER_TON))).isEqualTo("$185 a ton");
        assertThat(Show.price(Quantity.of(0.095, Unit.DOLLAR_PER_LB))).isEqualTo("$0.095 a lb");
    }

    @Test
    void whatWasTypedComesBackAsTyped() {
        assertThat(Show.quantity(Quantity.of(1300, Unit.POUND))).isEqualTo("1,300 lb");
        assertThat(Show.quantity(Quantity.of(12.50, Unit.PERCENT))).isEqualTo("12.5 %");
        assertThat(Show.quantity(Quantity.of(1, Unit.TON))).isEqualTo("1 ton");
        assertThat(Show.twin(Quantity.of(1300, Unit.POUND))).isEqualTo("590 kg");
    }

    @Test
    void workingsKeepSixDigitsAndNoMore() {
        assertThat(Show.worked(67.088, Unit.PERCENT)).isEqualTo("67.088 %");
        assertThat(Show.worked(0.0771234567, Unit.NONE)).isEqualTo("0.0771235");
        assertThat(Show.worked(-2000000.4, Unit.NONE)).isEqualTo("−2,000,000");
        assertThat(Show.worked(0, Unit.KILOGRAM)).isEqualTo("0 kg");
    }

    @Test
    void temperaturesAndDatesAreWrittenAsHere() {
        assertThat(Show.temperature(-20)).isEqualTo("−4 °F");
        assertThat(Show.date(LocalDate.of(2026, 11, 5))).isEqualTo("Nov 5, 2026");
        assertThat(Show.day(LocalDate.of(2026, 11, 5))).isEqualTo("Nov 5");
        assertThat(Show.count(1, "lot")).isEqualTo("1 lot");
        assertThat(Show.count(1240, "bale")).isEqualTo("1,240 bales");
    }
}
