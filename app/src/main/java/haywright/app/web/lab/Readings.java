package haywright.app.web.lab;

import haywright.app.web.Ask;
import haywright.app.web.Findings;
import haywright.app.web.Form;
import haywright.app.web.Option;
import haywright.app.words.Parse;
import haywright.app.words.Said;
import haywright.app.words.Show;
import haywright.forage.Analyte;
import haywright.forage.Basis;
import haywright.forage.LabReport;
import haywright.forage.NotMeasured;
import haywright.forage.Reading;
import haywright.quantity.Kind;
import haywright.quantity.Unit;
import haywright.workings.Refused;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/** The two columns of figures of a report's form: one row an analyte, the common ones first. */
public final class Readings {
    /** Ticked: the left column, otherwise as received, is at 90 % dry matter. The right one is dry matter. */
    public static final Ask NINETY = Ask.choice(
            "ninety",
            "The first column of this sheet is at 90 % dry matter, not as received",
            "Some sheets print hay so. As received is the same as as fed and as is.");

    private static final List<Analyte> COMMON = List.of(
            Analyte.DM,
            Analyte.CP,
            Analyte.ADF,
            Analyte.NDF,
            Analyte.TDN,
            Analyte.NEM,
            Analyte.NEG,
            Analyte.CA,
            Analyte.P,
            Analyte.MG,
            Analyte.K,
            Analyte.NA,
            Analyte.S,
            Analyte.NO3,
            Analyte.NO3N,
            Analyte.KNO3,
            Analyte.ASH,
            Analyte.FAT,
            Analyte.ADICP,
            Analyte.RFV);
    /** Laboratories print these in more than one unit, so the unit stands as a choice beside the figure. */
    private static final Set<Analyte> SEVERAL_UNITS = EnumSet.of(
            Analyte.CA,
            Analyte.P,
            Analyte.MG,
            Analyte.K,
            Analyte.NA,
            Analyte.S,
            Analyte.CL,
            Analyte.NO3,
            Analyte.NO3N,
            Analyte.KNO3);

    private static final Set<Analyte> OF_WATER = EnumSet.of(Analyte.TDS, Analyte.SO4W);

    private static final List<Row> ROWS = rows();

    private Readings() {}

    /**
     * @param left null for what has one figure whatever the basis
     * @param units to choose from; empty where a laboratory prints one only
     */
    public record Row(
            Analyte analyte, String name, @Nullable Ask left, Ask right, Ask unit, List<Option> units) {
        public List<Ask> boxes() {
            return left == null ? List.of(right) : List.of(left, right);
        }

        /** Where a message about it stands: beside the box that was filled in. */
        Ask box(Form form) {
            return left != null && form.isEmpty(right) && !form.isEmpty(left) ? left : right;
        }

        /** What stands above a box: its basis, or nothing where there is one figure whatever the basis. */
        public String head(Form form, Ask ask) {
            if (left == null) {
                return "One figure";
            }
            return ask == right ? "Dry matter" : form.isTicked(NINETY) ? "At 90 %" : "As received";
        }

        /** Whether a sheet often prints words or "less than" here; then a keyboard of digits is in the way. */
        public boolean isOftenWords() {
            return SEVERAL_UNITS.contains(analyte) || analyte.unit() == Unit.PPM || analyte.unit() == Unit.PPB;
        }

        /** The problem of either box, in words. */
        public String problem(Form form) {
            var words = boxes().stream()
                    .map(form::problem)
                    .filter(p -> !p.isEmpty())
                    .toList();
            return words.isEmpty() ? form.problem(unit) : words.get(0);
        }

        public List<Findings.Doubt> doubts(Form form) {
            return boxes().stream().flatMap(ask -> form.doubts(ask).stream()).toList();
        }
    }

    public static List<Row> common() {
        return ROWS.subList(0, COMMON.size());
    }

    public static List<Row> more() {
        return ROWS.subList(COMMON.size(), ROWS.size());
    }

    /** Whether anything stands in the rows that are folded away. */
    public static boolean isMoreUsed(Form form) {
        return more().stream().anyMatch(row -> row.boxes().stream().anyMatch(ask -> !form.isEmpty(ask)));
    }

    private static List<Row> rows() {
        var analytes = new ArrayList<>(COMMON);
        for (var analyte : Analyte.values()) {
            if (!COMMON.contains(analyte) && !OF_WATER.contains(analyte)) {
                analytes.add(analyte);
            }
        }
        return analytes.stream().map(Readings::row).toList();
    }

    static Row row(Analyte analyte) {
        var name = name(analyte);
        var id = analyte.id();
        var units = units(analyte).stream()
                .map(u -> new Option(Form.id(u), u.symbol()))
                .toList();
        var unit = Ask.choice("unit-" + id, name + ", unit", "");
        return analyte.hasBasis()
                ? new Row(
                        analyte,
                        name,
                        box("left-" + id, name + ", as received", analyte.unit()),
                        box("dry-" + id, name + ", dry matter", analyte.unit()),
                        unit,
                        units)
                : new Row(analyte, name, null, box("one-" + id, name, analyte.unit()), unit, units);
    }

    private static Ask box(String name, String label, Unit unit) {
        return new Ask(name, label, unit, "", 7);
    }

    /** "Crude protein (CP)": as the reader says it, and as the sheet prints it. */
    static String name(Analyte analyte) {
        var printed = analyte.synonyms().isEmpty() ? "" : analyte.synonyms().get(0);
        return printed.isEmpty() || printed.length() > 7 ? analyte.words() : analyte.words() + " (" + printed + ")";
    }

    /** More than one, or none. */
    static List<Unit> units(Analyte analyte) {
        var kind = analyte.unit().kind();
        if (kind == Kind.ENERGY_DENSITY) {
            return List.of(Unit.MCAL_PER_LB, Unit.MCAL_PER_KG, Unit.MCAL_PER_CWT, Unit.MJ_PER_KG);
        }
        boolean several = SEVERAL_UNITS.contains(analyte) || analyte.unit() == Unit.PPM || kind == Kind.CHARGE_DENSITY;
        return several ? analyte.accepts().stream().filter(u -> u != Unit.PPB).toList() : List.of();
    }

    /** What a new report starts with: the units that laboratories here mostly print. */
    static void start(Map<String, String> known) {
        for (var row : ROWS) {
            if (!row.units.isEmpty()) {
                var unit = row.analyte.unit() == Unit.MCAL_PER_KG ? Unit.MCAL_PER_LB : row.analyte.unit();
                known.put(row.unit.name(), Form.id(unit));
            }
        }
    }

    /** The figures of a report, and what it prints in place of figures. */
    record Read(List<Reading> readings, List<NotMeasured> notMeasured) {
        static final Read NOTHING = new Read(List.of(), List.of());

        static Read of(LabReport report) {
            return new Read(report.readings(), report.notMeasured());
        }

        boolean isEmpty() {
            return readings.isEmpty() && notMeasured.isEmpty();
        }

        Basis left() {
            var bases = Stream.concat(
                            readings.stream()
                                    .filter(r -> r.analyte().hasBasis())
                                    .map(Reading::basis),
                            notMeasured.stream().map(NotMeasured::basis))
                    .toList();
            return bases.contains(Basis.NINETY_PCT) && !bases.contains(Basis.AS_RECEIVED)
                    ? Basis.NINETY_PCT
                    : Basis.AS_RECEIVED;
        }
    }

    /** The readings as the form shows them. */
    static void known(Map<String, String> known, Read report) {
        start(known);
        var left = report.left();
        known.put(NINETY.name(), left == Basis.NINETY_PCT ? "yes" : "");
        for (var reading : report.readings) {
            var ask = box(reading.analyte(), reading.basis(), left);
            if (ask != null) {
                put(known, ask, reading.analyte(), reading.unit(), Show.significant(reading.value(), 12));
            }
        }
        for (var said : report.notMeasured) {
            var ask = box(said.analyte(), shownAt(said), left);
            if (ask != null) {
                putSaid(known, ask, said);
            }
        }
    }

    /** An energy or a nitrate whose unit the file does not tell is asked for, never guessed. */
    static boolean isUnitAsked(Analyte analyte) {
        return analyte.unit().kind() == Kind.ENERGY_DENSITY
                || analyte == Analyte.NO3
                || analyte == Analyte.NO3N
                || analyte == Analyte.KNO3;
    }

    private static Basis shownAt(NotMeasured said) {
        return Objects.requireNonNullElse(said.basis(), Basis.DRY_MATTER);
    }

    private static void putSaid(Map<String, String> known, Ask ask, NotMeasured said) {
        var limit = said.limit();
        if (limit == null) {
            known.putIfAbsent(ask.name(), Said.typed(said, ""));
        } else if (!known.containsKey(ask.name())) {
            put(known, ask, said.analyte(), said.unit(), Show.significant(limit, 12));
            known.computeIfPresent(ask.name(), (name, figure) -> Said.typed(said, figure));
        }
    }

    /** Writes a figure into its box, and its unit beside it, or behind the figure where the two columns differ. */
    static void put(Map<String, String> known, Ask ask, Analyte analyte, @Nullable Unit unit, String figure) {
        if (known.containsKey(ask.name())) {
            return;
        }
        if (Said.of(figure).filter(said -> said.limit().isEmpty()).isPresent()) {
            known.put(ask.name(), figure); // words have no unit
            return;
        }
        var row = row(analyte);
        boolean isFirst = row.boxes().stream().noneMatch(box -> known.containsKey(box.name()));
        if (!row.units.isEmpty() && isFirst) {
            boolean isAsked = unit == null && isUnitAsked(analyte);
            known.put(row.unit.name(), isAsked ? "" : Form.id(unit == null ? analyte.unit() : unit));
        }
        var shown = row.units.isEmpty() ? Form.id(analyte.unit()) : known.getOrDefault(row.unit.name(), "");
        known.put(ask.name(), unit == null || Form.id(unit).equals(shown) ? figure : figure + " " + unit.symbol());
    }

    /** The box for a figure; null where the form has none. */
    static @Nullable Ask box(Analyte analyte, Basis basis, Basis left) {
        var row = row(analyte);
        if (OF_WATER.contains(analyte)) {
            return null;
        }
        if (row.left == null || basis == Basis.DRY_MATTER) {
            return row.right;
        }
        return basis == left ? row.left : null;
    }

    /** Figures that the form has no box for, from a file or another page, are kept. */
    private static void keep(Read before, Read into) {
        var left = before.left();
        var shown = new HashSet<String>();
        for (var reading : before.readings) {
            var ask = box(reading.analyte(), reading.basis(), left);
            if (ask == null || !shown.add(ask.name())) {
                into.readings.add(reading);
            }
        }
        for (var said : before.notMeasured) {
            var ask = box(said.analyte(), shownAt(said), left);
            if (ask == null || !shown.add(ask.name())) {
                into.notMeasured.add(said);
            }
        }
    }

    /** Everything typed; what cannot be read is noted on the form. */
    static Read read(Form form, Read before) {
        var read = new Read(new ArrayList<>(), new ArrayList<>());
        for (var row : ROWS) {
            var typed = row.boxes().stream().filter(ask -> !form.isEmpty(ask)).toList();
            for (var ask : typed) {
                Said.of(form.value(ask)).filter(said -> said.limit().isEmpty()).ifPresent(said -> {
                    var none = new NotMeasured(row.analyte, said.why(), null, null, null);
                    if (!read.notMeasured.contains(none)) {
                        read.notMeasured.add(none);
                    }
                });
            }
            var figures = typed.stream()
                    .filter(ask -> Said.of(form.value(ask))
                            .map(said -> !said.limit().isEmpty())
                            .orElse(true))
                    .toList();
            var unit = figures.isEmpty() ? null : unit(form, row);
            if (unit != null) {
                figures.forEach(ask -> read(form, row, ask, unit, read));
            }
        }
        keep(before, read);
        return read;
    }

    private static void read(Form form, Row row, Ask ask, Unit unit, Read into) {
        var said = Said.of(form.value(ask));
        var box = new Ask(ask.name(), ask.label(), unit, "", 7);
        var basis = ask == row.left ? (form.isTicked(NINETY) ? Basis.NINETY_PCT : Basis.AS_RECEIVED) : Basis.DRY_MATTER;
        if (said.isEmpty()) {
            var quantity = form.maybeQuantity(box);
            if (quantity != null) {
                into.readings.add(new Reading(row.analyte, quantity.value(), quantity.unit(), basis));
            }
            return;
        }
        form.<NotMeasured>part(() -> {
                    var limit = Parse.quantity(ask.name(), said.get().limit(), unit);
                    try {
                        return new NotMeasured(
                                row.analyte,
                                said.get().why(),
                                limit.value(),
                                limit.unit(),
                                row.analyte.hasBasis() ? basis : null);
                    } catch (Refused e) { // the rule is the record's; the box is the form's
                        var problem = e.problems().get(0);
                        throw new Refused(ask.name(), form.value(ask), problem.rule(), problem.fix());
                    }
                })
                .ifPresent(into.notMeasured::add);
    }

    /** Null where none was chosen; then the form says so. */
    private static @Nullable Unit unit(Form form, Row row) {
        if (row.units.isEmpty()) {
            return row.analyte.unit();
        }
        var chosen = form.text(row.unit, "Which unit does the sheet print?");
        for (var unit : row.analyte.accepts()) {
            if (Form.id(unit).equals(chosen)) {
                return unit;
            }
        }
        if (!chosen.isEmpty()) {
            form.refuse(row.unit.name(), chosen, "it is not measured in this unit", "Choose one of the list.");
        }
        return null;
    }
}
