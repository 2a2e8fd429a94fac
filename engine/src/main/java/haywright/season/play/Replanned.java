package haywright.season.play;

import haywright.season.given.Forecast;
import haywright.season.given.Season;
import java.util.ArrayList;
import java.util.List;

/**
 * The plan made again each week, for a winter harder than usual, or for several of which this week is shared. On averages it
 * is planned for a winter of hardness 0.
 */
public final class Replanned implements Policy {
    private final Season season;
    private final Forecast forecast;
    private final List<Double> hardness;
    private final Planner planner;

    /**
     * @param hardness of each scenario, the mildest first
     * @param planner of this thread; closed with this
     */
    public Replanned(Season season, Forecast forecast, List<Double> hardness, Planner planner) {
        this.season = season;
        this.forecast = forecast;
        this.hardness = List.copyOf(hardness);
        this.planner = planner;
        if (hardness.size() != planner.scenarios()) {
            throw new IllegalArgumentException(hardness.size() + " winters for " + planner.scenarios());
        }
    }

    public Plan plan(Known known) {
        var ahead = new ArrayList<Ahead>();
        for (double h : hardness) {
            ahead.add(Ahead.expected(season, forecast, known, h));
        }
        return planner.plan(known, ahead);
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
