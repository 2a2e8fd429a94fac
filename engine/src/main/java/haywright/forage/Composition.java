package haywright.forage;

import haywright.workings.Origin;
import java.util.Collections;
import java.util.EnumMap;
import java.util.Map;
import java.util.OptionalDouble;
import org.jspecify.annotations.Nullable;

/**
 * What is known of a feed: a value for each analyte known, on dry matter in {@link Analyte#unit()} (dry matter itself
 * in per cent as fed), with where it came from. An analyte that is not in it is not known; it is never taken for zero.
 */
public record Composition(Map<Analyte, Known> values) {
    /** Dangers are to stay away 99 times in a hundred (judgement). */
    private static final double SURE_OF_DANGER = 0.99;

    public Composition {
        values = values.isEmpty() ? Map.of() : Collections.unmodifiableMap(new EnumMap<>(values));
    }

    /**
     * @param value in the analyte's unit, on dry matter: the expected one
     * @param lot where the lot's own average may lie; null where nobody says how far lots of the feed differ
     * @param unit where one bale or load of it may lie; only for what kills, which is eaten by the bale
     */
    public record Known(
            double value,
            Origin origin,
            @Nullable Marginal lot,
            @Nullable Marginal unit) {
        public Known(double value, Origin origin) {
            this(value, origin, null, null);
        }
    }

    public OptionalDouble value(Analyte analyte) {
        var known = values.get(analyte);
        return known == null ? OptionalDouble.empty() : OptionalDouble.of(known.value());
    }

    /**
     * What the ceiling of a danger is held to: what was found, or, where it is more, what only one bale or load in a
     * hundred has more of. Being usually low in its kind never makes a lot safer than it was found.
     */
    public OptionalDouble dangerOfUnit(Analyte analyte) {
        var known = values.get(analyte);
        return known == null ? OptionalDouble.empty() : OptionalDouble.of(stricter(known.value(), known.unit()));
    }

    /** What a whole lot is refused by: what was found, or, where it is more, what the lot has less of 99 times in 100. */
    public OptionalDouble dangerOfLot(Analyte analyte) {
        var known = values.get(analyte);
        return known == null ? OptionalDouble.empty() : OptionalDouble.of(stricter(known.value(), known.lot()));
    }

    private static double stricter(double found, @Nullable Marginal bell) {
        return bell == null ? found : Math.max(found, bell.quantile(SURE_OF_DANGER));
    }

    public boolean knows(Analyte analyte) {
        return values.containsKey(analyte);
    }
}
