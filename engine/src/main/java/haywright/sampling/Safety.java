package haywright.sampling;

import haywright.workings.Caution;
import haywright.workings.PublishedTable;
import haywright.workings.Source;
import java.util.Arrays;
import java.util.List;

/** Cautions for the person who takes the sample. Local rules come first. */
final class Safety {
    private static final PublishedTable TABLE = PublishedTable.read(Safety.class, "safety.csv");

    private Safety() {}

    static List<Caution> of(Material material) {
        return TABLE.rows().stream()
                .filter(row -> Arrays.asList(row.text("materials").split(" ")).contains(material.name()))
                .map(row -> new Caution(words(row), source(row)))
                .toList();
    }

    private static String words(PublishedTable.Row row) {
        var number =
                row.some("value").map(v -> ": " + v + " " + row.text("unit")).orElse("");
        var rule = row.text("rule");
        return "%s: %s%s.".formatted(capital(row.text("hazard")), rule, number);
    }

    private static Source source(PublishedTable.Row row) {
        var cite = row.text("source");
        return row.text("tier").equals("read") ? Source.read(cite) : Source.practice(cite);
    }

    static String capital(String words) {
        return Character.toUpperCase(words.charAt(0)) + words.substring(1);
    }
}
