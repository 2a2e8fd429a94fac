package haywright.forage;

import haywright.quantity.Unit;
import haywright.workings.Input;
import haywright.workings.Line;
import haywright.workings.Source;
import haywright.workings.Worked;
import java.util.List;

/**
 * Soil in a feed, about: its ash less the ash of clean plants.
 *
 * <pre>
 * soil = max(0, ash − 8)  legumes;  max(0, ash − 6)  grasses      per cent of dry matter
 * </pre>
 *
 * Clean plants differ by two points or more (alfalfa 6 to 8, grass 5 to 6; other sources 10 to 12 and 7 to 9 as harvested),
 * so this is rough and rather too much soil than too little. Each point of ash is a point of no energy that TDN from ADF does
 * not see.
 *
 * @param ash per cent of dry matter
 * @see "Undersander, Reducing Ash in Forage, University of Wisconsin: plant ash of alfalfa about 8, of grass about 6"
 */
public record SoilInFeed(boolean legume, double ash) implements Worked {
    private static final Source SOURCE = Source.read(
            "Undersander, Reducing Ash in Forage, University of Wisconsin: plant ash of alfalfa 8, of grass 6");

    public SoilInFeed {
        Percent.refuseOutside("ash", "Ash", ash);
    }

    private double plantAsh() {
        return legume ? 8 : 6;
    }

    /** Per cent of dry matter. */
    public double percent() {
        return Math.max(0, ash - plantAsh());
    }

    @Override
    public List<Line> lines() {
        return List.of(Line.of(
                "soil",
                "max(0, ash − %s)".formatted(Say.number(plantAsh())),
                percent(),
                Unit.PERCENT,
                SOURCE,
                Input.typed("ash", ash, Unit.PERCENT)));
    }
}
