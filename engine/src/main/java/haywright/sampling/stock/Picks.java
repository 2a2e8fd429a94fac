package haywright.sampling.stock;

import haywright.chance.Draws;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/**
 * Which bales: a systematic sample with a random start along the stack's own order, face by face and tier by tier, so
 * that every reachable face and height has its share. Over all seeds every reachable bale is equally likely.
 *
 * @param seed printed with the list; the same seed gives the same bales
 */
public record Picks(List<Place> inWalkingOrder, int reachable, int unreachable, long seed) {
    private static final Comparator<Place> BY_FACE_AND_TIER =
            Comparator.comparing(Place::side).thenComparing(Place::tier).thenComparing(Place::along);
    private static final Comparator<Place> AS_WALKED =
            Comparator.comparing(Place::side).thenComparing(Place::along).thenComparing(Place::tier);

    public Picks {
        inWalkingOrder = List.copyOf(inWalkingOrder);
    }

    /** As many bales as wanted, or all that can be reached when they are fewer. */
    public static Picks of(Layout layout, int wanted, long seed) {
        var reachable = new ArrayList<Place>();
        for (var place : layout.places()) {
            if (place.reachable()) {
                reachable.add(place);
            }
        }
        reachable.sort(BY_FACE_AND_TIER);
        int n = Math.min(wanted, reachable.size());
        double step = n == 0 ? 0 : (double) reachable.size() / n;
        double start = new Draws(seed).uniform() * step;
        var picked = new ArrayList<Place>();
        for (int i = 0; i < n; i++) {
            picked.add(reachable.get(Math.min((int) (start + i * step), reachable.size() - 1)));
        }
        picked.sort(AS_WALKED);
        return new Picks(picked, reachable.size(), layout.count() - reachable.size(), seed);
    }

    /** What the sample speaks for, in words; empty when every bale could have been drawn. */
    public String limits() {
        if (unreachable == 0) {
            return "";
        }
        int all = reachable + unreachable;
        return ("%,d of %,d bales are out of reach from the ground. The result covers the %,d"
                        + " you can reach, and the rest only if they were put up the same. Sample"
                        + " again when the stack is open.")
                .formatted(unreachable, all, reachable);
    }
}
