package haywright.app.web;

import haywright.cattle.herd.Group;
import haywright.feeding.Offers;
import haywright.feeding.Rations;
import haywright.match.CarryChart;
import haywright.outlook.Yard;
import haywright.ranch.Ranch;
import java.time.LocalDate;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.Map;
import java.util.UUID;
import java.util.concurrent.ConcurrentHashMap;
import org.jspecify.annotations.Nullable;

/**
 * The yards of the ranches looked at last: what was worked out for one page of a revision and day serves the next. A
 * changed ranch is another ranch, and gets a yard of its own.
 */
final class Yards {
    private static final int MOST = 6;

    private static final class Kept {
        private final Rations rations;
        private final Map<UUID, Offers> offers = new ConcurrentHashMap<>();
        private @Nullable CarryChart chart;

        Kept(Rations rations) {
            this.rations = rations;
        }

        synchronized CarryChart chart() {
            if (chart == null) {
                chart = CarryChart.of(rations.yard());
            }
            return chart;
        }
    }

    private final Deque<Kept> last = new ArrayDeque<>();

    Yard of(Ranch ranch, LocalDate day) {
        return kept(ranch, day).rations.yard();
    }

    /** What its groups are to be fed. */
    Rations rations(Ranch ranch, LocalDate day) {
        return kept(ranch, day).rations;
    }

    /** What is said of a group of it at a glance. */
    Offers offers(Ranch ranch, LocalDate day, Group group) {
        var kept = kept(ranch, day);
        return kept.offers.computeIfAbsent(group.id(), id -> new Offers(kept.rations, group));
    }

    /** Its lots against its groups. */
    CarryChart chart(Ranch ranch, LocalDate day) {
        return kept(ranch, day).chart();
    }

    private synchronized Kept kept(Ranch ranch, LocalDate day) {
        var known = last.stream()
                .filter(kept -> isSame(kept.rations.ranch(), ranch)
                        && kept.rations.day().equals(day))
                .findFirst();
        var kept = known.orElseGet(() -> new Kept(new Rations(ranch, day)));
        last.remove(kept);
        last.addFirst(kept);
        if (last.size() > MOST) {
            last.removeLast();
        }
        return kept;
    }

    /** The same revision is the same object; comparing all of two ranches would cost more than it saves. */
    @SuppressWarnings("ReferenceEquality")
    private static boolean isSame(Ranch one, Ranch other) {
        return one == other;
    }
}
