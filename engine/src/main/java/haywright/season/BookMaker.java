package haywright.season;

import haywright.lp.LinearProgram;
import haywright.outlook.Yard;
import haywright.season.given.Energies;
import haywright.season.given.Forecast;
import haywright.season.given.Season;
import haywright.season.play.Ahead;
import haywright.season.play.Blocks;
import haywright.season.play.Judge;
import haywright.season.play.Plan;
import haywright.season.play.PlanProgram;
import haywright.season.play.Planner;
import haywright.season.play.Played;
import haywright.workings.Refused;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.function.BooleanSupplier;
import java.util.stream.IntStream;

/**
 * Makes a winter book: first the plan, then how hard a winter to plan for, chosen on one part of the record, then winters of
 * the other part one by one with everything drawn that is not known, and beside them the same winters played otherwise.
 *
 * @param seed of all draws
 * @param draws winters to be played at most
 * @param threads that play them; the book is the same on one and on many
 * @param isChosen whether how hard a winter to plan for is chosen, which takes a dozen winters' time; else
 *     {@link #UNCHOSEN}
 * @param hasAlternatives whether what could be done is priced
 * @param growing weeks of the stretches that a plan looks at, one after the other; the last stands for all that follow
 * @param enough asked before each winter: whether it was canceled or its time is up; what is done is kept
 */
public record BookMaker(
        long seed,
        int draws,
        int threads,
        boolean isChosen,
        boolean hasAlternatives,
        List<Integer> growing,
        BooleanSupplier enough) {
    /** Somewhat harder than usual (judgment). */
    static final List<Double> UNCHOSEN = List.of(0.8);

    private static final List<Double> HARDNESS = List.of(0.0, 0.4, 0.8, 1.2);

    /** Apart by about three quarters of a standard deviation, so that three stand for all (judgment). */
    private static final double APART = 0.8;

    /** Fewer winters than this are not parted: then hardness is chosen on the winters that are shown, and it is said. */
    private static final int PARTED = 24;

    private static final int SEVEN = 7;
    private static final long MIX = 0x9E3779B97F4A7C15L;
    /** Draws of the winters on which hardness is chosen are of their own. */
    private static final long CHOOSING = 0x5DEECE66DL;

    /** All of it, on so many threads. */
    public static BookMaker whole(long seed, int threads) {
        return new BookMaker(seed, DRAWS, threads, true, true, () -> false);
    }

    /** Behind the count of 20. */
    public static final int DRAWS = 200;

    /** By stretches as they are usual. */
    public BookMaker(
            long seed, int draws, int threads, boolean isChosen, boolean hasAlternatives, BooleanSupplier enough) {
        this(seed, draws, threads, isChosen, hasAlternatives, Blocks.FEW, enough);
    }

    /** The same by stretches of so many weeks each after this one. */
    public BookMaker byWeeks(int weeks) {
        return new BookMaker(seed, draws, threads, isChosen, hasAlternatives, List.of(1, weeks), enough);
    }

    public BookMaker {
        growing = List.copyOf(growing);
        if (draws < 1 || threads < 1) {
            throw new IllegalArgumentException(draws + " winters on " + threads + " threads");
        }
    }

    /** @throws Refused where there is nothing to plan */
    public WinterBook of(Yard yard, BookListener listener) {
        return of(yard, Season.of(yard), listener);
    }

    /** @param season of the same ranch and day */
    public WinterBook of(Yard yard, Season season, BookListener listener) {
        return new Making(yard, season, listener).book();
    }

    /** Today's plan as the solver has it, for anybody to check with another one. */
    public static LinearProgram program(Season season) {
        var program = new PlanProgram(season, Blocks.of(season, 0, Blocks.FEW), Energies.expected(season.feeds()), 1);
        var known = Judge.start(season);
        try (var session = program.open()) {
            program.move(
                    session,
                    known,
                    List.of(Ahead.expected(season, new Forecast(season, -1), known, UNCHOSEN.get(0))),
                    true);
            return session.program();
        }
    }

    /**
     * Two things that could be done, together, as a book prices what could be done: by its winters, once each.
     *
     * @param season that the book was made of
     * @param hardness that what could be done was planned for ({@link WinterBook.Choice#middle()})
     * @return empty where the ranch has not both, or it was enough before it was done
     */
    public Optional<WinterBook.Alternative> together(
            Yard yard, Season season, double hardness, String one, String other) {
        if (season.record().size() == 0) {
            return Optional.empty();
        }
        var crew = new Crew(season, threads, growing, enough);
        var all = cases(shown(season), 0);
        var once = all.subList(0, Math.min(all.size(), draws));
        var priced = new Alternatives(yard, crew, once, new WinterBook.Choice(List.of(hardness))).together(one, other);
        return crew.isEnough() ? Optional.empty() : priced;
    }

    /** Winters that the count is of: five of seven where there are enough to part them. */
    private static List<Integer> shown(Season season) {
        int all = season.record().size();
        return IntStream.range(0, all)
                .filter(w -> all < PARTED || (w % SEVEN != 2 && w % SEVEN != SEVEN - 2))
                .boxed()
                .toList();
    }

    private List<Crew.Case> cases(List<Integer> shown, int draw) {
        return shown.stream().map(w -> new Crew.Case(w, seed(seed, w, draw))).toList();
    }

    private static long seed(long seed, int winter, int draw) {
        return (seed + 1) * MIX ^ (winter * 1_000_003L + draw) * (MIX >>> 1);
    }

    private final class Making {
        private final Yard yard;
        private final Season season;
        private final BookListener listener;
        private final Crew crew;
        private final Counting counting;

        Making(Yard yard, Season season, BookListener listener) {
            this.yard = yard;
            this.season = season;
            this.listener = listener;
            crew = new Crew(season, threads, growing, enough);
            counting = new Counting(season, crew);
        }

        WinterBook book() {
            var hash = Fingerprint.of(season, BookMaker.this);
            var plan = plan(UNCHOSEN);
            listener.planned(plan);
            if (season.record().size() == 0) {
                return counting.withoutWinters(hash, plan);
            }
            var shown = shown(season);
            boolean apart = shown.size() < season.record().size();
            var hardness = UNCHOSEN;
            var programs = crew.programs(UNCHOSEN);
            if (isChosen) {
                listener.doing("choosing how hard a winter to plan for");
                hardness = choose(choosing(shown), programs);
                programs = hardness.size() == 1 ? programs : crew.programs(hardness);
                plan = plan(hardness);
            }
            listener.doing("playing winters");
            var first = cases(shown, 0);
            var all = new ArrayList<>(first);
            for (int draw = 1; all.size() < draws; draw++) {
                all.addAll(cases(shown, draw));
            }
            var wanted = List.copyOf(all.subList(0, Math.min(all.size(), draws)));
            var one = List.copyOf(first.subList(0, Math.min(first.size(), wanted.size())));
            var played = new ArrayList<>(crew.replanned(one, hardness, programs, told(0, wanted.size())));
            listener.doing("playing the same winters otherwise");
            var besides = besides(one.subList(0, played.size()), played, programs);
            listener.doing("pricing what could be done");
            var alternatives = hasAlternatives && !crew.isEnough()
                    ? new Alternatives(yard, crew, one.subList(0, played.size()), new WinterBook.Choice(hardness))
                            .all(played)
                    : List.<WinterBook.Alternative>of();
            listener.doing("playing winters");
            if (played.size() == one.size()) {
                played.addAll(crew.replanned(
                        wanted.subList(one.size(), wanted.size()),
                        hardness,
                        programs,
                        told(one.size(), wanted.size())));
            }
            boolean whole = played.size() == wanted.size() && !(hasAlternatives && alternatives.isEmpty());
            return counting.book(
                    new Counting.Made(hash, plan, hardness, apart, besides, alternatives, whole),
                    wanted.subList(0, played.size()),
                    played);
        }

        private Crew.Told told(int before, int of) {
            var done = new int[] {before};
            return (i, played) -> listener.played(++done[0], of, played);
        }

        private Plan plan(List<Double> hardness) {
            return WinterPlan.plan(season, crew.forecast(-1), growing, hardness);
        }

        private List<Crew.Case> choosing(List<Integer> shown) {
            boolean apart = shown.size() < season.record().size();
            return IntStream.range(0, season.record().size())
                    .filter(w -> apart ? !shown.contains(w) : w % 2 == 0)
                    .mapToObj(w -> new Crew.Case(w, BookMaker.seed(seed ^ CHOOSING, w, 0)))
                    .toList();
        }

        /** The cheapest on average by one winter, and then whether three, of which it is the middle, are cheaper still. */
        private List<Double> choose(List<Crew.Case> cases, Planner.Programs one) {
            var best = UNCHOSEN;
            var cheapest = crew.replanned(cases, best, one, (i, p) -> {});
            for (double h : HARDNESS) {
                if (!best.equals(List.of(h))) {
                    var played = crew.replanned(cases, List.of(h), one, (i, p) -> {});
                    if (isClearlyCheaper(played, cheapest)) {
                        cheapest = played;
                        best = List.of(h);
                    }
                }
            }
            double middle = best.get(0);
            var three = List.of(middle - APART, middle, middle + APART);
            var played = crew.replanned(cases, three, crew.programs(three), (i, p) -> {});
            return isClearlyCheaper(played, cheapest) ? three : best;
        }

        /**
         * In the same winters, by more than twice its standard error. Rations are weighed by the plan of {@link #UNCHOSEN}, so
         * another one is taken only where it is better beyond chance.
         */
        private static boolean isClearlyCheaper(List<Played> one, List<Played> other) {
            int n = Math.min(one.size(), other.size());
            if (one.size() != other.size() || n < 2) {
                return false;
            }
            var saves = IntStream.range(0, n)
                    .mapToDouble(i -> other.get(i).cost() - one.get(i).cost())
                    .toArray();
            double mean = Arrays.stream(saves).average().orElse(0);
            double squares =
                    Arrays.stream(saves).map(s -> (s - mean) * (s - mean)).sum();
            return mean > 2 * Math.sqrt(squares / (n - 1) / n);
        }

        private void add(List<WinterBook.Beside> all, String what, List<Played> played) {
            if (!played.isEmpty()) {
                all.add(counting.beside(what, played));
            }
        }

        private List<WinterBook.Beside> besides(List<Crew.Case> cases, List<Played> played, Planner.Programs programs) {
            var all = new ArrayList<WinterBook.Beside>();
            if (played.isEmpty()) {
                return all;
            }
            all.add(counting.beside("planned again each week", played));
            add(all, "fed the way you feed now, opening the next lot when one runs out", crew.asNow(cases));
            add(all, "lots fed in order", crew.inOrder(cases));
            var average = programs.scenarios() == 1 ? programs : crew.programs(List.of(0.0));
            add(
                    all,
                    "planned again each week for a usual winter",
                    crew.replanned(cases, List.of(0.0), average, (i, p) -> {}));
            var known = crew.foreseen(cases);
            if (!known.isEmpty()) {
                double cost = known.stream().mapToDouble(c -> c).average().orElseThrow();
                all.add(new WinterBook.Beside(
                        "if you knew the weather, {tons} and tests ahead of time",
                        known.size(),
                        Double.NaN,
                        cost,
                        Double.NaN,
                        Double.NaN));
            }
            return all;
        }
    }

    /** The seed, and all that moves a figure: threads and time do not. */
    String words() {
        return seed + " " + draws + " " + isChosen + " " + hasAlternatives + " " + growing;
    }
}
