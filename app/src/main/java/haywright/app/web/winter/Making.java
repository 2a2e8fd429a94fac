package haywright.app.web.winter;

import haywright.app.document.BookDocument;
import haywright.app.store.Ranches;
import haywright.app.store.WinterBooks;
import haywright.app.web.KeptBooks;
import haywright.app.web.LargeRanches;
import haywright.app.web.Page;
import haywright.feeding.Rations;
import haywright.feeding.SeasonByRations;
import haywright.outlook.Yard;
import haywright.ranch.Ranch;
import haywright.season.BookListener;
import haywright.season.BookMaker;
import haywright.season.given.Season;
import haywright.season.kept.KeptBook;
import haywright.season.kept.KeptPlan;
import haywright.season.kept.WinterStory;
import haywright.season.play.Plan;
import haywright.season.play.Played;
import haywright.workings.Problem;
import haywright.workings.Refused;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.function.BooleanSupplier;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;

/** One winter book as it is made. Written by the thread that makes it and read by any page meanwhile. */
final class Making implements BookListener {
    /** The same seed draws the same winters, so the book is the same whenever it is made. */
    static final long SEED = 1;

    /** More than a large ranch takes on a slow machine. */
    private static final long MOST_NANOS = 300_000_000_000L;

    private static final long LOOK_NANOS = 2_000_000_000L;

    private final Ranch ranch;
    private final String hash;
    private final long rev;
    private final LocalDate day;
    private final WinterBooks store;
    private final Ranches ranches;
    private final BooleanSupplier isClosed;
    private final int threads;
    private long began;
    private long looked = System.nanoTime();
    private boolean hasBegun;
    private @Nullable Season season;
    private @Nullable KeptPlan plan;
    private @Nullable KeptBook book;
    private List<Problem> refused = List.of();
    private boolean failed;
    private boolean stopped;
    private boolean isKept;
    private @Nullable RuntimeException unkept;
    private int done;
    private int of;
    private final List<KeptBook.Line> lines = new ArrayList<>();
    private final List<WinterStory> stories = new ArrayList<>();

    /**
     * All of it at one moment.
     *
     * @param plan null until there is one
     * @param book null until it is whole or was stopped
     * @param hasBegun false while it waits for another book
     * @param isStopping whether it ends as soon as what it is at is done
     * @param refused why there is none
     * @param failed whether something broke that nobody expected
     * @param unkept why the store would not have it; null where nothing stands in the way
     * @param done winters played of {@code of}
     * @param begins the first day of each week
     * @param grass null until it is known
     */
    record Now(
            @Nullable KeptPlan plan,
            @Nullable KeptBook book,
            boolean hasBegun,
            boolean isStopping,
            List<Problem> refused,
            boolean failed,
            @Nullable RuntimeException unkept,
            int done,
            int of,
            List<LocalDate> begins,
            @Nullable LocalDate grass,
            List<KeptBook.Line> lines) {
        boolean isMaking() {
            return book == null && refused.isEmpty() && !failed;
        }

        boolean isRefused() {
            return !refused.isEmpty();
        }
    }

    Making(Page page, Ranch ranch, long rev, int threads) {
        this.ranch = ranch;
        hash = KeptBooks.hash(ranch);
        this.rev = rev;
        day = page.today();
        store = page.desk().store().winterBooks();
        ranches = page.desk().store().ranches();
        isClosed = page.desk().store()::isClosed;
        this.threads = threads;
    }

    Ranch ranch() {
        return ranch;
    }

    /** Of what it is made from. */
    String hash() {
        return hash;
    }

    long rev() {
        return rev;
    }

    /** Whether the store has it. */
    synchronized boolean isKept() {
        return isKept;
    }

    synchronized Now now() {
        var of = season;
        return new Now(
                plan,
                book,
                hasBegun,
                stopped,
                refused,
                failed,
                unkept,
                done,
                this.of,
                of == null
                        ? List.of()
                        : IntStream.range(0, of.weeks()).mapToObj(of::begins).toList(),
                of == null ? null : of.grass(),
                List.copyOf(lines));
    }

    synchronized void stop() {
        stopped = true;
    }

    /** @return what broke; empty where all went well or was refused in words */
    Optional<RuntimeException> make() {
        try {
            LargeRanches.book(ranch, this::makeAndKeep);
            return Optional.empty();
        } catch (Refused e) {
            synchronized (this) {
                refused = List.copyOf(e.problems());
            }
            return Optional.empty();
        } catch (RuntimeException e) {
            if (isClosed.getAsBoolean()) {
                return Optional.empty(); // nothing failed: the program ended first
            }
            synchronized (this) {
                failed = book == null;
                unkept = e;
            }
            return Optional.of(e);
        } catch (InterruptedException e) {
            return Optional.empty(); // the program ends
        } catch (Error e) {
            synchronized (this) {
                failed = true;
            }
            return Optional.of(new IllegalStateException(e));
        }
    }

    private void makeAndKeep() {
        begins();
        var yard = new Yard(ranch, day);
        var of = SeasonByRations.of(new Rations(yard));
        synchronized (this) {
            season = of;
        }
        var made = new BookMaker(SEED, BookMaker.DRAWS, threads, true, true, this::isEnough).of(yard, of, this);
        var whole = KeptPlan.of(made.plan(), of);
        synchronized (this) {
            book = KeptBook.of(made, of, whole, lines, stories);
        }
        keep();
    }

    /** What it waited for others does not count as its own time. */
    private synchronized void begins() {
        began = System.nanoTime();
        hasBegun = true;
    }

    /** The store no longer has it. */
    synchronized void lost() {
        isKept = false;
    }

    /** Tries again what a full disk, or a database that was away, would not keep. */
    void keepAgain() {
        if (now().book() == null || isKept()) {
            return;
        }
        RuntimeException inTheWay = null;
        try {
            keep();
        } catch (RuntimeException e) {
            inTheWay = e;
        }
        synchronized (this) {
            unkept = inTheWay;
        }
    }

    /** One that was stopped takes the place of no whole one of the same ranch. */
    private void keep() {
        var made = Objects.requireNonNull(book);
        if (made.isWhole()
                || made.draws() > 0
                        && store.of(ranch.id()).stream()
                                .noneMatch(kept -> kept.hash().equals(hash)
                                        && BookDocument.read(kept.doc()).isPresent())) {
            store.keep(ranch.id(), hash, rev, BookDocument.write(made));
            synchronized (this) {
                isKept = true;
            }
        }
    }

    private synchronized boolean isEnough() {
        return stopped || isClosed.getAsBoolean() || System.nanoTime() - began > MOST_NANOS || isRanchGone();
    }

    /** Archived meanwhile, from whichever window or program: others wait for the place. */
    private boolean isRanchGone() {
        long now = System.nanoTime();
        if (now - looked > LOOK_NANOS) {
            looked = now;
            try {
                stopped = !ranches.isHere(ranch.id());
            } catch (RuntimeException e) {
                // a database that is away for a moment ends no book
            }
        }
        return stopped;
    }

    @Override
    public synchronized void planned(Plan first) {
        plan = KeptPlan.of(first, Objects.requireNonNull(season));
    }

    @Override
    public synchronized void played(int played, int most, Played winter) {
        done = played;
        of = most;
        var line = KeptBook.Line.of(winter, Objects.requireNonNull(season));
        if (lines.stream().noneMatch(before -> before.winter().equals(line.winter()))) {
            stories.add(WinterStory.of(winter, Objects.requireNonNull(season)));
        }
        lines.add(line);
    }
}
