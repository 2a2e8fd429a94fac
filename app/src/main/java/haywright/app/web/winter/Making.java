package haywright.app.web.winter;

import haywright.outlook.Yard;
import haywright.quantity.Unit;
import haywright.ranch.Ranch;
import haywright.season.BookListener;
import haywright.season.BookMaker;
import haywright.season.WinterBook;
import haywright.season.given.Season;
import haywright.season.play.Plan;
import haywright.season.play.Played;
import haywright.workings.Problem;
import haywright.workings.Refused;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;

/** One winter book as it is made. Written by the thread that makes it and read by any page meanwhile. */
final class Making implements BookListener {
    /** The same seed draws the same winters, so the book is the same whenever it is made. */
    private static final long SEED = 1;

    /** More than a large ranch takes on a slow machine. */
    private static final long MOST_NANOS = 300_000_000_000L;

    private final Ranch ranch;
    private final long rev;
    private final LocalDate day;
    private final int threads;
    private long began = System.nanoTime();
    private @Nullable Season season;
    private List<Integer> feeds = List.of();
    private @Nullable Plan plan;
    private @Nullable WinterBook book;
    private List<Problem> refused = List.of();
    private boolean failed;
    private boolean stopped;
    private int done;
    private int of;
    private final List<Line> lines = new ArrayList<>();

    /**
     * One winter as it was played.
     *
     * @param winter of the record, from 0
     * @param tons of the hay and silage that may be fed, on hand at the start of each week, as fed
     */
    record Line(int winter, boolean lasted, List<Double> tons) {}

    /**
     * All of it at one moment.
     *
     * @param season null until it is worked out, or where it can't be
     * @param plan null until there is one
     * @param book null until it is whole or was stopped
     * @param refused why there is none
     * @param failed whether something broke that nobody expected
     * @param done winters played of {@code of}
     */
    record Now(
            @Nullable Season season,
            @Nullable Plan plan,
            @Nullable WinterBook book,
            List<Problem> refused,
            boolean failed,
            int done,
            int of,
            List<Line> lines) {
        boolean isMaking() {
            return book == null && refused.isEmpty() && !failed;
        }
    }

    Making(Ranch ranch, long rev, LocalDate day, int threads) {
        this.ranch = ranch;
        this.rev = rev;
        this.day = day;
        this.threads = threads;
    }

    long rev() {
        return rev;
    }

    LocalDate day() {
        return day;
    }

    synchronized Now now() {
        return new Now(season, plan, book, refused, failed, done, of, List.copyOf(lines));
    }

    synchronized void stop() {
        stopped = true;
    }

    /** @return what broke; empty where all went well or was refused in words */
    Optional<RuntimeException> make() {
        begins();
        try {
            var yard = new Yard(ranch, day);
            var of = Season.of(yard);
            var hay = forage(of);
            synchronized (this) {
                season = of;
                feeds = hay;
            }
            var made = new BookMaker(SEED, BookMaker.DRAWS, threads, true, true, this::isEnough).of(yard, of, this);
            synchronized (this) {
                book = made;
            }
            return Optional.empty();
        } catch (Refused e) {
            synchronized (this) {
                refused = List.copyOf(e.problems());
            }
            return Optional.empty();
        } catch (RuntimeException e) {
            synchronized (this) {
                failed = true;
            }
            return Optional.of(e);
        } catch (Error e) {
            synchronized (this) {
                failed = true;
            }
            return Optional.of(new IllegalStateException(e));
        }
    }

    /** What it waited for others does not count as its own time. */
    private synchronized void begins() {
        began = System.nanoTime();
    }

    private synchronized boolean isEnough() {
        return stopped || System.nanoTime() - began > MOST_NANOS;
    }

    @Override
    public synchronized void planned(Plan first) {
        plan = first;
    }

    @Override
    public synchronized void played(int played, int most, Played winter) {
        done = played;
        of = most;
        lines.add(new Line(
                winter.winter(),
                winter.lasted(),
                winter.weeks().stream()
                        .map(week -> Unit.TON.fromBase(feeds.stream()
                                .mapToDouble(f -> week.known().stock()[f])
                                .sum()))
                        .toList()));
    }

    private static List<Integer> forage(Season season) {
        return IntStream.range(0, season.feeds().size())
                .filter(f -> f != season.emergency() && season.feeds().get(f).isForage() && season.mayBeFed(f))
                .boxed()
                .toList();
    }
}
