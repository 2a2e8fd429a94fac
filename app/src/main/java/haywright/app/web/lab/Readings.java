package haywright.app.web.lab;

import haywright.app.web.Ask;
import haywright.app.web.Findings;
import haywright.app.web.Form;
import haywright.app.web.Option;
import haywright.app.words.Show;
import haywright.forage.Analyte;
import haywright.forage.Basis;
import haywright.forage.Reading;
import haywright.quantity.Kind;
import haywright.quantity.Quantity;
import haywright.quantity.Unit;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
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

    /** The readings as the form shows them. */
    static void known(Map<String, String> known, List<Reading> readings) {
        start(known);
        known.put(NINETY.name(), left(readings) == Basis.NINETY_PCT ? "yes" : "");
        for (var reading : readings) {
            var ask = shownIn(reading, left(readings));
            if (ask != null) {
                put(known, ask, reading.analyte(), reading.unit(), Show.significant(reading.value(), 12));
            }
        }
    }

    /** Writes a figure into its box, and its unit beside it, or behind the figure where the two columns differ. */
    static void put(Map<String, String> known, Ask ask, Analyte analyte, @Nullable Unit unit, String figure) {
        if (known.containsKey(ask.name())) {
            return;
        }
        var row = row(analyte);
        boolean isFirst = row.boxes().stream().noneMatch(box -> known.containsKey(box.name()));
        if (!row.units.isEmpty() && isFirst) {
            // an energy whose unit the file does not tell is asked for, never guessed
            boolean isAsked = unit == null && analyte.unit().kind() == Kind.ENERGY_DENSITY;
            known.put(row.unit.name(), isAsked ? "" : Form.id(unit == null ? analyte.unit() : unit));
        }
        var shown = row.units.isEmpty() ? Form.id(analyte.unit()) : known.getOrDefault(row.unit.name(), "");
        known.put(ask.name(), unit == null || Form.id(unit).equals(shown) ? figure : figure + " " + unit.symbol());
    }

    static Basis left(List<Reading> readings) {
        boolean received = readings.stream()
                .anyMatch(r -> r.basis() == Basis.AS_RECEIVED && r.analyte().hasBasis());
        boolean ninety = readings.stream().anyMatch(r -> r.basis() == Basis.NINETY_PCT);
        return ninety && !received ? Basis.NINETY_PCT : Basis.AS_RECEIVED;
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

    private static @Nullable Ask shownIn(Reading reading, Basis left) {
        return box(reading.analyte(), reading.basis(), left);
    }

    /** Figures that the form has no box for, from a file or another page, are kept. */
    private static List<Reading> kept(List<Reading> before) {
        var kept = new ArrayList<Reading>();
        var shown = new HashSet<String>();
        for (var reading : before) {
            var ask = shownIn(reading, left(before));
            if (ask == null || !shown.add(ask.name())) {
                kept.add(reading);
            }
        }
        return kept;
    }

    /** Every figure typed; what cannot be read is noted on the form. */
    static List<Reading> read(Form form, List<Reading> before) {
        var readings = new ArrayList<Reading>();
        for (var row : ROWS) {
            var typed = row.boxes().stream().filter(ask -> !form.isEmpty(ask)).toList();
            if (typed.isEmpty()) {
                continue;
            }
            var unit = unit(form, row);
            if (unit == null) {
                continue;
            }
            for (var ask : typed) {
                var quantity = form.maybeQuantity(new Ask(ask.name(), ask.label(), unit, "", 7));
                if (quantity != null) {
                    readings.add(reading(form, row, ask, quantity));
                }
            }
        }
        readings.addAll(kept(before));
        return readings;
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

    private static Reading reading(Form form, Row row, Ask ask, Quantity quantity) {
        var left = form.isTicked(NINETY) ? Basis.NINETY_PCT : Basis.AS_RECEIVED;
        var basis = ask == row.left ? left : Basis.DRY_MATTER;
        return new Reading(row.analyte, quantity.value(), quantity.unit(), basis);
    }
}
