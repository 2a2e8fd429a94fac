package haywright.app.web.herd;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import haywright.FormulaCheck;
import haywright.app.document.TinLantern;
import haywright.cattle.need.Requirement;
import haywright.diet.PoorestDiet;
import java.time.LocalDate;
import java.util.stream.IntStream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** What is shown of the demo's herd re-evaluates to the number shown, though cut down to what a figure stands on. */
class WorkingsOfTheHerdTest {
    static IntStream groups() {
        return IntStream.range(0, TinLantern.ranch().groups().size());
    }

    @ParameterizedTest
    @MethodSource("groups")
    void everyFigureHolds(int which) {
        var ranch = TinLantern.ranch();
        var group = ranch.groups().values().stream().skip(which).findFirst().orElseThrow();
        for (var day = LocalDate.of(2026, 12, 1);
                day.getYear() == 2026 || day.getMonthValue() < 6;
                day = day.plusDays(40)) {
            var need = Requirement.of(group, day, ranch.settings().system());
            var figures = NeedFigures.of(group, need, PoorestDiet.of(need));
            assertThat(figures).hasSizeGreaterThanOrEqualTo(5);
            figures.forEach(figure -> FormulaCheck.reEvaluates(figure.worked()));
            for (var alike : NeedFigures.opened(group, need)) {
                alike.parts().forEach(part -> FormulaCheck.reEvaluates(part.worked()));
            }
            assertThat(figures.get(0).worked().lines().get(0).value()).isCloseTo(need.nem(), within(1e-12));
        }
    }
}
