package haywright.app.compute.shape;

import com.fasterxml.jackson.databind.JsonNode;
import haywright.app.compute.shape.Shape.Slot;
import haywright.quantity.Unit;
import haywright.workings.Problem;
import java.math.BigDecimal;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/**
 * The engine names a field as its record does, and the figure it worked with; who asked knows the key that was sent and
 * the figure that stood under it. A place inside is written as in JSON: {@code feeds[1].price}.
 */
public final class Named {
    private static final Pattern ONE_FIGURE = Pattern.compile("[-−]?\\d[\\d,.]*(E\\d+)?");

    private Named() {}

    /** @param path where json stands in what was sent; empty for all of it */
    public static Problem named(Problem problem, Shape shape, JsonNode json, String path) {
        int dot = problem.field().indexOf('.');
        var first = dot < 0 ? problem.field() : problem.field().substring(0, dot);
        int bracket = first.indexOf('[');
        var name = bracket < 0 ? first : first.substring(0, bracket);
        for (var slot : shape.slots()) {
            if (slot.inline()) {
                var inside = named(problem, slot.shape(), json, path);
                if (!json.at(pointer(inside.field().substring(path.isEmpty() ? 0 : path.length() + 1)))
                        .isMissingNode()) {
                    return inside;
                }
            } else if (slot.component().getName().equals(name)) {
                var unit = slot.units().stream()
                        .filter(u -> json.has(slot.key(u)))
                        .findFirst()
                        .orElse(slot.unit());
                var key = slot.key(unit);
                var here = at(path, key) + (bracket < 0 ? "" : first.substring(bracket));
                var sent = json.at(pointer(key + (bracket < 0 ? "" : first.substring(bracket))));
                var within = within(slot);
                if (dot >= 0 && within != null) {
                    return named(field(problem, problem.field().substring(dot + 1)), Shape.of(within), sent, here);
                }
                return asSent(field(problem, here), slot, unit, sent);
            }
        }
        return field(problem, at(path, Shape.snake(problem.field())));
    }

    private static @Nullable Class<? extends Record> within(Slot slot) {
        var element = Shape.inside(slot.type(), java.util.List.class);
        return (element == null ? slot.type() : element) instanceof Class<?> type && type.isRecord()
                ? type.asSubclass(Record.class)
                : null;
    }

    /** With the figure that was sent, where the value tells of another: one converted, rounded or worked out from it. */
    private static Problem asSent(Problem problem, Slot slot, Unit unit, JsonNode sent) {
        if (sent.isArray()) {
            for (int i = 0; i < sent.size(); i++) {
                if (sent.get(i).isNumber() && says(problem.value(), plain(sent.get(i)))) {
                    return asSent(field(problem, problem.field() + "[" + i + "]"), slot, unit, sent.get(i));
                }
            }
        }
        if (!sent.isNumber()) {
            return problem;
        }
        var typed = (plain(sent) + " " + unit.symbol()).strip();
        // only where the rule speaks of this one figure, in the unit that it was converted to
        boolean converted = unit != slot.unit()
                && problem.value()
                        .matches(ONE_FIGURE + " " + Pattern.quote(slot.unit().symbol()));
        if (converted) {
            return value(problem, typed + ", which is " + problem.value());
        }
        long figures = ONE_FIGURE.matcher(problem.value()).results().count();
        boolean ofSeveral = figures > 1 && unit != slot.unit(); // all in the unit that the rule counts in
        return figures == 0 || ofSeveral || says(problem.value(), plain(sent))
                ? value(problem, problem.value().replaceAll("(\\d)\\.0(?!\\d)", "$1"))
                : value(problem, typed);
    }

    private static boolean says(String words, String figure) {
        return Pattern.compile("(?<![\\d.,-])" + Pattern.quote(figure) + "(?![\\d]|[.,][1-9])")
                .matcher(words.replace('−', '-').replace(",", ""))
                .find();
    }

    private static String plain(JsonNode number) {
        var plain = new BigDecimal(number.asText());
        return (plain.signum() == 0 ? BigDecimal.ZERO : plain.stripTrailingZeros()).toPlainString();
    }

    private static String pointer(String place) {
        return "/"
                + place.replace("].", "/").replace('.', '/').replace('[', '/').replace("]", "");
    }

    static String at(String path, String key) {
        return path.isEmpty() ? key : path + "." + key;
    }

    private static Problem field(Problem problem, String field) {
        return new Problem(field, problem.value(), problem.rule(), problem.fix());
    }

    private static Problem value(Problem problem, String value) {
        return new Problem(problem.field(), value, problem.rule(), problem.fix());
    }
}
