package haywright.cattle;

import static java.util.stream.Collectors.toMap;

import haywright.quantity.Kind;
import haywright.quantity.Unit;
import haywright.workings.Note.Level;
import haywright.workings.Problem;
import haywright.workings.PublishedTable;
import java.math.BigDecimal;
import java.math.MathContext;
import java.util.List;
import java.util.Locale;
import java.util.Map;

/**
 * What is possible, what is usual and what is most often so: one row of {@code herd_limits.csv}.
 *
 * @param about what is measured, to begin a sentence with
 * @param unit of the ranges
 * @param ranges outside the range of a level is a finding of that level; the most serious first
 */
public record Limits(String rule, String about, Unit unit, List<Bound> ranges, String fix) {
    private static final Map<String, Limits> TABLE =
            PublishedTable.read(Limits.class, "herd_limits.csv").rows().stream()
                    .map(Limits::row)
                    .collect(toMap(Limits::rule, limits -> limits));

    record Bound(Level level, Range range) {}

    record Range(double low, double high) {
        boolean holds(double value) {
            return low <= value && value <= high; // false for NaN
        }

        boolean isOpen() {
            return Double.isInfinite(low) || Double.isInfinite(high);
        }

        String words(Unit from, Unit to) {
            if (low == Double.NEGATIVE_INFINITY) {
                return "at most " + said(from.to(to, high), to);
            }
            return high == Double.POSITIVE_INFINITY
                    ? "at least " + said(from.to(to, low), to)
                    : said(from.to(to, low)) + " to " + said(from.to(to, high), to);
        }
    }

    public static Limits of(String rule) {
        var limits = TABLE.get(rule);
        if (limits == null) {
            throw new IllegalStateException("herd_limits.csv has no rule " + rule);
        }
        return limits;
    }

    /** @param given the unit {@code value} is in; the words use it too */
    public Findings check(String field, double value, Unit given) {
        double asTable = given.to(unit, value);
        for (int i = 0; i < ranges.size(); i++) { // the road of every draw: no iterator
            var bound = ranges.get(i);
            if (!bound.range.holds(asTable)) {
                return Findings.one(
                        bound.level,
                        rule,
                        field,
                        () -> new Problem(
                                field,
                                said(value, given),
                                about + verb(bound.level) + bound.range.words(unit, given),
                                guess(asTable, given) + fix));
            }
        }
        return Findings.NONE;
    }

    /** Names the slip of the decimal point that would explain a figure; empty where none does. */
    private String guess(double value, Unit given) {
        var likely = ranges.stream()
                .filter(bound -> bound.level == Level.ASK)
                .findFirst()
                .orElseThrow()
                .range;
        boolean isMeasured = unit.kind() == Kind.MASS || unit.kind() == Kind.MASS_A_DAY;
        if (!isMeasured || likely.isOpen() || !(value > 0)) {
            return "";
        }
        double slipped = value < likely.low ? value * 10 : value / 10;
        return likely.holds(slipped) && !likely.holds(value)
                ? "Did you mean " + said(unit.to(given, slipped), given) + "? "
                : "";
    }

    private static Limits row(PublishedTable.Row row) {
        var ranges = List.of(
                new Bound(Level.REFUSE, range(row, "refuse_below", "refuse_above")),
                new Bound(Level.ASK, range(row, "ask_below", "ask_above")),
                new Bound(Level.SAY, range(row, "usual_low", "usual_high")));
        return new Limits(row.text("rule"), row.text("about"), Unit.valueOf(row.text("unit")), ranges, row.text("fix"));
    }

    private static Range range(PublishedTable.Row row, String low, String high) {
        return new Range(
                row.number(low).orElse(Double.NEGATIVE_INFINITY),
                row.number(high).orElse(Double.POSITIVE_INFINITY));
    }

    private static String verb(Level level) {
        return switch (level) {
            case REFUSE -> " is ";
            case ASK -> " is usually ";
            case SAY -> " is most often ";
        };
    }

    public static String said(double value, Unit unit) {
        return unit == Unit.NONE ? said(value) : said(value) + " " + unit.symbol();
    }

    /** For a sentence: four figures at most. */
    public static String said(double value) {
        if (!Double.isFinite(value)) {
            return "not a number";
        }
        var rounded = new BigDecimal(value).round(new MathContext(4)).stripTrailingZeros();
        return String.format(Locale.ROOT, "%,." + Math.max(0, rounded.scale()) + "f", rounded);
    }
}
