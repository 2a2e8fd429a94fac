package haywright.forage.hazard;

import haywright.forage.Analyte;
import haywright.forage.Composition;
import haywright.forage.FeedClass;
import haywright.workings.PublishedTable;
import haywright.workings.Source;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;

/**
 * How a silage fermented, beside what is usual for its crop and dryness, a table of {@code fermentation.csv}. Acids in per
 * cent of dry matter, ammonia in percent of the nitrogen. Between two printed bands of dryness the nearer one is taken.
 *
 * @see "Kung and Shaver, Interpretation and Use of Silage Fermentation Analysis Reports: legume and grass silage and the pH
 *     of corn silage were read; the rest of corn silage is from memory"
 */
public record Fermentation(FeedClass feedClass, Composition made) {
    private static final String CITE =
            "Kung and Shaver, Interpretation and Use of Silage Fermentation Analysis Reports";
    private static final PublishedTable TABLE = PublishedTable.read(Fermentation.class, "fermentation.csv");

    /** Of legume, grass and corn silage lactic acid is to be three times the other acids or more; from memory. */
    private static final double LACTIC_TO_OTHERS = 3;

    /** @param low empty where there is no least */
    public record Finding(Analyte analyte, double value, OptionalDouble low, double high, Source source) {
        public boolean isUsual() {
            return value <= high && (low.isEmpty() || value >= low.getAsDouble());
        }
    }

    /** Every figure of fermentation that is known; empty for what is no silage, or none of these was measured. */
    public List<Finding> findings() {
        var silage = switch (feedClass) {
            case LEGUME_SILAGE -> "legume";
            case CEREAL_SILAGE -> "grass";
            case CORN_SILAGE -> "corn";
            default -> "";
        };
        double dryMatter = made.value(Analyte.DM).orElse(35);
        var findings = new ArrayList<Finding>();
        for (var row : TABLE.rows()) {
            var analyte = Analyte.named(row.text("analyte"));
            var value = made.value(analyte);
            if (row.text("silage").equals(silage) && value.isPresent() && isNearest(row, silage, dryMatter)) {
                findings.add(new Finding(
                        analyte,
                        value.getAsDouble(),
                        row.number("low"),
                        row.number("high").orElseThrow(),
                        row.source(CITE)));
            }
        }
        return findings;
    }

    private static boolean isNearest(PublishedTable.Row row, String silage, double dryMatter) {
        double here = away(row, dryMatter);
        return TABLE.rows().stream()
                .filter(r ->
                        r.text("silage").equals(silage) && r.text("analyte").equals(row.text("analyte")))
                .noneMatch(r -> away(r, dryMatter) < here);
    }

    private static double away(PublishedTable.Row row, double dryMatter) {
        double from = row.number("dm_from").orElseThrow();
        double to = row.number("dm_to").orElseThrow();
        // The upper end belongs to the next band.
        return dryMatter < from ? from - dryMatter : dryMatter >= to ? dryMatter - to + 1e-9 : 0;
    }

    /** Lactic acid against the other acids together; empty where it is not known or there are none. */
    public OptionalDouble lacticToOthers() {
        double others = made.value(Analyte.ACETIC).orElse(0)
                + made.value(Analyte.PROPIONIC).orElse(0)
                + made.value(Analyte.BUTYRIC).orElse(0);
        var lactic = made.value(Analyte.LACTIC);
        return lactic.isPresent() && others > 0
                ? OptionalDouble.of(lactic.getAsDouble() / others)
                : OptionalDouble.empty();
    }

    /** Whether lactic acid leads as it should; true where nobody knows. */
    public boolean lacticLeads() {
        return lacticToOthers().isEmpty() || lacticToOthers().getAsDouble() >= LACTIC_TO_OTHERS;
    }
}
