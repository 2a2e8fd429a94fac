package haywright.cattle.herd;

import static haywright.quantity.Unit.KILOGRAM;
import static haywright.quantity.Unit.POUND;
import static haywright.quantity.Unit.POUND_A_DAY;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import haywright.cattle.Animal;
import haywright.cattle.AnimalClass;
import haywright.cattle.Growth;
import haywright.cattle.Lactation;
import haywright.cattle.LiveWeight;
import haywright.cattle.Pregnancy;
import haywright.cattle.Published;
import haywright.cattle.herd.Group.CalvingWeek;
import haywright.cattle.need.GroupRequirementTest;
import haywright.cattle.need.GroupRequirementTest.Herd;
import haywright.quantity.Quantity;
import haywright.workings.Note;
import haywright.workings.Note.Level;
import haywright.workings.Refused;
import java.time.LocalDate;
import java.util.List;
import java.util.function.Consumer;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

class HerdCheckTest {
    private static final LocalDate TODAY = LocalDate.of(2026, 11, 25);

    private static List<Note> notes(Consumer<Herd> change) {
        var herd = GroupRequirementTest.cows();
        herd.head = 225;
        change.accept(herd);
        return HerdCheck.of(herd.build(), TODAY);
    }

    @Test
    void anOrdinaryHerdGoesThroughInSilence() {
        assertThat(notes(herd -> {})).isEmpty();
    }

    static List<Arguments> unusual() {
        return List.of(
                unusual(Level.REFUSE, "head", "head", h -> h.head = 0),
                unusual(Level.REFUSE, "weight_mature_cow", "weight", h -> h.weight = Quantity.of(2600, POUND)),
                unusual(Level.ASK, "weight_ratio", "matureWeight", h -> h.weight = Quantity.of(590, POUND)),
                unusual(Level.ASK, "weight_for_score", "weight", h -> h.score = 2),
                unusual(Level.REFUSE, "condition_score", "conditionScore", h -> h.score = 9.5),
                unusual(Level.ASK, "condition_score", "conditionScore", h -> h.score = 9),
                unusual(Level.ASK, "calving_score_cows", "conditionScore", h -> h.score = 3.5),
                unusual(Level.SAY, "calving_score_cows", "conditionScore", h -> h.score = 4.5),
                unusual(Level.REFUSE, "breed", "breed", h -> h.breed = "Jackalope"),
                unusual(Level.SAY, "calving_open", "calving", h -> h.head = 240),
                unusual(Level.REFUSE, "calving_head", "calving", h -> h.head = 200),
                unusual(Level.REFUSE, "due_ahead", "calving", h -> h.calving = due("2028-03-15", 225)),
                unusual(Level.SAY, "calving_empty", "calving", h -> h.calving = List.of()),
                unusual(Level.REFUSE, "calving_class", "calving", h -> h.animals = AnimalClass.BULL),
                unusual(Level.REFUSE, "weaning_before_birth", "weaning", h -> h.weaning = LocalDate.of(2026, 10, 10)),
                unusual(Level.ASK, "weaning_age", "weaning", h -> h.weaning = LocalDate.of(2027, 6, 1)),
                unusual(Level.REFUSE, "calf_birth_weight", "calfBirthWeight", h -> h.birth = Quantity.of(10, POUND)),
                unusual(Level.ASK, "peak_milk", "peakMilk", h -> h.milk = Quantity.of(35, POUND_A_DAY)),
                unusual(Level.REFUSE, "gain", "gain", h -> h.gain = Quantity.of(-1, POUND_A_DAY)),
                unusual(Level.REFUSE, "grown_and_growing", "matureWeight", h -> {
                    h.animals = AnimalClass.GROWING;
                    h.calving = List.of();
                    h.weight = Quantity.of(640, KILOGRAM);
                    h.gain = Quantity.of(1, POUND_A_DAY);
                }));
    }

    private static Arguments unusual(Level level, String rule, String field, Consumer<Herd> change) {
        return Arguments.of(level, rule, field, change);
    }

    private static List<CalvingWeek> due(String date, int head) {
        return List.of(new CalvingWeek(LocalDate.parse(date), head));
    }

    @ParameterizedTest(name = "{0} {1}")
    @MethodSource("unusual")
    void eachRuleSpeaksBesideItsField(Level level, String rule, String field, Consumer<Herd> change) {
        assertThat(notes(change)).anySatisfy(note -> {
            assertThat(note.level()).isEqualTo(level);
            assertThat(note.rule()).isEqualTo(rule);
            assertThat(note.field()).isEqualTo(field);
            assertThat(note.words()).isNotBlank();
            assertThat(note.fix()).isNotBlank();
        });
    }

    @Test
    void theWordsUseTheUnitThatWasTyped() {
        assertThat(notes(h -> h.weight = Quantity.of(2600, POUND)))
                .extracting(Note::words)
                .contains("2,600 lb: a mature cow's weight is 500 to 2,500 lb");
        assertThat(notes(h -> h.weight = Quantity.of(90, KILOGRAM)))
                .extracting(Note::words)
                .contains("90 kg: a mature cow's weight is 226.8 to 1,134 kg");
    }

    @Test
    void oneAnimalIsRefusedOrAskedAboutByTheSameRules() {
        assertThatThrownBy(() -> Animal.matureCow(LiveWeight.full(Double.NaN)))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("not a number");
        assertThatThrownBy(() -> new Pregnancy(38, 320)).isInstanceOf(Refused.class);
        assertThatThrownBy(() -> new Lactation(4, 40, 8.5)).isInstanceOf(Refused.class);
        assertThatThrownBy(() -> new Growth(300, 550, -0.5)).isInstanceOf(Refused.class);
        assertThat(Published.cow(LiveWeight.full(950), null, new Lactation(35, 8, 8.5))
                        .notes())
                .extracting(Note::rule)
                .containsExactly("weight_mature_cow", "weeks_in_milk");
    }
}
