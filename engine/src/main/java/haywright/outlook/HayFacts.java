package haywright.outlook;

import haywright.workings.PublishedTable;
import haywright.workings.Source;

/** Figures of {@code short_of_hay.csv}, each with its source or the word judgment. */
public final class HayFacts {
    private static final PublishedTable TABLE = PublishedTable.read(HayFacts.class, "short_of_hay.csv");

    private HayFacts() {}

    /** In the unit that the table says. */
    public static double value(String id) {
        return TABLE.row("id", id).number("value").orElseThrow();
    }

    public static int days(String id) {
        return (int) value(id);
    }

    public static Source source(String id) {
        var row = TABLE.row("id", id);
        return "judgment".equals(row.text("known")) ? Source.judgment(row.text("source")) : row.source();
    }
}
