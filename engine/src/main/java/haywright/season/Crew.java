package haywright.season;

import haywright.season.given.Forecast;
import haywright.season.given.Season;
import haywright.season.play.InOrder;
import haywright.season.play.Judge;
import haywright.season.play.Planner;
import haywright.season.play.Played;
import haywright.season.play.Policy;
import haywright.season.play.RanchsOwn;
import haywright.season.play.Replanned;
import haywright.season.play.Truth;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.concurrent.atomic.AtomicReference;
import java.util.function.BooleanSupplier;
import java.util.function.Supplier;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;

/**
 * Winters played on several threads, each winter by one of them. What a winter gives depends on nothing but itself, so that
 * one thread and two give the same bytes; when it is enough, those that were begun are ended and no other is begun.
 */
final class Crew {
    private final Season season;
    private final Judge judge;
    private final int threads;
    private final List<Integer> growing;
    private final BooleanSupplier enough;
    private final Map<Integer, Forecast> forecasts = new ConcurrentHashMap<>();

    /** One winter with one draw of all else. */
    record Case(int winter, long seed) {}

    Crew(Season season, int threads, List<Integer> growing, BooleanSupplier enough) {
        this.season = season;
        this.threads = threads;
        this.growing = growing;
        this.enough = enough;
        judge = new Judge(season);
    }

    boolean isEnough() {
        return enough.getAsBoolean();
    }

    /** The same of another season. */
    Crew of(Season other) {
        return new Crew(other, threads, growing, enough);
    }

    /** Weeks of the stretches that are planned. */
    List<Integer> growing() {
        return growing;
    }

    Season season() {
        return season;
    }

    /** Of a record without the winter that is played. */
    Forecast forecast(int winter) {
        return forecasts.computeIfAbsent(winter, w -> new Forecast(season, w));
    }

    /** Programs whose bases are those of a usual winter, planned so. */
    Planner.Programs programs(List<Double> hardness) {
        var programs = new Planner.Programs(season, growing, hardness.size());
        var forecast = forecast(-1);
        try (var planner = new Planner(programs, true)) {
            judge.play(Truth.expected(season, middle()), forecast, new Replanned(season, forecast, hardness, planner));
        }
        return programs;
    }

    /** The winter in the middle by what all groups needed. */
    int middle() {
        return ranked()[season.record().size() / 2];
    }

    /** Winters of the record, the mildest first by what all groups needed until grass. */
    int[] ranked() {
        return IntStream.range(0, season.record().size())
                .boxed()
                .sorted(Comparator.comparingDouble(this::needed))
                .mapToInt(w -> w)
                .toArray();
    }

    /** Mcal of all head until grass. */
    double needed(int winter) {
        double sum = 0;
        for (int e = 0; e < season.eaters().size(); e++) {
            var eater = season.eaters().get(e);
            for (int t = 0; t < season.allWeeks(); t++) {
                sum += (double) eater.head()
                        * eater.fed(t, season.record().late()[winter])
                        * season.record().need(winter, e, t).nem();
            }
        }
        return sum;
    }

    /** By re-planning. */
    List<Played> replanned(List<Case> cases, List<Double> hardness, Planner.Programs programs, Told told) {
        return play(
                cases,
                () -> new Planner(programs),
                (planner, forecast) -> new Replanned(season, forecast, hardness, planner),
                told);
    }

    List<Played> inOrder(List<Case> cases) {
        return play(cases, () -> null, (none, forecast) -> new InOrder(season, forecast), (i, played) -> {});
    }

    List<Played> asNow(List<Case> cases) {
        return play(cases, () -> null, (none, forecast) -> new RanchsOwn(season, forecast), (i, played) -> {});
    }

    /** Dollars of each, known in advance. */
    List<Double> foreseen(List<Case> cases) {
        return each(
                cases,
                () -> null,
                (none, one) ->
                        judge.foreseen(truth(one), forecast(one.winter())).cost(),
                (i, cost) -> {});
    }

    Truth truth(Case one) {
        return Truth.drawn(season, one.winter(), one.seed());
    }

    /** Told of each winter as it is done. */
    interface Told {
        void of(int index, Played played);
    }

    private interface Decides<P> {
        Policy by(P planner, Forecast forecast);
    }

    private interface Does<P, T> {
        T with(P planner, Case one);
    }

    private interface Done<T> {
        void is(int index, T result);
    }

    private <P extends @Nullable AutoCloseable> List<Played> play(
            List<Case> cases, Supplier<P> planner, Decides<P> decides, Told told) {
        return each(
                cases,
                planner,
                (p, one) -> judge.play(truth(one), forecast(one.winter()), decides.by(p, forecast(one.winter()))),
                told::of);
    }

    private <P extends @Nullable AutoCloseable, T> List<T> each(
            List<Case> cases, Supplier<P> planner, Does<P, T> does, Done<T> done) {
        var results = new Object[cases.size()];
        var next = new AtomicInteger();
        var failed = new AtomicReference<@Nullable Throwable>();
        Runnable work = () -> {
            try (P own = planner.get()) {
                while (failed.get() == null && !enough.getAsBoolean()) {
                    int i = next.getAndIncrement();
                    if (i >= results.length) {
                        return;
                    }
                    T result = does.with(own, cases.get(i));
                    synchronized (results) {
                        results[i] = result;
                        done.is(i, result);
                    }
                }
            } catch (Exception | Error e) {
                failed.compareAndSet(null, e);
            }
        };
        var others = new ArrayList<Thread>();
        for (int i = 1; i < Math.min(threads, cases.size()); i++) {
            var thread = new Thread(work, "winter book " + i);
            thread.setDaemon(true);
            thread.start();
            others.add(thread);
        }
        work.run();
        for (var thread : others) {
            join(thread);
        }
        rethrow(failed.get());
        @SuppressWarnings("unchecked")
        var all = (List<T>) Arrays.stream(results).filter(Objects::nonNull).toList();
        return all;
    }

    private static void join(Thread thread) {
        boolean interrupted = false;
        while (thread.isAlive()) {
            try {
                thread.join();
            } catch (InterruptedException e) {
                interrupted = true;
            }
        }
        if (interrupted) {
            Thread.currentThread().interrupt();
        }
    }

    private static void rethrow(@Nullable Throwable failure) {
        if (failure instanceof RuntimeException e) {
            throw e;
        }
        if (failure instanceof Error e) {
            throw e;
        }
        if (failure != null) {
            throw new IllegalStateException(failure);
        }
    }
}
