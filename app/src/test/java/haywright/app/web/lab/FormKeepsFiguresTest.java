package haywright.app.web.lab;

import static org.assertj.core.api.Assertions.assertThat;

import haywright.app.web.Form;
import haywright.app.web.Option;
import haywright.forage.Analyte;
import haywright.forage.Basis;
import haywright.forage.lab.NotMeasured;
import haywright.forage.lab.Reading;
import haywright.quantity.Kind;
import haywright.quantity.Unit;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * What came from a sheet is the same to the last digit when it was looked over in the form, kept, opened again and kept
 * again: every analyte in every unit that a sheet can print it in.
 */
class FormKeepsFiguresTest {
    private static final List<String> FIGURES =
            List.of("0.05", "7", "12.34", "0.000123", "98765.4321", "41.666666666667");

    static Stream<Arguments> all() {
        return Readings.ROWS.stream()
                .map(Readings.Row::analyte)
                .flatMap(analyte -> units(analyte).stream().map(unit -> Arguments.of(analyte, unit)));
    }

    /** Those that have a sign to write. */
    private static List<Unit> units(Analyte analyte) {
        return Unit.of(analyte.unit().kind()).stream()
                .filter(unit -> !unit.symbol().isEmpty() || unit.kind() == Kind.NUMBER)
                .toList();
    }

    /** What a browser sends of it: of a list only what stands in it. */
    private static Form sent(Map<String, String> shown) {
        var sent = new LinkedHashMap<>(shown);
        for (var row : Readings.ROWS) {
            var options = row.units().stream().map(Option::value).toList();
            if (!options.isEmpty()
                    && !options.contains(sent.getOrDefault(row.unit().name(), ""))) {
                sent.put(row.unit().name(), options.get(0));
            }
        }
        return Form.of("", sent);
    }

    private static Printed twice(Map<String, String> shown) {
        var kept = Printed.read(sent(shown), Printed.NOTHING);
        var again = new LinkedHashMap<String, String>();
        kept.show(again);
        assertThat(Printed.read(sent(again), kept)).isEqualTo(kept);
        return kept;
    }

    @ParameterizedTest(name = "{0} in {1}")
    @MethodSource("all")
    void aFigureFromASheetIsKeptAsItIs(Analyte analyte, Unit unit) {
        for (var basis :
                analyte.hasBasis() ? List.of(Basis.DRY_MATTER, Basis.AS_RECEIVED) : List.of(Basis.DRY_MATTER)) {
            for (var figure : FIGURES) {
                var shown = new LinkedHashMap<String, String>();
                var box = Readings.box(analyte, basis, Basis.AS_RECEIVED);
                assertThat(box).isNotNull();
                Readings.put(shown, box, analyte, unit, figure);
                assertThat(twice(shown).readings())
                        .containsExactly(new Reading(analyte, Double.parseDouble(figure), unit, basis));
            }
        }
    }

    @ParameterizedTest(name = "{0} below in {1}")
    @MethodSource("all")
    void aLimitFromASheetIsKeptAsItIs(Analyte analyte, Unit unit) {
        if (unit == Unit.NONE) {
            return; // an index has none
        }
        var shown = new LinkedHashMap<String, String>();
        Readings.put(shown, Readings.row(analyte).right(), analyte, unit, "<0.05");
        var basis = analyte.hasBasis() ? Basis.DRY_MATTER : null;
        assertThat(twice(shown).notMeasured())
                .containsExactly(new NotMeasured(analyte, NotMeasured.Why.LESS_THAN, 0.05, unit, basis));
    }
}
