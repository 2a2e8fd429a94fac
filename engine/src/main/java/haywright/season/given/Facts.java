package haywright.season.given;

import haywright.workings.PublishedTable;
import haywright.workings.Source;
import java.util.Map;
import java.util.stream.Collectors;

/** Figures of {@code season.csv}, each with its source or the word judgment. */
public final class Facts {
    private static final PublishedTable TABLE = PublishedTable.read(Facts.class, "season.csv");

    private static final Map<String, Double> VALUES = TABLE.rows().stream()
            .collect(Collectors.toUnmodifiableMap(
                    row -> row.text("id"), row -> row.number("value").orElseThrow()));

    private Facts() {}

    /** In the unit that the table says. */
    public static double value(String id) {
        var value = VALUES.get(id);
        if (value == null) {
            throw new IllegalArgumentException("season.csv has no " + id);
        }
        return value;
    }

    public static Source source(String id) {
        var row = TABLE.row("id", id);
        return "judgment".equals(row.text("known")) ? Source.judgment(row.text("source")) : row.source();
    }
}
