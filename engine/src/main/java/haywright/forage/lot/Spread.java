package haywright.forage.lot;

import java.util.Collections;
import java.util.SortedMap;
import java.util.TreeMap;

/**
 * How far one figure of a feed may lie from what is expected.
 *
 * @param mean the figure as it is expected: not the mean of draws, so that without any sureness asked the plain figure
 *     stands to the last byte
 * @param own standard deviation of what no other feed shares
 * @param shared what one standard deviation of each shared doubt moves it by, signed
 */
public record Spread(double mean, double own, SortedMap<Shared, Double> shared) {
    public Spread {
        shared = Collections.unmodifiableSortedMap(new TreeMap<>(shared));
    }

    /** A figure that was given as it stands. */
    public static Spread certain(double figure) {
        return new Spread(figure, 0, Collections.emptySortedMap());
    }

    /** Of all together, for a feed that stands alone. */
    public double sd() {
        double squares = own * own;
        for (double by : shared.values()) {
            squares += by * by;
        }
        return Math.sqrt(squares);
    }
}
