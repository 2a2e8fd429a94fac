package haywright.outlook;

import haywright.cattle.AnimalClass;
import haywright.cattle.herd.Group;
import haywright.ration.PricedFeed;
import haywright.workings.PublishedTable;
import haywright.workings.Source;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;

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
        return isSturdy(group.animals(), group.conditionScore());
    }

    private static boolean isSturdy(AnimalClass animals, double score) {
        return animals == AnimalClass.MATURE_COW && score >= value("thin");
    }

    /** Straw that practice gives such cattle none of, by feed id: whether they get it now does not count. */
    public static Set<String> strawNotFor(AnimalClass animals, double score, List<PricedFeed> feeds) {
        return isSturdy(animals, score)
                ? Set.of()
                : feeds.stream()
                        .filter(PricedFeed::isStraw)
                        .map(feed -> feed.feed().id())
                        .collect(Collectors.toSet());
    }

    public static Source source(String id) {
        var row = TABLE.row("id", id);
        return "judgment".equals(row.text("known")) ? Source.judgment(row.text("source")) : row.source();
    }
}
