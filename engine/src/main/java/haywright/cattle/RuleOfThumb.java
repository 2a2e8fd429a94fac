package haywright.cattle;

import haywright.workings.PublishedTable;
import java.util.List;

/**
 * What the trade says without a computer, to stand beside a computed number.
 *
 * @param about which cattle, when
 * @param quantity what of them
 * @param unit in words: "% of dry matter"
 * @param known how it is known
 */
public record RuleOfThumb(
        String id, String about, String quantity, double low, double high, String unit, String known) {
    private static final List<RuleOfThumb> TABLE =
            PublishedTable.read(RuleOfThumb.class, "rules_of_thumb.csv").rows().stream()
                    .map(r -> new RuleOfThumb(
                            r.text("id"),
                            r.text("about"),
                            r.text("quantity"),
                            r.number("low").orElseThrow(),
                            r.number("high").orElseThrow(),
                            r.text("unit"),
                            r.text("known")))
                    .toList();

    public static List<RuleOfThumb> all() {
        return TABLE;
    }

    public static RuleOfThumb of(String id) {
        return TABLE.stream().filter(r -> r.id.equals(id)).findFirst().orElseThrow();
    }
}
