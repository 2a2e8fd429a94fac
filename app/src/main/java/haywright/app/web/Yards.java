package haywright.app.web;

import haywright.cattle.herd.Group;
import haywright.feeding.Offers;
import haywright.feeding.Rations;
import haywright.match.CarryChart;
import haywright.outlook.Yard;
import haywright.ranch.Ranch;
import io.javalin.http.Context;
import io.javalin.http.HandlerType;
import java.time.LocalDate;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.Semaphore;
import java.util.concurrent.TimeUnit;
import org.jspecify.annotations.Nullable;

/**
 * The yards of the ranches looked at last: what was worked out for one page of a revision and day serves the next. A
 * changed ranch is another ranch, and gets a yard of its own.
 *
 * <p>What is worked out once for all may take half a minute, and whoever asks for it meanwhile stands at a lock with a turn
 * that another page needs. So few may be at it at once, of one ranch and of all, that the others keep most of the turns.
 */
final class Yards {
    private static final int MOST = 6;

    /** Of a group and a feed, in all of them: what they take in memory goes by it. */
    private static final long MOST_PAIRS = 600;

    /** Who may be at the figures of one ranch at once: two groups are worked out beside each other. */
    private static final int MOST_OF_ONE = 2;
    /** The same of all ranches: half of those who are worked for ({@link Deadline}). */
    private static final int MOST_OF_ALL = 8;

    /** Most figures are there already, and whoever is before one leaves in a moment. */
    static final long MOMENT_MILLIS = 500;

    private static final String INSIDE = "at-figures";

    private final Semaphore all = new Semaphore(MOST_OF_ALL, true);

    /** Others are at the figures of this ranch: the page opens by itself a little later. */
    static final class BeingFigured extends RuntimeException implements Errors.Answered {
        private static final long serialVersionUID = 1;

        BeingFigured() {
            super(null, null, false, false);
        }
    }

    private static final class Kept {
        private final Rations rations;
        private final Map<UUID, Offers> offers = new ConcurrentHashMap<>();
        private final Semaphore inside = new Semaphore(MOST_OF_ONE, true);
        private @Nullable CarryChart chart;

        Kept(Rations rations) {
            this.rations = rations;
        }

        long size() {
            return LargeRanches.size(rations.ranch());
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

    /** What its groups are to be fed. @throws BeingFigured where too many ask at once, as the others below do */
    Rations rations(Context http, Ranch ranch, LocalDate day) {
        return entered(http, ranch, day).rations;
    }

    /** What is said of a group of it at a glance. */
    Offers offers(Context http, Ranch ranch, LocalDate day, Group group) {
        return atHand(ranch, day, group).orElseGet(() -> {
            var kept = entered(http, ranch, day);
            return kept.offers.computeIfAbsent(group.id(), id -> new Offers(kept.rations, group));
        });
    }

    /** The same, where some page had it worked out before; nobody waits. */
    synchronized Optional<Offers> atHand(Ranch ranch, LocalDate day, Group group) {
        return last.stream()
                .filter(kept -> isSame(kept.rations.ranch(), ranch)
                        && kept.rations.day().equals(day))
                .findFirst()
                .flatMap(kept -> Optional.ofNullable(kept.offers.get(group.id())));
    }

    /** Its lots against its groups. */
    CarryChart chart(Context http, Ranch ranch, LocalDate day) {
        return entered(http, ranch, day).chart();
    }

    /** The request stays inside until it {@linkplain #leave leaves}: its page asks for more and more of the figures. */
    private Kept entered(Context http, Ranch ranch, LocalDate day) {
        var kept = kept(ranch, day);
        if (http.attribute(INSIDE) != null) {
            return kept;
        }
        boolean waits = http.method() != HandlerType.GET;
        try {
            if (!LargeRanches.enter(ranch, waits)) {
                throw new BeingFigured();
            }
            try {
                enter(kept.inside, waits);
            } catch (InterruptedException | BeingFigured e) {
                LargeRanches.leave(ranch);
                throw e;
            }
            try {
                enter(all, waits);
            } catch (InterruptedException | BeingFigured e) {
                kept.inside.release();
                LargeRanches.leave(ranch);
                throw e;
            }
        } catch (InterruptedException e) {
            throw new IllegalStateException(e); // it was answered: it took too long
        }
        http.attribute(INSIDE, kept);
        return kept;
    }

    /** What was sent waits as long as a request may last: it cannot ask again by itself. */
    private static void enter(Semaphore places, boolean waits) throws InterruptedException {
        if (waits) {
            places.acquire();
        } else if (!places.tryAcquire(MOMENT_MILLIS, TimeUnit.MILLISECONDS)) {
            throw new BeingFigured();
        }
    }

    /** When a request is answered. */
    void leave(Context http) {
        Kept kept = http.attribute(INSIDE);
        if (kept != null) {
            http.attribute(INSIDE, null);
            all.release();
            kept.inside.release();
            LargeRanches.leave(kept.rations.ranch());
        }
    }

    private synchronized Kept kept(Ranch ranch, LocalDate day) {
        var known = last.stream()
                .filter(kept -> isSame(kept.rations.ranch(), ranch)
                        && kept.rations.day().equals(day))
                .findFirst();
        var kept = known.orElseGet(() -> new Kept(new Rations(ranch, day)));
        last.remove(kept);
        last.addFirst(kept);
        while (last.size() > MOST || last.stream().mapToLong(Kept::size).sum() > MOST_PAIRS) {
            // never one that somebody is at: it would be worked out twice
            var oldest = last.stream()
                    .skip(1)
                    .filter(one -> one.inside.availablePermits() == MOST_OF_ONE)
                    .reduce((newer, older) -> older);
            if (oldest.isEmpty()) {
                break;
            }
            last.remove(oldest.get());
        }
        return kept;
    }

    /** The same revision is the same object; comparing all of two ranches would cost more than it saves. */
    @SuppressWarnings("ReferenceEquality")
    private static boolean isSame(Ranch one, Ranch other) {
        return one == other;
    }
}
