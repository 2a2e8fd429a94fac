package haywright.cattle;

import static haywright.cattle.Published.LB;
import static haywright.cattle.Published.cow;
import static haywright.cattle.RequirementSystem.NRC_1996;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What the trade says of a 1300 lb cow, beside what the equations say: within five points of TDN and two of protein. */
class RulesOfThumbTest {
    private static final LiveWeight WEIGHT = LiveWeight.full(1300 * LB);
    private static final Need MID = new Requirement(cow(WEIGHT, new Pregnancy(40, 170), null), NRC_1996);
    private static final Need LATE = new Requirement(cow(WEIGHT, new Pregnancy(40, 240), null), NRC_1996);
    private static final Need MILK = new Requirement(cow(WEIGHT, null, new Lactation(6, 20 * LB, 8.5)), NRC_1996);

    private static Need need(String stage) {
        return switch (stage) {
            case "mid" -> MID;
            case "late" -> LATE;
            default -> MILK;
        };
    }

    /** The last column is what the rule's own row says that the equations give. */
    @ParameterizedTest(name = "{0}")
    @CsvSource({"T01, mid, 24, 48, 0.5", "T02, late, 24, 53.5, 0.1", "T03, milk, 29, 59, 0.5"})
    void tdn(String id, String stage, double poundsEaten, double equations, double asPrinted) {
        double tdn = Published.tdn(need(stage).nem() / (poundsEaten * LB));
        var rule = RuleOfThumb.of(id);
        assertThat(tdn).isCloseTo(equations, within(asPrinted)).isBetween(rule.low() - 5, rule.high() + 5);
    }

    @ParameterizedTest(name = "{0}")
    @CsvSource({"T04-mid, mid, 24", "T04-late, late, 24", "T04-milk, milk, 29"})
    void crudeProtein(String id, String stage, double poundsEaten) {
        double protein = 100 * need(stage).crudeProtein() / (poundsEaten * LB);
        var rule = RuleOfThumb.of(id);
        assertThat(protein).isBetween(rule.low() - 2, rule.high() + 2);
        assertThat(protein).isCloseTo(rule.low(), within(0.3)); // "the equations give the lower figures"
    }
}
