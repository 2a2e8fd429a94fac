package haywright.season.play;

import haywright.quantity.Unit;
import haywright.season.given.Facts;
import haywright.season.given.Forecast;
import haywright.season.given.Season;
import java.util.Arrays;
import java.util.List;
import java.util.function.Function;

/**
 * The plan made again each week, for a winter harder than usual, or for several of which this week is shared. On averages it
 * is planned for a winter of hardness 0.
 */
public final class Replanned implements Policy {
    private static final double LEAST_SALE = Unit.TON.toBase(Facts.value("sale_tons"));

    private final Season season;
    private final Function<Known, List<Ahead>> rest;
    private final Function<Known, List<Ahead>> hard;
    private final Planner planner;

    /**
     * @param hardness of each scenario, the mildest first
     * @param planner of this thread; closed with this
     */
    public Replanned(Season season, Forecast forecast, List<Double> hardness, Planner planner) {
        this(
                season,
                ahead(season, forecast, hardness),
                ahead(
                        season,
                        forecast,
                        hardness.stream()
                                .map(h -> Math.max(h, Facts.value("sale_hardness")))
                                .toList()),
                planner);
        if (hardness.size() != planner.scenarios()) {
            throw new IllegalArgumentException(hardness.size() + " winters for " + planner.scenarios());
        }
    }

    /** @param rest what may come, each as likely, as many as the planner has scenarios */
    public Replanned(Season season, Function<Known, List<Ahead>> rest, Planner planner) {
        this(season, rest, rest, planner);
    }

    private Replanned(
            Season season, Function<Known, List<Ahead>> rest, Function<Known, List<Ahead>> hard, Planner planner) {
        this.season = season;
        this.rest = rest;
        this.hard = hard;
        this.planner = planner;
    }

    private static Function<Known, List<Ahead>> ahead(Season season, Forecast forecast, List<Double> hardness) {
        return known -> hardness.stream()
                .map(h -> Ahead.expected(season, forecast, known, h))
                .toList();
    }

    public Plan plan(Known known) {
        var now = known;
        var plan = solved(now);
        for (int f = opened(now, plan); f >= 0; f = opened(now, plan)) {
            var open = now.with(f, Known.Face.OPEN);
            var shut = now.with(f, Known.Face.LEFT_CLOSED);
            var opens = solved(open);
            var leaves = isSettled(known, f) ? opens : solved(shut);
            boolean isBegun = opens.cost() <= leaves.cost();
            now = isBegun ? open : shut;
            plan = isBegun ? opens : leaves;
        }
        return Arrays.stream(plan.first().sell()).anyMatch(kg -> kg > 0) ? sparing(plan, now) : plan;
    }

    private Plan solved(Known known) {
        return planner.plan(known, rest.apply(known));
    }

    /** No more is sold than a hard winter spares, and nothing that is not worth a truck. */
    private Plan sparing(Plan plan, Known now) {
        var sell = plan.first().sell().clone();
        var spared = planner.plan(now, hard.apply(now)).first().sell();
        Arrays.setAll(sell, f -> Math.min(sell[f], spared[f]));
        Arrays.setAll(sell, f -> sell[f] < LEAST_SALE ? 0 : sell[f]);
        return plan.selling(sell);
    }

    /**
     * A silage that the plan would begin now; −1 for none. It is begun only where that is no dearer, with all that then has to
     * come off its face, than to leave it shut this week.
     */
    private int opened(Known known, Plan plan) {
        for (int f = 0; f < season.feeds().size(); f++) {
            int feed = f;
            if (season.feeds().get(f).meant().faceADay() > 0
                    && known.face()[f] == Known.Face.CLOSED
                    && Arrays.stream(plan.first().eaten()).anyMatch(eaten -> eaten[feed] > 0)) {
                return f;
            }
        }
        return -1;
    }

    private boolean isSettled(Known known, int feed) {
        return known.week() == 0
                && season.eaters().stream().anyMatch(eater -> eater.firstWeek().getOrDefault(feed, 0.0) > 0);
    }

    @Override
    public Decision next(Known known) {
        return plan(known).first();
    }

    @Override
    public void close() {
        planner.close();
    }
}
