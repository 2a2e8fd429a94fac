package haywright.app.web;

import haywright.ranch.Ranch;
import haywright.workings.Refused;
import java.util.UUID;
import java.util.concurrent.TimeUnit;
import org.jspecify.annotations.Nullable;

/**
 * What the figures of a ranch take in memory goes by its pairs of a group and a feed. The pages of one large ranch, or its
 * winter book, fit beside the usual ones; two of those at once do not, so one waits. One that fits by no means is refused by
 * its size, before it ends the pages of all others.
 */
public final class LargeRanches {
    /** Ten groups on thirty stacks: above it a book takes a quarter of the shipped memory and more, measured. */
    private static final int LARGE = 300;

    /** Ration by ration fifty groups on two hundred stacks pass, measured. */
    private static final int MOST_FOR_RATIONS = 12_000;

    /** A whole winter of twenty groups on seventy feeds passes, measured. */
    private static final int MOST_FOR_BOOK = 1_500;

    /** A page that is sent away asks again after three seconds ({@link Errors}). */
    private static final long AGAIN_MILLIS = 5_000;

    private static final Object TURN = new Object();

    private static @Nullable UUID at;
    private static int inside;
    private static int books;
    private static long expected = System.nanoTime();

    private LargeRanches() {}

    /** Pairs of a group and a feed, on hand or for sale. */
    static long size(Ranch ranch) {
        return (long) ranch.groups().size()
                * (ranch.lots().size() + ranch.feedsForSale().size());
    }

    private static boolean isLarge(Ranch ranch) {
        return size(ranch) > LARGE;
    }

    private static void require(Ranch ranch, long most, String what) {
        if (size(ranch) > most) {
            throw new Refused(
                    "ranch",
                    "%,d groups and %,d feeds"
                            .formatted(
                                    ranch.groups().size(),
                                    ranch.lots().size() + ranch.feedsForSale().size()),
                    "%s: at most %,d pairs of a group and a feed can be figured".formatted(what, most),
                    "Enter stacks that are alike as one lot, and groups that are fed alike as one group.");
        }
    }

    /**
     * A page comes to figure. One of another large ranch, or of one whose book is being made, waits.
     *
     * @param waits as long as it takes; else a moment
     * @return whether it may; then it is to {@link #leave}
     * @throws Refused where the ranch is too large for any
     */
    static boolean enter(Ranch ranch, boolean waits) throws InterruptedException {
        require(ranch, MOST_FOR_RATIONS, "rations");
        if (!isLarge(ranch)) {
            return true;
        }
        long until = System.nanoTime() + TimeUnit.MILLISECONDS.toNanos(Yards.MOMENT_MILLIS);
        synchronized (TURN) {
            while (books > 0 || inside > 0 && !ranch.id().equals(at)) {
                if (waits) {
                    TURN.wait();
                    continue;
                }
                long left = TimeUnit.NANOSECONDS.toMillis(until - System.nanoTime());
                if (left <= 0) {
                    expected = System.nanoTime() + TimeUnit.MILLISECONDS.toNanos(AGAIN_MILLIS);
                    return false;
                }
                TURN.wait(left);
            }
            at = ranch.id();
            inside++;
            return true;
        }
    }

    static void leave(Ranch ranch) {
        if (isLarge(ranch)) {
            synchronized (TURN) {
                inside--;
                TURN.notifyAll();
            }
        }
    }

    /** Milliseconds until a page that was sent away has come again by itself; it goes before the next book. */
    private static long comesAgain() {
        return TimeUnit.NANOSECONDS.toMillis(expected - System.nanoTime());
    }

    /**
     * Makes a book, of a large ranch without any page at its figures or another's.
     *
     * @throws Refused where the ranch is too large
     */
    public static void book(Ranch ranch, Runnable made) throws InterruptedException {
        require(ranch, MOST_FOR_BOOK, "a winter book");
        if (!isLarge(ranch)) {
            made.run();
            return;
        }
        synchronized (TURN) {
            long left = comesAgain();
            while (inside > 0 || books > 0 || left > 0) {
                TURN.wait(inside > 0 || books > 0 ? 0 : left);
                left = comesAgain();
            }
            books++;
        }
        try {
            made.run();
        } finally {
            synchronized (TURN) {
                books--;
                TURN.notifyAll();
            }
        }
    }
}
