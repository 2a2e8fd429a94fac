package haywright.sampling;

import haywright.sampling.stock.Layout;
import haywright.sampling.stock.Place;
import java.util.EnumSet;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * What was said of the lot and the probe when a plan was made; a sheet printed later says the same, and outlives its lot.
 *
 * @param units how many there were; 0 where they are not counted
 * @param crop its spread was used; null takes the material's usual one
 * @param reachTiers tiers a person on the ground can core; null takes what is judged for the bale
 * @param closed faces one could not walk up to
 * @param probe null takes the usual one
 * @param baleDepthMeters 0 where it is not known
 */
public record OnSite(
        int units,
        @Nullable Crop crop,
        @Nullable Integer reachTiers,
        List<Place.Side> closed,
        @Nullable Probe probe,
        double baleDepthMeters) {
    private static final List<Place.Side> FACES =
            List.of(Place.Side.FRONT, Place.Side.RIGHT, Place.Side.BACK, Place.Side.LEFT);

    public OnSite {
        closed = List.copyOf(closed);
    }

    public static OnSite of(Subject subject) {
        var layout = subject.layout();
        return new OnSite(
                subject.units(),
                subject.crop(),
                layout instanceof Layout.Block b
                        ? (Integer) b.reachTiers()
                        : layout instanceof Layout.Pyramid p ? (Integer) p.reachTiers() : null,
                layout instanceof Layout.Block b
                        ? FACES.stream().filter(f -> !b.open().contains(f)).toList()
                        : List.of(),
                subject.probe(),
                subject.baleDepthMeters());
    }

    /** The lot as it lies now, seen with what was said then. */
    public Subject onto(Subject now) {
        return new Subject(
                now.material(),
                now.units(),
                seen(now.layout()),
                crop == null ? now.crop() : crop,
                now.densityKgPerM3(),
                baleDepthMeters,
                probe,
                now.facts());
    }

    /** What is left to say of a lot that is gone. */
    public Subject alone(Material material) {
        return new Subject(material, units, null, crop, 0, baleDepthMeters, probe, LotFacts.PLAIN);
    }

    private @Nullable Layout seen(@Nullable Layout layout) {
        if (layout instanceof Layout.Block b) {
            var open = EnumSet.copyOf(FACES);
            closed.forEach(open::remove);
            return new Layout.Block(b.rows(), b.columns(), b.tiers(), b.count(), or(b.reachTiers()), open);
        }
        return layout instanceof Layout.Pyramid p
                ? new Layout.Pyramid(p.base(), p.tiers(), p.length(), p.count(), or(p.reachTiers()))
                : layout;
    }

    private int or(int judged) {
        return reachTiers == null ? judged : reachTiers;
    }
}
