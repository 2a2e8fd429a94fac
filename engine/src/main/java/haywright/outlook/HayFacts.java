package haywright.outlook;

import haywright.cattle.AnimalClass;
import haywright.cattle.herd.Group;
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

    /** Mature cows in good condition: the only cattle whose hay is stretched, and that practice gives straw. */
    public static boolean isSturdy(Group group) {
        return group.animals() == AnimalClass.MATURE_COW && group.conditionScore() >= value("thin");
    }

    public static Source source(String id) {
        var row = TABLE.row("id", id);
        return "judgment".equals(row.text("known")) ? Source.judgment(row.text("source")) : row.source();
    }
}
