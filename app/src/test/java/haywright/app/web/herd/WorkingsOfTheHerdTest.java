package haywright.app.web.herd;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import haywright.FormulaCheck;
import haywright.app.document.TinLantern;
import haywright.app.words.Show;
import haywright.cattle.cold.Coat;
import haywright.cattle.cold.ColdSystem;
import haywright.cattle.cold.Exposure;
import haywright.cattle.cold.Hide;
import haywright.cattle.herd.Group;
import haywright.cattle.need.GroupRequirement;
import haywright.cattle.need.Requirement;
import haywright.diet.PoorestDiet;
import haywright.outlook.HerdWeather;
import haywright.quantity.Unit;
import haywright.workings.Origin;
import haywright.workings.Worked;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Pattern;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** What is shown of the demo's herd re-evaluates to the number shown, though cut down to what a figure stands on. */
class WorkingsOfTheHerdTest {
    private static final LocalDate DAY = LocalDate.of(2026, 12, 1);

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

    /** The cold's figure opens to the cold, and last month's to last month's. */
    @ParameterizedTest
    @MethodSource("groups")
    void workingsAreOfTheirFigure(int which) {
        var ranch = TinLantern.ranch();
        var group = ranch.groups().values().stream().skip(which).findFirst().orElseThrow();
        var cold = Unit.FAHRENHEIT.toBase(-20);
        var days = List.of(cold, cold + 5).stream()
                .map(celsius -> new Exposure(celsius, 20, Coat.WINTER, Hide.DRY, false, ColdSystem.USUAL))
                .toList();
        var need = Requirement.of(group, DAY, ranch.settings().system(), -12, days);
        var figures = NeedFigures.of(group, need, PoorestDiet.of(need));
        assertThat(figures)
                .filteredOn(figure -> figure.label().contains("cold"))
                .extracting(figure -> figure.worked().lines().get(0).value())
                .containsExactly(need.nemCold(), need.nemAcclimatization());
        figures.forEach(figure -> FormulaCheck.reEvaluates(figure.worked()));
    }

    /** Only what the group's form asks was typed: not the calf's weight, a day of gestation or a temperature. */
    @ParameterizedTest
    @MethodSource("groups")
    void nothingIsCalledTypedThatNobodyTyped(int which) {
        var ranch = TinLantern.ranch();
        var group = ranch.groups().values().stream().skip(which).findFirst().orElseThrow();
        var need = new HerdWeather(ranch.settings()).need(group, DAY);
        var diet = PoorestDiet.of(need);
        var shown = Stream.concat(NeedFigures.of(group, need, diet).stream(), dietary(group, need, diet));
        var typed = new TreeSet<String>();
        shown.forEach(figure -> typed(figure.worked(), typed));
        NeedFigures.opened(group, need).forEach(alike -> alike.parts().forEach(part -> typed(part.worked(), typed)));
        var asked = new TreeSet<String>();
        if (group.gain().value() > 0) {
            asked.add("SWG");
        }
        if (group.calfBirthWeight() != null) {
            asked.add("CBW");
        }
        if (group.peakMilk() != null) {
            asked.add("PKYD");
        }
        assertThat(asked).containsAll(typed);
    }

    private static Stream<NeedFigures.Figure> dietary(Group group, GroupRequirement need, Optional<PoorestDiet> diet) {
        return NeedFigures.dietary(group, need, diet).stream().map(NeedFigures.Dietary::figure);
    }

    private static void typed(Worked worked, Set<String> symbols) {
        for (var line : worked.lines()) {
            for (var input : line.inputs()) {
                if (input.origin() == Origin.TYPED
                        || input.origin() instanceof Origin.Typed said
                                && said.where().equals("entered")) {
                    symbols.add(input.symbol());
                }
                if (input.origin() instanceof Origin.Computed computed) {
                    typed(computed.by(), symbols);
                }
            }
        }
    }

    private static double first(String says) {
        var number = Pattern.compile("[0-9.]+").matcher(says);
        assertThat(number.find()).as(says).isTrue();
        return Double.parseDouble(number.group());
    }

    /** The share shown times the pounds shown is the protein shown, and the rumen's part is no more than it. */
    @ParameterizedTest
    @MethodSource("groups")
    void proteinIsItsShareOfWhatTheyEat(int which) {
        var ranch = TinLantern.ranch();
        var group = ranch.groups().values().stream().skip(which).findFirst().orElseThrow();
        for (var day = DAY; day.isBefore(DAY.plusDays(200)); day = day.plusDays(20)) {
            var need = new HerdWeather(ranch.settings()).need(group, day);
            PoorestDiet.of(need).ifPresent(diet -> {
                assertThat(NeedFigures.crudeProtein(need, Optional.of(diet)))
                        .isCloseTo(diet.crudeProteinPercent() / 100 * diet.kilograms(), within(1e-9));
                assertThat(diet.crudeProtein()).isGreaterThanOrEqualTo(need.crudeProtein() - 1e-9);
                // with a pencil: the share and the pounds as the page has them
                double share = Double.parseDouble(
                        Show.percent(diet.crudeProteinPercent()).replace(" %", ""));
                double eats = Double.parseDouble(NeedFigures.eats(diet).replaceAll("about ([0-9]+) .*", "$1"));
                double shown = first(NeedFigures.crudeProteinSays(need, Optional.of(diet)));
                assertThat(shown).isCloseTo(share / 100 * eats, within(0.0500001));
                assertThat(shown).isCloseTo(Unit.POUND.fromBase(diet.crudeProtein()), within(0.1));
                assertThat(first(NeedFigures.degradable(diet))).isLessThanOrEqualTo(shown);
            });
        }
    }
}
