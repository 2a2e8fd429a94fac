package haywright.diet;

import static org.assertj.core.api.Assertions.assertThat;

import haywright.workings.PublishedTable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Limits of practice beside what the trade published of the same thing ({@code practice_facts.csv} of the room ration,
 * each with its source): where sources part, ours is the careful end, or its reason stands here.
 */
class CarefulLimitsTest {
    private static final PublishedTable FACTS =
            PublishedTable.read(CarefulLimitsTest.class, "/haywright/ration/practice_facts.csv");

    /** Column low or high is the end of a fact's range that a careful reader takes. */
    private static double fact(String id, String end) {
        return FACTS.row("id", id).number(end).orElseThrow();
    }

    @ParameterizedTest
    @CsvSource({
        // straw, % of body weight; % of dry matter; none in milk, where a third was tolerated
        "L01, C20, low",
        "L01e, C22, low",
        "L01e, C23, low",
        "L01c, C24, low",
        // cereal beside forage, % of body weight; in one feeding
        "L02b, B02, low",
        "L02b, B03, low",
        "L02, B03, low",
        "L02, B04, low",
        "L02, B06, low",
        // wheat, triticale, rye, lb
        "L22, B08, low",
        "L22b, B09, low",
        // nitrate, ppm NO3-N: pregnant, others, not to be fed at all, and the share of what is fed unmixed
        "L11, N10, high",
        "L11, N17, low",
        "L11b, N10, high",
        "L11b, N16, low",
        "L11c, N14, low",
        "L11c, N15, low",
        "L11c, N17, high",
        "L11d, N10, high",
        "L11e, N11, high",
    })
    void noMoreThanAnySourceAllows(String limit, String fact, String end) {
        assertThat(PracticeLimits.value(limit)).isLessThanOrEqualTo(fact(fact, end));
    }

    @ParameterizedTest
    @CsvSource({
        // forage, % of body weight: where they are limit-fed, where hay is short and it is cold, beside grain
        "L21b, A01, high",
        "L21b, A02, low",
        "L21b, A03, low",
        "L21b, A04, low",
        "L21c, A05, low",
        "L19, A06, low",
        // limit-fed in all
        "L21, A14, low",
        // forage left for a pound of other feed
        "L26, B19, high",
        // magnesium in milk
        "L16, E10, high",
        // days to change over
    })
    void noLessThanAnySourceAsks(String limit, String fact, String end) {
        assertThat(PracticeLimits.value(limit)).isGreaterThanOrEqualTo(fact(fact, end));
    }

    /**
     * Not at the careful end, and why.
     * <ul>
     *   <li>B01, 2 to 3 lb of whole corn, is 0.15 to 0.23 % of a cow of 1,300 lb: L02b is eXtension's 0.25 of the same year,
     *       and grain here is mostly barley; corn has a fifth more starch.
     *   <li>B05, 6 lb of corn with 10 lb of hay, is 0.46 % of her weight: it is for cattle that are limit-fed.
     *   <li>A06, 1 % of hay where corn replaces hay, is more than L21b: 0.5 % is for a limit-fed program with bunks for all,
     *       never chosen by itself; everybody else has L19, which is more.
     *   <li>E01 and E04, 3 and 4 oz of mineral, are what a tag is made for; more than 2 oz is no more careful, and what
     *       phosphorus and calcium are short decides beyond it.
     * </ul>
     */
    @Test
    void whatIsNotAtTheCarefulEndIsInsideWhatIsPublished() {
        assertThat(PracticeLimits.value("L02b") / 100 * 1300).isGreaterThan(fact("B01", "high"));
        assertThat(PracticeLimits.value("L02b") / 100 * 1200).isLessThanOrEqualTo(fact("B01", "high"));
        assertThat(PracticeLimits.value("L02") / 100 * 1200).isLessThanOrEqualTo(fact("B05", "low"));
        assertThat(PracticeLimits.value("L21b")).isLessThan(fact("A06", "low"));
        assertThat(PracticeLimits.value("L23")).isBetween(fact("E02", "low"), fact("E03", "high"));
        assertThat(PracticeLimits.value("L23")).isEqualTo(fact("E03", "low"));
        assertThat(PracticeLimits.value("L23b")).isLessThanOrEqualTo(fact("E03", "high"));
        assertThat(PracticeLimits.value("L24")).isBetween(fact("E07", "low") * 0.9, fact("E07", "high"));
    }
}
