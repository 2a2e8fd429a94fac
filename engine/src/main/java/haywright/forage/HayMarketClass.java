package haywright.forage;

import haywright.workings.PublishedTable;
import haywright.workings.Source;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;

/**
 * The class that hay markets report prices by, of one figure of the hay: a row of {@code hay_market_classes.csv}. One hay
 * can be of several classes, one for each figure; a buyer goes by the poorest. Alfalfa is sorted by ADF, NDF, relative
 * feed value, TDN (as {@code western-alfalfa} gives it) and protein; grass by protein alone. Between 35 and 36 % ADF the
 * table leaves a gap; it is counted to the poorer class. Looks, molds and weeds are not in it.
 *
 * @param from null for no end; an edge belongs to the poorer class
 * @param to null for no end
 */
public record HayMarketClass(
        Hay hay,
        Grade grade,
        Analyte figure,
        @Nullable Double from,
        @Nullable Double to,
        Source source) {
    /** Which table. */
    public enum Hay {
        ALFALFA,
        GRASS
    }

    /** From the best down. */
    public enum Grade {
        SUPREME("Supreme"),
        PREMIUM("Premium"),
        GOOD("Good"),
        FAIR("Fair"),
        UTILITY("Utility");

        private final String words;

        Grade(String words) {
            this.words = words;
        }

        public String words() {
            return words;
        }
    }

    public static List<HayMarketClass> published() {
        return Table.ALL;
    }

    /**
     * The class by each figure that is known, the poorest first; empty for what is neither alfalfa nor grass hay.
     *
     * @param figures on dry matter, in each analyte's unit
     */
    public static List<HayMarketClass> of(FeedClass feedClass, Function<Analyte, OptionalDouble> figures) {
        var hay = switch (feedClass) {
            case LEGUME_HAY -> Hay.ALFALFA;
            case GRASS_HAY -> Hay.GRASS;
            default -> null;
        };
        var found = new ArrayList<HayMarketClass>();
        for (var row : Table.ALL) {
            if (row.hay == hay && figures.apply(row.figure).stream().anyMatch(row::holds)) {
                found.add(row);
            }
        }
        found.sort(Comparator.comparing(HayMarketClass::grade).reversed());
        return found;
    }

    /** An edge belongs to the poorer class. */
    boolean holds(double value) {
        boolean lessIsBetter = figure == Analyte.ADF || figure == Analyte.NDF;
        boolean above = from == null || (lessIsBetter ? value >= from : value > from);
        boolean below = to == null || (lessIsBetter ? value < to : value <= to);
        return above && below;
    }

    /** Read when first asked for. */
    private static final class Table {
        static final List<HayMarketClass> ALL =
                PublishedTable.read(HayMarketClass.class, "hay_market_classes.csv").rows().stream()
                        .map(Table::of)
                        .toList();

        private static HayMarketClass of(PublishedTable.Row row) {
            var from = row.number("from");
            var to = row.number("to");
            return new HayMarketClass(
                    Hay.valueOf(row.text("hay").toUpperCase(Locale.ROOT)),
                    Grade.valueOf(row.text("name").toUpperCase(Locale.ROOT)),
                    Analyte.named(row.text("figure")),
                    from.isPresent() ? from.getAsDouble() : null,
                    to.isPresent() ? to.getAsDouble() : null,
                    row.source());
        }
    }
}
