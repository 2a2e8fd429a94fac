package haywright.app.web.lab;

import haywright.app.web.Ask;
import haywright.app.web.Findings;
import haywright.app.web.Form;
import haywright.app.web.Option;
import haywright.app.words.Said;
import haywright.forage.Analyte;
import haywright.forage.Basis;
import haywright.quantity.Kind;
import haywright.quantity.Unit;
import java.util.ArrayList;
import java.util.EnumSet;
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
            "Some laboratories print hay that way. As received means as fed or as is.");

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

    /** The common ones, then the others. */
    static final List<Row> ROWS = rows();

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

    /** What most sheets print, and whatever else is on this one. */
    public static List<Row> open(Form form) {
        return ROWS.stream().filter(row -> isOpen(row, form)).toList();
    }

    /** The rows that nothing stands in. */
    public static List<Row> folded(Form form) {
        return ROWS.stream().filter(row -> !isOpen(row, form)).toList();
    }

    private static boolean isOpen(Row row, Form form) {
        return COMMON.contains(row.analyte()) || row.boxes().stream().anyMatch(ask -> !form.isEmpty(ask));
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

    static Ask box(String name, String label, Unit unit) {
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
        return several ? List.copyOf(analyte.accepts()) : List.of();
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

    /** An energy or a nitrate whose unit the file does not tell is asked for, never guessed. */
    static boolean isUnitAsked(Analyte analyte) {
        return analyte.unit().kind() == Kind.ENERGY_DENSITY
                || analyte == Analyte.NO3
                || analyte == Analyte.NO3N
                || analyte == Analyte.KNO3;
    }

    /** Writes a figure into its box, and its unit beside it, or behind the figure where the two columns differ. */
    static void put(Map<String, String> known, Ask ask, Analyte analyte, @Nullable Unit unit, String figure) {
        if (known.containsKey(ask.name())) {
            return;
        }
        if (Said.isWithoutLimit(figure)) {
            known.put(ask.name(), figure); // words have no unit, and a limit typed later has that of its sheet
            var said = row(analyte);
            if (unit != null && said.units.stream().anyMatch(one -> one.value().equals(Form.id(unit)))) {
                known.put(said.unit.name(), Form.id(unit));
            }
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

    /** The basis of the left column, where these are the bases of all figures. */
    static Basis left(List<@Nullable Basis> bases) {
        return bases.contains(Basis.NINETY_PCT) && !bases.contains(Basis.AS_RECEIVED)
                ? Basis.NINETY_PCT
                : Basis.AS_RECEIVED;
    }

    /** The box for a figure; null where the form has none. @param basis null where the figure has none */
    static @Nullable Ask box(Analyte analyte, @Nullable Basis basis, Basis left) {
        if (OF_WATER.contains(analyte)) {
            return null;
        }
        var row = row(analyte);
        if (row.left == null || basis == null || basis == Basis.DRY_MATTER) {
            return row.right;
        }
        return basis == left ? row.left : null;
    }
}
