package haywright.app.words;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import haywright.quantity.Quantity;
import haywright.quantity.Unit;
import haywright.workings.Refused;
import java.time.LocalDate;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class ParseTest {
    @ParameterizedTest(name = "“{0}” asked in {1} is {2} {3}")
    @CsvSource(
            delimiter = '|',
            value = {
                "1,300 lb | POUND | 1300 | POUND",
                "1300 | POUND | 1300 | POUND",
                "590 kg | POUND | 590 | KILOGRAM",
                "1,300lbs | POUND | 1300 | POUND",
                "12.5 % | PERCENT | 12.5 | PERCENT",
                "12.5 | PERCENT | 12.5 | PERCENT",
                ".5 | PERCENT | 0.5 | PERCENT",
                "-4 | FAHRENHEIT | -4 | FAHRENHEIT",
                "−4 °C | FAHRENHEIT | -4 | CELSIUS",
                "$185 | DOLLAR_PER_TON | 185 | DOLLAR_PER_TON",
                "$185/ton | DOLLAR_PER_TON | 185 | DOLLAR_PER_TON",
                "185 a ton | DOLLAR_PER_TON | 185 | DOLLAR_PER_TON",
                "$0.09 per lb | DOLLAR_PER_TON | 0.09 | DOLLAR_PER_LB",
                "1,185.50 | DOLLAR_PER_TON | 1185.5 | DOLLAR_PER_TON",
                "20 lb | POUND_A_DAY | 20 | POUND_A_DAY",
                "9 kg a day | POUND_A_DAY | 9 | KILOGRAM_A_DAY",
                "45 head | HEAD | 45 | HEAD",
                "2 tons | POUND | 2 | TON",
                "3 t | TON | 3 | TONNE",
                "14 lb/ft3 | LB_PER_FT3 | 14 | LB_PER_FT3",
                "6 ft | FOOT | 6 | FOOT"
            })
    void aTypedUnitIsUnderstood(String text, Unit asked, double value, Unit unit) {
        assertThat(Parse.quantity("x", text, asked)).isEqualTo(new Quantity(value, unit));
    }

    @ParameterizedTest
    @ValueSource(strings = {"12,5", "1.300,5", "12,50 %", "1,30"})
    void aCommaThatCouldMeanTwoThingsIsAskedAbout(String text) {
        assertThatThrownBy(() -> Parse.quantity("dm", text, Unit.PERCENT))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("comma can mean two things");
    }

    @Test
    void theQuestionAboutACommaOffersTheLikelyNumber() {
        assertThatThrownBy(() -> Parse.quantity("dm", "12,5", Unit.PERCENT)).hasMessageContaining("Did you mean 12.5?");
    }

    @ParameterizedTest
    @ValueSource(strings = {"", "abc", "NaN", "Infinity", "1e9999", "lb", "1 2 3", "--4", "4..5", "<b>3</b>"})
    void whatIsNotANumberIsRefused(String text) {
        assertThatThrownBy(() -> Parse.quantity("w", text, Unit.POUND)).isInstanceOf(Refused.class);
    }

    @ParameterizedTest
    @CsvSource({"12 °F, POUND", "$5, POUND", "30 %, DOLLAR_PER_TON", "4 furlongs, FOOT", "7 lb, NONE"})
    void aUnitOfAnotherKindIsRefusedByName(String text, Unit asked) {
        assertThatThrownBy(() -> Parse.quantity("w", text, asked))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("is not a unit");
    }

    @ParameterizedTest
    @ValueSource(strings = {"1e9", "1e400", "1E-3"})
    void anExponentIsNoUnit(String text) {
        assertThatThrownBy(() -> Parse.quantity("w", text, Unit.POUND)).hasMessageContaining("not a number");
    }

    @Test
    void aCountOfBillionsIsWholeButTooMany() {
        assertThatThrownBy(() -> Parse.count("head", "99999999999", Unit.HEAD)).hasMessageContaining("digit too many");
    }

    @Test
    void halfACowIsRefused() {
        assertThatThrownBy(() -> Parse.count("head", "44.5", Unit.HEAD)).hasMessageContaining("whole number");
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "Nov 5, 2026",
                "November 5 2026",
                "5 Nov 2026",
                "2026-11-05",
                "11/5/2026",
                "11-05-2026",
                " nov. 5th, 2026 "
            })
    void datesAreReadAsPeopleWriteThem(String text) {
        assertThat(Parse.date("made", text)).isEqualTo(LocalDate.of(2026, 11, 5));
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "Nov 5 | year is missing",
                "13/40/2026 | no such day",
                "2026-02-30 | no such day",
                "soon | not a date",
                "07/18/26 | 07/18/2026?",
                "Foo 5, 2026 | is not a month"
            })
    void aDateThatCannotBeReadSaysWhy(String text, String why) {
        assertThatThrownBy(() -> Parse.date("made", text))
                .isInstanceOf(Refused.class)
                .hasMessageContaining(why);
    }

    @Test
    void aNumberOfFourHundredDigitsIsRefusedAndNotTakenForInfinity() {
        assertThatThrownBy(() -> Parse.quantity("weight", "1".repeat(400), Unit.POUND))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("so large");
    }
}
