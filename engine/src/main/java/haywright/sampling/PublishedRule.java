package haywright.sampling;

import haywright.workings.PublishedTable;
import haywright.workings.Source;
import java.util.Arrays;
import java.util.List;

/**
 * One published number on sampling one material. Sources disagree; each stands as its own row and nothing is averaged.
 *
 * @param key what the number is: units, percent, bore, depth, mass, wait_weeks, lot_tons, lot_hours, …
 * @param low, high as printed, empty where the source gives none
 * @param leftOut why a published way is not offered; empty where it is
 */
public record PublishedRule(
        String id,
        String key,
        String item,
        String low,
        String high,
        String unit,
        String note,
        String leftOut,
        Source source) {
    private static final PublishedTable TABLE = PublishedTable.read(PublishedRule.class, "rules.csv");

    public boolean isOffered() {
        return leftOut.isEmpty();
    }

    /** "15 to 20 core", as printed. */
    public String range() {
        var number = low.isEmpty() ? "at most " + high : high.isEmpty() || high.equals(low) ? low : low + " to " + high;
        return number + " " + unit;
    }

    /** Every row that speaks of the material, in the order of the table. */
    public static List<PublishedRule> of(Material material) {
        return TABLE.rows().stream()
                .filter(row -> Arrays.asList(row.text("materials").split(" ")).contains(material.name()))
                .map(PublishedRule::of)
                .toList();
    }

    public static PublishedRule named(String id) {
        return of(TABLE.row("id", id));
    }

    private static PublishedRule of(PublishedTable.Row row) {
        return new PublishedRule(
                row.text("id"),
                row.text("key"),
                row.text("item"),
                row.text("low"),
                row.text("high"),
                row.text("unit"),
                row.text("note"),
                row.text("left_out"),
                row.text("tier").equals("memory")
                        ? Source.memory(row.text("source"))
                        : Source.read(row.text("source")));
    }
}
