package haywright.cattle.need;

import haywright.cattle.AnimalClass;
import haywright.cattle.Pregnancy;
import haywright.workings.PublishedTable;
import java.util.List;
import java.util.Optional;

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

    /** What the trade says of the share of TDN in a diet for these cattle; empty where it says nothing. */
    public static Optional<RuleOfThumb> tdn(Need need) {
        if (need.animals() == AnimalClass.GROWING) {
            return Optional.of(of("T12-tdn"));
        }
        return stage(need).map(stage -> of(List.of("T01", "T02", "T03").get(stage)));
    }

    /** And of the share of crude protein. */
    public static Optional<RuleOfThumb> protein(Need need) {
        return stage(need)
                .map(stage -> of(List.of("T04-mid", "T04-late", "T04-milk").get(stage)));
    }

    /** 0 middle third of gestation or open, 1 last third, 2 after calving; the rules speak of mature cows only. */
    private static Optional<Integer> stage(Need need) {
        if (need.animals() != AnimalClass.MATURE_COW) {
            return Optional.empty();
        }
        if (need.milkingShare() >= 0.5) {
            return Optional.of(2);
        }
        return Optional.of(need.daysPregnant() > Pregnancy.LAST_THIRD ? 1 : 0);
    }

    public static RuleOfThumb of(String id) {
        return TABLE.stream().filter(r -> r.id.equals(id)).findFirst().orElseThrow();
    }
}
