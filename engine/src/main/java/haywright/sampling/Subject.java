package haywright.sampling;

import haywright.sampling.stock.Layout;
import haywright.sampling.stock.Place;
import haywright.workings.Refused;
import org.jspecify.annotations.Nullable;

/**
 * What is stored there to be sampled.
 *
 * @param units how many bales, plots or loads; 0 where they cannot be counted
 * @param layout how the bales lie; null where nothing is stacked, and then they are taken as loose
 * @param crop decides the book's spread; null takes the material's usual one
 * @param densityKgPerM3 as fed, from the bale's own size and weight; 0 takes the published one of its kind
 * @param probe null takes the usual one of the material
 * @param baleDepthMeters how far a probe can go into a bale before it comes out; 0 when not known
 */
public record Subject(
        Material material,
        int units,
        @Nullable Layout layout,
        @Nullable Crop crop,
        double densityKgPerM3,
        double baleDepthMeters,
        @Nullable Probe probe,
        LotFacts facts) {
    public Subject {
        if (material.isCounted() && units < 1) {
            throw new Refused(
                    "units",
                    units + " " + material.units(),
                    "a lot has at least one bale",
                    "Enter how many. Counting comes first on the field sheet.");
        }
        if (units < 0) {
            throw new Refused("units", String.valueOf(units), "a count is 0 or more", "Leave it out if not known.");
        }
        if (layout != null && layout.count() != units) {
            throw new Refused(
                    "units",
                    units + " bales, and " + layout.count() + " in the stack",
                    "the lot and its drawing have the same number of bales",
                    "Check which is right.");
        }
    }

    public static Subject of(Material material, int units) {
        return new Subject(material, units, null, null, 0, 0, null, LotFacts.PLAIN);
    }

    /** Which one of a drawn list it is, for somebody who does not know the stack: "front, 3rd from the left", "bag 7". */
    public String where(Place place) {
        return layout == null || place.side() == Place.Side.ROW
                ? material.unit() + " " + place.number()
                : layout.words(place);
    }

    public Crop cropOrUsual() {
        return crop != null ? crop : material.usualCrop();
    }
}
