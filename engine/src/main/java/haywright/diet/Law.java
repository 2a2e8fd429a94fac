package haywright.diet;

import haywright.cattle.need.Need;
import haywright.forage.Made;
import java.util.function.ToDoubleFunction;
import org.jspecify.annotations.Nullable;

/**
 * What a row asks, whatever the feeds and whatever the day: so that a colder day moves its limit and nothing else, and so
 * that it can be asked of any way a feed may be made.
 *
 * @param asks the limit for a need; the same for every need of a stage where the row has a bottom
 * @param top what a kg of dry matter adds
 * @param bottom what it adds to the divisor; null for an absolute row
 * @param beside what comes on top from beside the feeds: nitrate in the day's water
 * @param counted what of a feed's spread it counts
 */
public record Law(
        ToDoubleFunction<Need> asks,
        PerKg top,
        @Nullable PerKg bottom,
        ToDoubleFunction<Need> beside,
        Counted counted) {
    /** Of the feeds alone. */
    public Law(ToDoubleFunction<Need> asks, PerKg top, @Nullable PerKg bottom, Counted counted) {
        this(asks, top, bottom, need -> 0, counted);
    }

    /** What a kg of dry matter of a feed is worth to a row. */
    public interface PerKg {
        /** @param made as the feed is expected, or one of the ways it may be made */
        double of(Feed feed, Made made);
    }

    /** What of a feed's spread a row counts. */
    public enum Counted {
        /** Nothing: what is expected. For practice, choices and what they can hold. */
        MEAN,
        /** All of it, as surely as the ration is to be: for needs. */
        SURE,
        /** What the lot has less of nine times in ten, taken already: for nitrate. */
        UPPER_90
    }

    static Law absolute(ToDoubleFunction<Need> asks, PerKg top, Counted counted) {
        return new Law(asks, top, null, counted);
    }

    /** What the feeds must come to in a linear program: the limit of an absolute row, and without what comes from beside. */
    double rightHandSide(Need need) {
        return (bottom == null ? asks.applyAsDouble(need) : 0) - beside.applyAsDouble(need);
    }

    /** The row's coefficient in a linear program. */
    public double perKg(Feed feed, Made made, double limit) {
        return bottom == null ? top.of(feed, made) : top.of(feed, made) - limit * bottom.of(feed, made);
    }
}
