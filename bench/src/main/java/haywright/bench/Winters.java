package haywright.bench;

import haywright.app.document.BentBucket;
import haywright.app.document.BookDocument;
import haywright.app.document.RanchDocument;
import haywright.app.document.TinLantern;
import haywright.feeding.Rations;
import haywright.feeding.SeasonByRations;
import haywright.lp.Budget;
import haywright.lp.Optimum;
import haywright.outlook.Yard;
import haywright.ranch.Ranch;
import haywright.season.BookListener;
import haywright.season.BookMaker;
import haywright.season.WinterBook;
import haywright.season.given.Energies;
import haywright.season.given.Forecast;
import haywright.season.given.Season;
import haywright.season.kept.KeptBook;
import haywright.season.kept.KeptPlan;
import haywright.season.kept.WinterStory;
import haywright.season.play.Ahead;
import haywright.season.play.Blocks;
import haywright.season.play.Judge;
import haywright.season.play.Known;
import haywright.season.play.PlanProgram;
import haywright.season.play.Planner;
import haywright.season.play.Played;
import haywright.season.play.Replanned;
import haywright.season.play.Truth;
import java.nio.charset.StandardCharsets;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.function.Function;
import java.util.stream.IntStream;

/**
 * The winter book of the two invented ranches: what is given, the first plan, plans again, whole winters by other stretches and
 * by several winters at once, the bound, and the promise on fresh winters. Processor time of one thread, as multiples of one
 * plan made again. Ends with 1 if the promise is not kept.
 */
public final class Winters {
    private static final int STEP = 4;
    private static final int FRESH = 500;
    private static final double RINGS = 6.1;

    private Winters() {}

    public static void main(String[] ignored) {
        Locale.setDefault(Locale.ROOT);
        times("Tin Lantern Ranch", TinLantern.ranch());
        times("Bent Bucket Ranch", BentBucket.ranch());
        System.exit(promise() ? 0 : 1);
    }

    private static Yard yard(Ranch ranch) {
        return new Yard(ranch, ranch.settings().today(LocalDate.EPOCH));
    }

    private static void times(String name, Ranch ranch) {
        for (int warm = 0; warm < 2; warm++) {
            Season.of(yard(ranch));
        }
        double started = Cpu.seconds();
        var season = Season.of(yard(ranch));
        double given = Cpu.seconds() - started;
        var judge = new Judge(season);
        int winters = 0;
        double bound = 0;
        double boundCost = 0;
        for (int w = 0; w < season.record().size(); w += STEP) {
            var forecast = new Forecast(season, w);
            double before = Cpu.seconds();
            boundCost += judge.foreseen(Truth.drawn(season, w, w), forecast).cost();
            bound += Cpu.seconds() - before;
            winters++;
        }
        double one = winter(season, judge, Blocks.FEW, List.of(0.8))[0] / season.weeks();
        System.out.printf("%s, %d winters; one plan made again: %.1f ms, which is 1 here%n", name, winters, 1e3 * one);
        System.out.printf("  what is given of all winters %.0f%n", given / one);
        System.out.printf("  first plan, from nothing %.1f%n", first(season) / one);
        System.out.printf(
                "  bound of one winter %.1f, cost %.0f dollars%n", bound / winters / one, boundCost / winters);
        tell("few stretches, usual winter", season, judge, Blocks.FEW, List.of(0.0), one);
        tell("few stretches, 0.8 harder", season, judge, Blocks.FEW, List.of(0.8), one);
        tell("more stretches, 0.8 harder", season, judge, List.of(1, 1, 2, 4, 6), List.of(0.8), one);
        tell("weekly, 0.8 harder", season, judge, List.of(1), List.of(0.8), one);
        tell("three winters at once, 0 to 1.6", season, judge, Blocks.FEW, List.of(0.0, 0.8, 1.6), one);
        tell("five winters at once, 0 to 1.6", season, judge, Blocks.FEW, List.of(0.0, 0.4, 0.8, 1.2, 1.6), one);
        for (int many : new int[] {20, 50, 100}) {
            given(season, many);
        }
        besideGiven(season, judge, one);
        whole(ranch, one);
    }

    /** Rests of the winter as the record has them, evenly from all of it; the winter that is played is never among them. */
    private static Function<Known, List<Ahead>> rests(Season season, Forecast forecast, int count, int without) {
        var others = IntStream.range(0, season.record().size())
                .filter(w -> w != without)
                .boxed()
                .toList();
        var rests = IntStream.range(0, count)
                .mapToObj(i -> Ahead.known(
                        season,
                        forecast,
                        Truth.expected(season, others.get(i * others.size() / count % others.size()))))
                .toList();
        return known -> rests;
    }

    /**
     * The two-stage program: this week is shared, and each of so many winters of the record is known from then on. Given whole
     * to lp and to ojAlgo.
     */
    private static void given(Season season, int winters) {
        var program =
                new PlanProgram(season, Blocks.of(season, 0, Blocks.FEW), Energies.expected(season.feeds()), winters);
        var known = Judge.start(season);
        try (var session = program.open()) {
            program.move(
                    session,
                    known,
                    rests(season, new Forecast(season, -1), winters, -1).apply(known));
            double before = Cpu.seconds();
            var found = session.solve(Budget.UNLIMITED);
            double ours = Cpu.seconds() - before;
            if (!(found instanceof Optimum optimum)) {
                throw new IllegalStateException("a plan without an optimum, though everything can be missed");
            }
            var whole = session.program();
            System.out.printf(
                    "  %3d winters as one program: %,d rows, %,d columns, lp's optimum %.0f%n",
                    winters, whole.rows().size(), whole.columns().size(), optimum.objective());
            var model = MpsRun.ojAlgo(whole.toMps().getBytes(StandardCharsets.UTF_8));
            before = Cpu.seconds();
            var other = model.minimise();
            System.out.printf(
                    "      ojAlgo %s, %.0f, in %.1f times lp's time%n",
                    other.getState(), other.getValue(), (Cpu.seconds() - before) / ours);
        }
    }

    /** What deciding by twenty whole winters at once costs on the same winters, beside one winter somewhat harder than usual. */
    private static void besideGiven(Season season, Judge judge, double one) {
        int twenty = Math.min(20, season.record().size() - 1);
        double cost = 0;
        int winters = 0;
        double started = Cpu.seconds();
        var programs = new Planner.Programs(season, Blocks.FEW, twenty);
        for (int w = 0; w < season.record().size(); w += STEP) {
            var forecast = new Forecast(season, w);
            try (var policy = new Replanned(season, rests(season, forecast, twenty, w), new Planner(programs, true))) {
                cost += judge.play(Truth.drawn(season, w, w), forecast, policy).cost();
            }
            winters++;
        }
        System.out.printf(
                "  %-32s a winter %6.0f, cost %.0f dollars%n",
                "two stages, %d winters each week".formatted(twenty),
                (Cpu.seconds() - started) / winters / one,
                cost / winters);
    }

    /** All that a page shows, as it ships: 200 winters, how hard to plan for chosen, what could be done priced. On one thread. */
    private static void whole(Ranch ranch, double one) {
        var yard = yard(ranch);
        double before = Cpu.seconds();
        var season = SeasonByRations.of(new Rations(yard));
        System.out.printf("  its rations, and what is given of all winters %.0f%n", (Cpu.seconds() - before) / one);
        var lines = new ArrayList<KeptBook.Line>();
        var stories = new ArrayList<WinterStory>();
        long empty = heap();
        double started = Cpu.seconds();
        var book = BookMaker.whole(1, 1).of(yard, season, new BookListener() {
            @Override
            public void played(int done, int of, Played winter) {
                lines.add(KeptBook.Line.of(winter, season));
                if (stories.size() < season.record().size()) {
                    stories.add(WinterStory.of(winter, season));
                }
            }
        });
        double took = Cpu.seconds() - started;
        var kept = KeptBook.of(book, season, KeptPlan.of(book.plan(), season), lines, stories);
        long held = heap() - empty;
        int document = new RanchDocument().tree(ranch).toString().length();
        System.out.printf(
                "  the whole book %.0f; kept it is %.1f times the ranch's own document; heap held %.1f MB%n",
                took / one, (double) BookDocument.write(kept).length() / document, held / 1048576.0);
    }

    private static long heap() {
        System.gc();
        return Runtime.getRuntime().totalMemory() - Runtime.getRuntime().freeMemory();
    }

    private static double first(Season season) {
        double started = Cpu.seconds();
        for (int i = 0; i < STEP; i++) {
            try (var policy = new Replanned(
                    season,
                    new Forecast(season, -1),
                    List.of(0.8),
                    new Planner(new Planner.Programs(season, Blocks.FEW, 1)))) {
                policy.plan(Judge.start(season));
            }
        }
        return (Cpu.seconds() - started) / STEP;
    }

    private static void tell(
            String what, Season season, Judge judge, List<Integer> growing, List<Double> hardness, double one) {
        var found = winter(season, judge, growing, hardness);
        System.out.printf(
                "  %-32s a winter %6.0f, cost %.0f dollars, worst %.0f%n", what, found[0] / one, found[1], found[2]);
    }

    /** Processor seconds, mean and worst cost of a winter, bases kept. */
    private static double[] winter(Season season, Judge judge, List<Integer> growing, List<Double> hardness) {
        var programs = new Planner.Programs(season, growing, hardness.size());
        var all = new Forecast(season, -1);
        try (var planner = new Planner(programs, true)) {
            judge.play(Truth.expected(season, 1), all, new Replanned(season, all, hardness, planner));
        }
        double cost = 0;
        double worst = Double.NEGATIVE_INFINITY;
        int winters = 0;
        double started = Cpu.seconds();
        try (var planner = new Planner(programs)) {
            for (int w = 0; w < season.record().size(); w += STEP) {
                var forecast = new Forecast(season, w);
                double of = judge.play(
                                Truth.drawn(season, w, w), forecast, new Replanned(season, forecast, hardness, planner))
                        .cost();
                cost += of;
                worst = Math.max(worst, of);
                winters++;
            }
        }
        return new double[] {(Cpu.seconds() - started) / winters, cost / winters, worst};
    }

    /** Counted of 20 with its range, and on 500 other draws of the same record. */
    private static boolean promise() {
        var ranch = TinLantern.ranch();
        var rings = ranch.with(ranch.settings().withFeedingLoss(RINGS).withHerdFactor(null));
        var book = book(rings, 1, BookMaker.DRAWS);
        var fresh = book(rings, 2, FRESH);
        double share = WinterBook.OF * (double) fresh.lasted() / fresh.draws();
        System.out.printf(
                "The promise, Tin Lantern Ranch with ring feeders: %d of 20 (%.1f to %.1f) on %d winters; on %d fresh ones %.1f%n",
                book.lasts().orElse(-1), book.low(), book.high(), book.draws(), fresh.draws(), share);
        return share >= book.low() - 1 && share <= book.high() + 1;
    }

    private static WinterBook book(Ranch ranch, long seed, int draws) {
        return new BookMaker(seed, draws, 2, false, false, () -> false).of(yard(ranch), BookListener.NONE);
    }
}
