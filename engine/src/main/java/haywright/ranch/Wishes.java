package haywright.ranch;

import haywright.diet.DietRow;
import haywright.diet.Sureness;
import haywright.diet.WayOfFeeding;
import haywright.quantity.Kind;
import haywright.quantity.Quantity;
import haywright.workings.Problem;
import haywright.workings.Refused;
import java.util.ArrayList;
import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/**
 * What the ranch wants of a group's ration, beyond what the cattle need.
 *
 * @param group whose ration
 * @param feeds at least or at most so much of single feeds
 * @param limitsOff practice limits switched off, by row id
 * @param way how they are fed; null until somebody says
 * @param surenessPercent how surely every need is to be met; null for what is usual
 */
public record Wishes(
        UUID group,
        List<Wish> feeds,
        List<String> limitsOff,
        @Nullable WayOfFeeding way,
        @Nullable Double surenessPercent) {
    /** Whether it was said that they eat out of a bunk: little of their grain is lost then. */
    public boolean isInABunk() {
        return way == WayOfFeeding.BUNK || way == WayOfFeeding.LIMIT_FED;
    }

    /** Nothing wanted, nothing said. */
    public static Wishes none(UUID group) {
        return new Wishes(group, List.of(), List.of(), null, null);
    }

    public Wishes {
        if (surenessPercent != null) {
            Sureness.of(surenessPercent); // refuses what is none
        }
        feeds = List.copyOf(feeds);
        limitsOff = List.copyOf(limitsOff);
    }

    /** As it is said, or as usual. */
    public Sureness sureness() {
        return surenessPercent == null ? Sureness.USUAL : Sureness.of(surenessPercent);
    }

    /**
     * @param feed the lot or the feed for sale
     * @param amount as fed per head per day, or percent of the dry matter eaten
     */
    public record Wish(UUID feed, DietRow.Sense sense, Quantity amount) {
        public Wish {
            var problems = new ArrayList<Problem>();
            var kind = amount.unit().kind();
            if (kind != Kind.MASS_A_DAY && kind != Kind.SHARE) {
                problems.add(new Problem(
                        "amount",
                        amount.asTyped(),
                        "a limit is in pounds a day or % of the dry matter",
                        "Enter pounds per head per day."));
            }
            if (amount.value() < 0) {
                problems.add(new Problem(
                        "amount",
                        amount.asTyped(),
                        "pounds are 0 or more",
                        "Enter 0 for a feed this group must not get."));
            }
            Refused.unlessEmpty(problems);
        }
    }
}
