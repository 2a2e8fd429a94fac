package haywright.forage.hazard;

import haywright.forage.Analyte;
import haywright.forage.FeedClass;
import haywright.forage.Percent;
import haywright.forage.book.FeedBook;
import haywright.forage.book.Prior;
import haywright.quantity.Unit;
import haywright.workings.Input;
import haywright.workings.Line;
import haywright.workings.Source;
import haywright.workings.Worked;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * Soil in a feed, about: its ash less the ash of clean plants. Where its kind usually has more ash than the source's clean
 * plants, the kind's own counts as clean, and ash that nineteen in twenty lots of the kind stay under is no soil at all.
 *
 * <pre>
 * clean = 8 legumes, 6 grasses, or the kind's own where that is more      percent of dry matter
 * soil  = max(0, ash − clean)
 * </pre>
 *
 * Clean plants differ by two points or more (alfalfa 6 to 8, grass 5 to 6; other sources 10 to 12 and 7 to 9 as harvested),
 * so this is rough and rather too much soil than too little. Each point of ash is a point of no energy that TDN from ADF does
 * not see.
 *
 * @param ash percent of dry matter
 * @param kind the ash of such lots; empty where nobody says it
 * @see "Undersander, Reducing Ash in Forage, University of Wisconsin: plant ash of alfalfa about 8, of grass about 6"
 */
public record SoilInFeed(boolean legume, double ash, Optional<Prior.Cell> kind) implements Worked {
    private static final Source SOURCE = Source.read(
            "Undersander, Reducing Ash in Forage, University of Wisconsin: plant ash of alfalfa 8, of grass 6");

    public SoilInFeed {
        Percent.refuseOutside("ash", "Ash", ash);
    }

    public static SoilInFeed of(FeedClass feedClass, Optional<FeedBook.Row> row, double ash) {
        boolean legume = feedClass.name().startsWith("LEGUME") || feedClass == FeedClass.MIXED_HAY;
        return new SoilInFeed(legume, ash, ashOf(feedClass, row));
    }

    /** What nineteen in twenty lots of the kind stay under; empty where nobody says it. */
    public static OptionalDouble mostOfKind(FeedClass feedClass, Optional<FeedBook.Row> row) {
        return ashOf(feedClass, row)
                .map(cell -> OptionalDouble.of(cell.marginal().high90()))
                .orElse(OptionalDouble.empty());
    }

    private static Optional<Prior.Cell> ashOf(FeedClass feedClass, Optional<FeedBook.Row> row) {
        return Prior.of(feedClass, row)
                .flatMap(kind -> kind.cells().stream()
                        .filter(cell -> cell.analyte() == Analyte.ASH)
                        .findFirst());
    }

    private double published() {
        return legume ? 8 : 6;
    }

    private double plantAsh() {
        return Math.max(published(), kind.map(cell -> cell.marginal().mean()).orElse(0.0));
    }

    /** Percent of dry matter. */
    public double percent() {
        boolean usual = kind.filter(cell -> ash <= cell.marginal().high90()).isPresent();
        return usual ? 0 : Math.max(0, ash - plantAsh());
    }

    @Override
    public List<Line> lines() {
        var clean = kind.filter(cell -> cell.marginal().mean() > published())
                .map(cell -> Input.published("clean", plantAsh(), Unit.PERCENT, cell.source()))
                .orElse(Input.published("clean", plantAsh(), Unit.PERCENT, SOURCE));
        return List.of(Line.of(
                "soil",
                percent() == 0 ? "0·(ash − clean)" : "max(0, ash − clean)",
                percent(),
                Unit.PERCENT,
                SOURCE,
                Input.typed("ash", ash, Unit.PERCENT),
                clean));
    }
}
