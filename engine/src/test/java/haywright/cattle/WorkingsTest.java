package haywright.cattle;

import static haywright.FormulaCheck.reEvaluates;
import static haywright.cattle.Published.cow;
import static org.assertj.core.api.Assertions.assertThat;

import haywright.cattle.intake.ForageCapacity;
import haywright.cattle.intake.GrowingIntake1996;
import haywright.cattle.need.GroupRequirementTest;
import haywright.cattle.need.HeiferTarget;
import haywright.cattle.need.Requirement;
import java.time.LocalDate;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;

/** The words of every formula give the number beside them, in every branch. */
class WorkingsTest {
    private static final Lactation MILK = new Lactation(6, 9, 8.5);

    @Test
    void requirementsInEveryState() {
        for (var weight : new LiveWeight[] {LiveWeight.full(600), LiveWeight.shrunk(600)}) {
            for (var pregnancy : new Pregnancy[] {null, new Pregnancy(38, 120), new Pregnancy(38, 250)}) {
                for (var milk : new Lactation[] {null, MILK}) {
                    for (var system : RequirementSystem.values()) {
                        reEvaluates(new Requirement(cow(weight, pregnancy, milk), system));
                    }
                }
            }
        }
    }

    @ParameterizedTest
    @ValueSource(doubles = {150, 350, 500})
    void growingCattleBelowAndAboveTheBranchOfProtein(double weight) {
        var need = new Requirement(Published.growing(weight, 550, 0.7), RequirementSystem.NASEM_2016);
        reEvaluates(need);
        assertThat(need.lines()).anyMatch(line -> line.symbol().equals("NEg"));
    }

    @ParameterizedTest
    @EnumSource(RequirementSystem.class)
    void intakesAndTargets(RequirementSystem system) {
        var cow = cow(LiveWeight.full(600), new Pregnancy(38, 250), MILK);
        reEvaluates(new Requirement(cow, system).intake(1.2));
        reEvaluates(new Requirement(Published.growing(250, 550, 0.7), system).intake(1.2));
        reEvaluates(new GrowingIntake1996(500, true, 1.4, 1.05));
        reEvaluates(new HeiferTarget(550, system));
    }

    @Test
    void reserves() {
        reEvaluates(new Reserves(550, 4, 6));
        reEvaluates(new Reserves(550, 6, 4.5));
    }

    @ParameterizedTest
    @ValueSource(doubles = {35, 49, 52, 56, 60, 62, 75})
    void capacityInEveryClass(double tdn) {
        reEvaluates(new ForageCapacity(tdn, 0));
        reEvaluates(new ForageCapacity(tdn, 0.4));
    }

    @Test
    void aGroupsMean() {
        reEvaluates(Requirement.of(
                GroupRequirementTest.cows().build(), LocalDate.of(2027, 4, 20), RequirementSystem.NRC_1996));
    }
}
