package haywright.workings;

import haywright.quantity.Unit;
import java.util.List;
import java.util.stream.Collectors;

/** A number that went into a line, and where it came from. */
public record Input(String symbol, double value, Unit unit, Origin origin) {
    public static Input typed(String symbol, double value, Unit unit) {
        return new Input(symbol, value, unit, Origin.TYPED);
    }

    public static Input published(String symbol, double value, Unit unit, Source source) {
        return new Input(symbol, value, unit, new Origin.Published(source));
    }

    public static Input computed(String symbol, double value, Unit unit, Worked by) {
        return new Input(symbol, value, unit, new Origin.Computed(by));
    }

    /** The formula of a plain sum. */
    public static String sum(List<Input> parts) {
        return parts.stream().map(Input::symbol).collect(Collectors.joining(" + "));
    }
}
