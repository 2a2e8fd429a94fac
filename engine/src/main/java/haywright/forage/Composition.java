package haywright.forage;

import haywright.workings.Origin;
import java.util.Collections;
import java.util.EnumMap;
import java.util.Map;
import java.util.OptionalDouble;

/**
 * What is known of a feed: a value for each analyte known, on dry matter in {@link Analyte#unit()} (dry matter itself
 * in per cent as fed), with where it came from. An analyte that is not in it is not known; it is never taken for zero.
 */
public record Composition(Map<Analyte, Known> values) {
    public Composition {
        values = values.isEmpty() ? Map.of() : Collections.unmodifiableMap(new EnumMap<>(values));
    }

    /** @param value in the analyte's unit, on dry matter */
    public record Known(double value, Origin origin) {}

    public OptionalDouble value(Analyte analyte) {
        var known = values.get(analyte);
        return known == null ? OptionalDouble.empty() : OptionalDouble.of(known.value());
    }

    public boolean knows(Analyte analyte) {
        return values.containsKey(analyte);
    }
}
