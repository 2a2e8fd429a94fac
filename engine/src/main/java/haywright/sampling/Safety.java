package haywright.sampling;

import haywright.workings.Caution;
import haywright.workings.PublishedTable;
import haywright.workings.Source;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Collectors;

/** Cautions for the person who takes the sample: in plain words, and as the sources give them. Local rules come first. */
final class Safety {
    private static final PublishedTable TABLE = PublishedTable.read(Safety.class, "safety.csv");
    private static final PublishedTable PLAIN = PublishedTable.read(Safety.class, "cautions.csv");

    private Safety() {}

    /** One or two sentences a danger, the strictest figure first. */
    static List<Caution> plain(Material material) {
        return PLAIN.rows().stream()
                .filter(row -> isFor(row, material))
                .map(row -> new Caution(row.text("words"), standsOn(row, material)))
                .toList();
    }

    private static Source standsOn(PublishedTable.Row row, Material material) {
        var rows = row.some("stands_on").stream()
                .flatMap(ids -> Arrays.stream(ids.split(" ")))
                .map(id -> TABLE.row("id", id))
                .toList();
        var cites = rows.stream().map(r -> r.text("source")).distinct().collect(Collectors.joining("; "));
        return rows.isEmpty()
                ? material.method().source()
                : new Source(cites, source(rows.get(0)).known());
    }

    /** Every figure of every source. */
    static List<Caution> of(Material material) {
        return TABLE.rows().stream()
                .filter(row -> isFor(row, material))
                .map(row -> new Caution(words(row), source(row)))
                .toList();
    }

    private static boolean isFor(PublishedTable.Row row, Material material) {
        return Arrays.asList(row.text("materials").split(" ")).contains(material.name());
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
