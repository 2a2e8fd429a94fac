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
                "6 ft | FOOT | 6 | FOOT",
                "1,250# | POUND | 1250 | POUND",
                "1250 lbs. | POUND | 1250 | POUND",
                "1,250 pounds | POUND | 1250 | POUND",
                "~1,250 | POUND | 1250 | POUND",
                "about 1250 lb | POUND | 1250 | POUND",
                "96 bales | NONE | 96 | NONE",
                "150 cows | NONE | 150 | NONE",
                "60 hd | NONE | 60 | NONE",
                "9 weeks | WEEK | 9 | WEEK",
                "5½ | NONE | 5.5 | NONE",
                "5 ½ | NONE | 5.5 | NONE",
                "5 1/2 | NONE | 5.5 | NONE",
                "5-1/2 | NONE | 5.5 | NONE",
                "½ | POUND_A_DAY | 0.5 | POUND_A_DAY",
                "3/4 lb | POUND_A_DAY | 0.75 | POUND_A_DAY",
                "1 1/2 lb/day | POUND_A_DAY | 1.5 | POUND_A_DAY",
                "8 percent | PERCENT | 8 | PERCENT",
                "$185/T | DOLLAR_PER_TON | 185 | DOLLAR_PER_TON",
                "$ 185 per ton | DOLLAR_PER_TON | 185 | DOLLAR_PER_TON",
                "$185.00/ton delivered | DOLLAR_PER_TON | 185 | DOLLAR_PER_TON",
                "$12.50/cwt | DOLLAR_PER_TON | 12.5 | DOLLAR_PER_CWT",
                "10¢/lb | DOLLAR_PER_TON | 0.1 | DOLLAR_PER_LB",
                "10 cents a pound | DOLLAR_PER_TON | 0.1 | DOLLAR_PER_LB",
                "22 T | TON | 22 | TON",
                "22 tons | TON | 22 | TON",
                "5' | FOOT | 5 | FOOT",
                "5 feet | FOOT | 5 | FOOT",
                "2 in | INCH | 2 | INCH",
                "2\" | INCH | 2 | INCH"
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

    /** What is counted in weeks and typed in days is weeks, or refused where it is no whole number of them. */
    @Test
    void aCountInAnotherUnitIsTurnedIntoTheOneAskedFor() {
        assertThat(Parse.count("weeks", "63 days", Unit.WEEK)).isEqualTo(9);
        assertThatThrownBy(() -> Parse.count("weeks", "60 days", Unit.WEEK)).hasMessageContaining("whole number");
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
                " nov. 5th, 2026 ",
                "11/5/26",
                "11-5-26",
                "Nov 5, '26",
                "Nov 5 26",
                "5-Nov-2026",
                "5-Nov-26",
                "Nov-5-2026",
                "November 5th 2026",
                "5th of November 2026",
                "Thursday, Nov 5, 2026",
                "2026/11/5",
                "Nov5,2026"
            })
    void datesAreReadAsPeopleWriteThem(String text) {
        assertThat(Parse.date("made", text)).isEqualTo(LocalDate.of(2026, 11, 5));
    }

    /** Of a day that is named without its year, the next one to come. */
    @ParameterizedTest
    @ValueSource(
            strings = {
                "5/10",
                "May 10",
                "10 May",
                "may 10th",
                "5-10",
                "10-May",
                "the 10th of May",
                "May10",
                "Mon May 10"
            })
    void aDayWithoutItsYearIsTheNextToCome(String text) {
        assertThat(Parse.date("turnout", text, LocalDate.of(2026, 11, 30))).isEqualTo(LocalDate.of(2027, 5, 10));
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "185/furlong",
                "63 days",
                "8 %",
                "5 1/0",
                "5/3/2",
                "5½½",
                "1/2/3",
                "½5",
                "5 apples",
                "1,250-1,300",
                "$5 lb 3"
            })
    void whatReadsLikeAUnitOrAFractionAndIsNoneIsRefused(String text) {
        assertThatThrownBy(() -> Parse.quantity("w", text, Unit.NONE)).isInstanceOf(Refused.class);
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "Nov 5 | year is missing",
                "13/40/2026 | no such day",
                "2026-02-30 | no such day",
                "soon | not a date",
                "Nov 5 '6 | not a date",
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

    @ParameterizedTest(name = "“{0}” are {1}")
    @CsvSource(
            delimiter = '|',
            value = {
                "2100 2080 2150 | 2100 2080 2150",
                "2,100 2,080 2,150 | 2100 2080 2150",
                "2,100, 2,080; 2150 | 2100 2080 2150",
                "2100,2080,2150 | 2100 2080 2150",
                "12,15,14 | 12 15 14",
                "45.2,46.1,44 | 45.2 46.1 44",
                "950,2100 | 950 2100",
                "2,100 | 2100",
                "12,500 | 12500",
                "7 | 7"
            })
    void severalNumbersStandBesideOneAnother(String typed, String numbers) {
        assertThat(ParseList.of("field", typed))
                .containsExactlyElementsOf(java.util.stream.Stream.of(numbers.split(" "))
                        .map(Double::valueOf)
                        .toList());
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "12,5",
                "100,200",
                "100,200,300",
                "950,985,2100",
                "2,100,2,080",
                "2,100,2,150",
                "2 080",
                "-5",
                "1e308",
                "NaN",
                "12 lb",
                "1,,2",
                "99999999999999999999"
            })
    void whatMayBeOneNumberOrSeveralIsAsked(String typed) {
        assertThatThrownBy(() -> ParseList.of("field", typed)).isInstanceOf(Refused.class);
    }

    /** Minerals and cake are priced so. */
    @Test
    void aPriceByTheBagIsToldHowToBecomeOneByThePound() {
        assertThatThrownBy(() -> Parse.quantity("price", "$38 a bag", Unit.DOLLAR_PER_TON))
                .isInstanceOfSatisfying(
                        Refused.class,
                        refused -> assertThat(refused.problems().get(0).fix()).contains("bag", "$0.76/lb"));
        assertThatThrownBy(() -> Parse.quantity("price", "$38 a gate", Unit.DOLLAR_PER_TON))
                .isInstanceOfSatisfying(
                        Refused.class,
                        refused -> assertThat(refused.problems().get(0).fix()).doesNotContain("bag"));
    }
}
