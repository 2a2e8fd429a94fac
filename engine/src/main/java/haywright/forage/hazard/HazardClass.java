package haywright.forage.hazard;

import haywright.forage.Analyte;
import haywright.workings.PublishedTable;
import haywright.workings.Source;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * One class of something that harms cattle as one source has it, a row of {@code hazard_classes.csv}. Sources and kinds of
 * cattle are shown together, the stricter first. Toxins of molds are limited as fed; a figure on dry matter is the
 * higher one, so holding it to the same limit errs to the safe side.
 *
 * @param whom which cattle it is for
 * @param lower in the hazard's unit; belongs to the class
 * @param upper belongs to the next class; null for no end
 */
public record HazardClass(
        Hazard hazard,
        String whom,
        Level level,
        double lower,
        @Nullable Double upper,
        String words,
        Source source) {
    /** What a class comes to. In rising order. */
    public enum Level {
        SAFE,
        WATCH,
        DANGER
    }

    /** What is looked for. Nitrate of feed has its own: {@link NitrateClass}. Zearalenone and T-2 have no published limit. */
    public enum Hazard {
        HCN("Prussic acid", "ppm of dry matter"),
        AFLATOXIN("Aflatoxin", "ppb"),
        FUMONISIN("Fumonisin", "ppm"),
        DON("Vomitoxin (DON)", "ppm"),
        ERGOT("Ergot alkaloids", "ppb"),
        TDS("Dissolved solids", "mg/L"),
        SO4W("Sulfate", "mg/L"),
        NO3W("Nitrate as NO3", "mg/L");

        private final String words;
        private final String unit;

        Hazard(String words, String unit) {
            this.words = words;
            this.unit = unit;
        }

        public String words() {
            return words;
        }

        public String unit() {
            return unit;
        }

        /** Of a feed; empty for what has no limit here. */
        public static Optional<Hazard> of(Analyte analyte) {
            return switch (analyte) {
                case HCN, AFLATOXIN, FUMONISIN, DON, ERGOT -> Optional.of(valueOf(analyte.name()));
                default -> Optional.empty();
            };
        }
    }

    /** The class of every source and kind of cattle that a figure lies in, the stricter first. */
    public static List<HazardClass> of(Hazard hazard, double value) {
        return Table.ALL.stream()
                .filter(c -> c.hazard == hazard && value >= c.lower && (c.upper == null || value < c.upper))
                .sorted(Comparator.comparing(HazardClass::level).reversed().thenComparing(HazardClass::lower))
                .toList();
    }

    public static List<HazardClass> published() {
        return Table.ALL;
    }

    /** Read when first asked for. */
    private static final class Table {
        static final List<HazardClass> ALL =
                PublishedTable.read(HazardClass.class, "hazard_classes.csv").rows().stream()
                        .map(Table::of)
                        .toList();

        private static HazardClass of(PublishedTable.Row row) {
            var upper = row.number("upper");
            return new HazardClass(
                    Hazard.valueOf(row.text("hazard").toUpperCase(Locale.ROOT)),
                    row.text("whom"),
                    Level.valueOf(row.text("level").toUpperCase(Locale.ROOT)),
                    row.number("lower").orElseThrow(),
                    upper.isPresent() ? upper.getAsDouble() : null,
                    row.text("words"),
                    row.source());
        }
    }
}
