package haywright.cattle.need;

import java.util.Arrays;
import java.util.Comparator;

/**
 * How far the needs of a group's animals lie apart: nine in ten lie from {@code low} to {@code high}. Where the weather
 * varies, nine in ten of its animals' days.
 *
 * @param mean of the group; the band is drawn out to it where few animals carry it beyond the nine in ten
 */
public record Spread(double low, double mean, double high) {
    private static final double TAIL = 0.05;

    /** One value and how many head it stands for. */
    record Weighted(double value, double head) {}

    static Spread of(Weighted[] values, double mean) {
        Arrays.sort(values, Comparator.comparingDouble(Weighted::value));
        return new Spread(Math.min(mean, quantile(values, TAIL)), mean, Math.max(mean, quantile(values, 1 - TAIL)));
    }

    /** Each value stands at the middle of its heads; between two it is interpolated. */
    private static double quantile(Weighted[] sorted, double share) {
        double all = Arrays.stream(sorted).mapToDouble(Weighted::head).sum();
        double at = share * all;
        double before = 0;
        double position = 0;
        for (int i = 0; i < sorted.length; i++) {
            double middle = before + sorted[i].head / 2;
            if (middle >= at) {
                return i == 0
                        ? sorted[0].value
                        : sorted[i - 1].value
                                + (sorted[i].value - sorted[i - 1].value) * (at - position) / (middle - position);
            }
            position = middle;
            before += sorted[i].head;
        }
        return sorted[sorted.length - 1].value;
    }
}
