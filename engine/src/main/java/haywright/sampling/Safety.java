package haywright.sampling;

import haywright.workings.Caution;
import haywright.workings.PublishedTable;
import haywright.workings.Source;
import java.util.Arrays;
import java.util.List;

/** Published safety rules for whoever takes the sample, as the sources give them, also where they differ. */
public final class Safety {
    private static final PublishedTable TABLE = PublishedTable.read(Safety.class, "safety.csv");

    private Safety() {}

    /** Every figure of every source. */
    public static List<Caution> of(Material material) {
        return TABLE.rows().stream()
                .filter(row -> Arrays.asList(row.text("materials").split(" ")).contains(material.name()))
                .map(Safety::rule)
                .toList();
    }

    /** @param id as the table has it: "SF01" */
    public static Caution rule(String id) {
        return rule(TABLE.row("id", id));
    }

    private static Caution rule(PublishedTable.Row row) {
        var hazard = row.text("hazard");
        var number =
                row.some("value").map(v -> ": " + v + " " + row.text("unit")).orElse("");
        var cite = row.text("source");
        return new Caution(
                "%s%s: %s%s."
                        .formatted(
                                Character.toUpperCase(hazard.charAt(0)), hazard.substring(1), row.text("rule"), number),
                row.text("tier").equals("read") ? Source.read(cite) : Source.practice(cite));
    }
}
