package haywright.forage;

import haywright.workings.Origin;
import java.util.Collections;
import java.util.EnumMap;
import java.util.Map;
import java.util.OptionalDouble;
import org.jspecify.annotations.Nullable;

/**
 * What is known of a feed: a value for each analyte known, on dry matter in {@link Analyte#unit()} (dry matter itself
 * in percent as fed), with where it came from. An analyte that is not in it is not known; it is never taken for zero.
 *
 * @param expected what lots like this usually have of a danger that nobody measured in it: never a figure of the lot
 */
public record Composition(Map<Analyte, Known> values, Map<Analyte, Marginal> expected) implements Made {
    /** A danger above the safe line counts at what its lot has less of this often: published for nothing finer (judgment). */
    public static final double UPPER = 0.90;

    public Composition {
        values = values.isEmpty() ? Map.of() : Collections.unmodifiableMap(new EnumMap<>(values));
        expected = expected.isEmpty() ? Map.of() : Collections.unmodifiableMap(new EnumMap<>(expected));
    }

    /** Nothing expected of what nobody measured. */
    public Composition(Map<Analyte, Known> values) {
        this(values, Map.of());
    }

    /**
     * @param value in the analyte's unit, on dry matter: the expected one
     * @param lot where the lot's own average may lie; null where nobody says how far lots of the feed differ
     * @param below the limit that a report found it to be under, where no figure was measured; null for a figure
     * @param unit where one bale or load of it may lie; only for what kills, which is eaten by the bale
     */
    public record Known(
            double value,
            Origin origin,
            @Nullable Marginal lot,
            @Nullable Marginal unit,
            @Nullable Double below) {
        public Known(double value, Origin origin) {
            this(value, origin, null, null, null);
        }
    }

    @Override
    public OptionalDouble value(Analyte analyte) {
        var known = values.get(analyte);
        return known == null ? OptionalDouble.empty() : OptionalDouble.of(known.value());
    }

    /**
     * What counts for a need: of what was only found to be less than a limit, nothing, since nobody knows that any is
     * there.
     */
    public OptionalDouble least(Analyte analyte) {
        var known = values.get(analyte);
        return known == null ? OptionalDouble.empty() : OptionalDouble.of(known.below() == null ? known.value() : 0);
    }

    /** What counts against a ceiling: of what was only found to be less than a limit, the limit. */
    public OptionalDouble most(Analyte analyte) {
        var known = values.get(analyte);
        return known == null
                ? OptionalDouble.empty()
                : OptionalDouble.of(known.below() == null ? known.value() : known.below());
    }

    /**
     * What a danger of a whole lot counts at once its composite is above the safe line: what was found, or, where it is
     * more, what the lot has less of nine times in ten on its own scale.
     */
    public OptionalDouble upper(Analyte analyte) {
        var known = values.get(analyte);
        if (known == null) {
            return OptionalDouble.empty();
        }
        var lot = known.lot();
        return OptionalDouble.of(lot == null ? known.value() : Math.max(known.value(), lot.quantile(UPPER)));
    }

    /** What one bale or load in a hundred has more of; empty where nobody says how bales differ. For words, not for limits. */
    public OptionalDouble oneInAHundred(Analyte analyte) {
        var known = values.get(analyte);
        var unit = known == null ? null : known.unit();
        return unit == null ? OptionalDouble.empty() : OptionalDouble.of(unit.quantile(0.99));
    }

    public boolean knows(Analyte analyte) {
        return values.containsKey(analyte);
    }
}
