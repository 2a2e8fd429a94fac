package haywright.season.play;

import haywright.season.given.Forecast;
import haywright.season.given.Season;
import java.util.List;
import java.util.function.Function;

/**
 * The plan made again each week, for a winter harder than usual, or for several of which this week is shared. On averages it
 * is planned for a winter of hardness 0.
 */
public final class Replanned implements Policy {
    private final Function<Known, List<Ahead>> rest;
    private final Planner planner;

    /**
     * @param hardness of each scenario, the mildest first
     * @param planner of this thread; closed with this
     */
    public Replanned(Season season, Forecast forecast, List<Double> hardness, Planner planner) {
        this(
                known -> hardness.stream()
                        .map(h -> Ahead.expected(season, forecast, known, h))
                        .toList(),
                planner);
        if (hardness.size() != planner.scenarios()) {
            throw new IllegalArgumentException(hardness.size() + " winters for " + planner.scenarios());
        }
    }

    /** @param rest what may come, each as likely, as many as the planner has scenarios */
    public Replanned(Function<Known, List<Ahead>> rest, Planner planner) {
        this.rest = rest;
        this.planner = planner;
    }

    public Plan plan(Known known) {
        return planner.plan(known, rest.apply(known));
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
