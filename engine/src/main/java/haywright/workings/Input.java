package haywright.workings;

import haywright.quantity.Unit;

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
}
