package haywright.app.web.lab;

import haywright.app.web.Ask;
import haywright.app.web.Form;
import haywright.app.words.Parse;
import haywright.app.words.Said;
import haywright.app.words.Show;
import haywright.forage.Analyte;
import haywright.forage.Basis;
import haywright.forage.lab.LabReport;
import haywright.forage.lab.NotMeasured;
import haywright.forage.lab.Reading;
import haywright.quantity.Unit;
import haywright.workings.Refused;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/** The figures of a report, and what it prints in place of figures. */
record Printed(List<Reading> readings, List<NotMeasured> notMeasured) {
    static final Printed NOTHING = new Printed(List.of(), List.of());

    static Printed of(LabReport report) {
        return new Printed(report.readings(), report.notMeasured());
    }

    boolean isEmpty() {
        return readings.isEmpty() && notMeasured.isEmpty();
    }

    private Basis left() {
        var bases = Stream.<@Nullable Basis>concat(
                readings.stream().filter(r -> r.analyte().hasBasis()).map(Reading::basis),
                notMeasured.stream().map(NotMeasured::basis));
        return Readings.left(bases.toList());
    }

    /** As the form shows them. */
    void show(Map<String, String> known) {
        Readings.start(known);
        var left = left();
        known.put(Readings.NINETY.name(), left == Basis.NINETY_PCT ? "yes" : "");
        for (var reading : readings) {
            var ask = Readings.box(reading.analyte(), reading.basis(), left);
            if (ask != null) {
                Readings.put(known, ask, reading.analyte(), reading.unit(), typed(reading.value()));
            }
        }
        for (var said : notMeasured) {
            var ask = Readings.box(said.analyte(), said.basis(), left);
            if (ask != null) {
                putSaid(known, ask, said);
            }
        }
        FigureMethods.show(known, this);
    }

    /** One line a figure, as a reader is told: "Crude protein (CP): 10.2 % on dry matter". */
    List<String> words() {
        var figures = readings.stream()
                .map(r -> words(r.analyte(), Show.withUnit(Show.significant(r.value(), 12), r.unit()), r.basis())
                        + FigureMethods.words(r.method()));
        var none = notMeasured.stream().map(said -> {
            var limit = said.limit();
            var unit = said.unit();
            return words(
                            said.analyte(),
                            Said.typed(
                                    said,
                                    limit == null || unit == null
                                            ? ""
                                            : Show.withUnit(Show.significant(limit, 12), unit)),
                            said.basis())
                    + FigureMethods.words(said.method());
        });
        return Stream.concat(figures, none).toList();
    }

    private static String words(Analyte analyte, String figure, @Nullable Basis basis) {
        return "%s: %s%s"
                .formatted(
                        Readings.name(analyte),
                        figure,
                        basis == null || !analyte.hasBasis() ? "" : " " + BringView.words(basis));
    }

    /** To the last digit: what goes into the form comes out of it the same. */
    private static String typed(double value) {
        return BigDecimal.valueOf(value).stripTrailingZeros().toPlainString();
    }

    private static void putSaid(Map<String, String> known, Ask ask, NotMeasured said) {
        var limit = said.limit();
        if (limit == null) {
            known.putIfAbsent(ask.name(), Said.typed(said, ""));
        } else if (!known.containsKey(ask.name())) {
            Readings.put(known, ask, said.analyte(), said.unit(), typed(limit));
            known.computeIfPresent(ask.name(), (name, figure) -> Said.typed(said, figure));
        }
    }

    /** Figures that the form has no box for, from a file or another page, are kept. */
    private static void keep(Printed before, Printed into) {
        var left = before.left();
        var shown = new HashSet<String>();
        for (var reading : before.readings) {
            var ask = Readings.box(reading.analyte(), reading.basis(), left);
            if (ask == null || !shown.add(ask.name())) {
                into.readings.add(reading);
            }
        }
        for (var said : before.notMeasured) {
            var ask = Readings.box(said.analyte(), said.basis(), left);
            if (ask == null || !shown.add(ask.name())) {
                into.notMeasured.add(said);
            }
        }
    }

    /** Everything typed; what cannot be read is noted on the form. */
    static Printed read(Form form, Printed before) {
        var read = new Printed(new ArrayList<>(), new ArrayList<>());
        for (var row : Readings.ROWS) {
            var figures = new ArrayList<Ask>();
            for (var ask : row.boxes()) {
                var said = Said.of(form.value(ask)).filter(none -> none.limit().isEmpty());
                if (said.isPresent()) {
                    var none = new NotMeasured(row.analyte(), said.get().why(), null, null, null);
                    if (!read.notMeasured.contains(none)) {
                        read.notMeasured.add(none);
                    }
                } else if (!form.isEmpty(ask)) {
                    figures.add(ask);
                }
            }
            var unit = figures.isEmpty() ? null : unit(form, row);
            if (unit != null) {
                figures.forEach(ask -> read(form, row, ask, unit, read));
            }
        }
        keep(before, read);
        return read;
    }

    private static void read(Form form, Readings.Row row, Ask ask, Unit unit, Printed into) {
        var said = Said.of(form.value(ask));
        var box = Readings.box(ask.name(), ask.label(), unit);
        var basis = ask == row.left()
                ? (form.isTicked(Readings.NINETY) ? Basis.NINETY_PCT : Basis.AS_RECEIVED)
                : Basis.DRY_MATTER;
        if (said.isEmpty()) {
            var quantity = form.maybeQuantity(box);
            if (quantity != null) {
                into.readings.add(new Reading(row.analyte(), quantity.value(), quantity.unit(), basis));
            }
            return;
        }
        form.<NotMeasured>part(() -> {
                    var limit = Parse.quantity(ask.name(), said.get().limit(), unit);
                    try {
                        return new NotMeasured(
                                row.analyte(),
                                said.get().why(),
                                limit.value(),
                                limit.unit(),
                                row.analyte().hasBasis() ? basis : null);
                    } catch (Refused e) { // the rule is the record's; the box is the form's
                        var problem = e.problems().get(0);
                        throw new Refused(ask.name(), form.value(ask), problem.rule(), problem.fix());
                    }
                })
                .ifPresent(into.notMeasured::add);
    }

    /** Null where none was chosen; then the form says so. */
    private static @Nullable Unit unit(Form form, Readings.Row row) {
        if (row.units().isEmpty()) {
            return row.analyte().unit();
        }
        var chosen = form.text(row.unit(), "Which unit does the sheet print?");
        for (var unit : row.analyte().accepts()) {
            if (Form.id(unit).equals(chosen)) {
                return unit;
            }
        }
        if (!chosen.isEmpty()) {
            form.refuse(row.unit().name(), chosen, "it is not measured in this unit", "Choose one of the list.");
        }
        return null;
    }
}
