package haywright.cattle;

import static java.util.stream.Collectors.toMap;

import haywright.quantity.Quantity;
import haywright.quantity.Unit;
import haywright.workings.Note.Level;
import haywright.workings.PublishedTable;
import java.math.BigDecimal;
import java.math.MathContext;
import java.util.Locale;
import java.util.Map;
import java.util.OptionalDouble;

/** What is possible, what is usual and what is asked about: one row of {@code herd_limits.csv}. */
record Limits(PublishedTable.Row row) {
    private static final Map<String, Limits> TABLE =
            PublishedTable.read(Limits.class, "herd_limits.csv").rows().stream()
                    .collect(toMap(r -> r.text("rule"), Limits::new));

    static Limits of(String rule) {
        var limits = TABLE.get(rule);
        if (limits == null) {
            throw new IllegalStateException("herd_limits.csv has no rule " + rule);
        }
        return limits;
    }

    /** @param unit the unit {@code value} is in; the words use it too */
    Findings check(String field, double value, Unit unit) {
        for (var level : Level.values()) {
            var low = bound(level, true, unit);
            var high = bound(level, false, unit);
            boolean inside =
                    low.orElse(Double.NEGATIVE_INFINITY) <= value && value <= high.orElse(Double.POSITIVE_INFINITY);
            if (!inside) {
                return Findings.one(
                        level,
                        row.text("rule"),
                        field,
                        said(value) + with(unit),
                        row.text("about") + verb(level) + between(low, high) + with(unit),
                        row.text("fix"));
            }
        }
        return Findings.NONE;
    }

    private OptionalDouble bound(Level level, boolean low, Unit unit) {
        var column = switch (level) {
            case REFUSE -> low ? "refuse_below" : "refuse_above";
            case ASK -> low ? "ask_below" : "ask_above";
            case SAY -> low ? "usual_low" : "usual_high";
        };
        var bound = row.number(column);
        return bound.isEmpty()
                ? bound
                : OptionalDouble.of(Unit.valueOf(row.text("unit")).to(unit, bound.getAsDouble()));
    }

    private static String verb(Level level) {
        return switch (level) {
            case REFUSE -> " is ";
            case ASK -> " is usually ";
            case SAY -> " is most often ";
        };
    }

    private static String between(OptionalDouble low, OptionalDouble high) {
        if (low.isEmpty()) {
            return "at most " + said(high.orElseThrow());
        }
        return high.isEmpty()
                ? "at least " + said(low.getAsDouble())
                : said(low.getAsDouble()) + " to " + said(high.getAsDouble());
    }

    private static String with(Unit unit) {
        return unit == Unit.NONE ? "" : " " + unit.symbol();
    }

    static String said(Quantity quantity) {
        return said(quantity.value()) + with(quantity.unit());
    }

    /** For a sentence: four figures at most. */
    static String said(double value) {
        if (!Double.isFinite(value)) {
            return "not a number";
        }
        var rounded = new BigDecimal(value).round(new MathContext(4)).stripTrailingZeros();
        return String.format(Locale.ROOT, "%,." + Math.max(0, rounded.scale()) + "f", rounded);
    }
}
