package haywright.season.play;

import haywright.lp.Basis;
import haywright.lp.Budget;
import haywright.lp.Optimum;
import haywright.lp.Session;
import haywright.season.given.Energies;
import haywright.season.given.Season;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;

/**
 * Plans of one thread. Every week has a program of its own, built once and shared; each plan starts from the basis kept for
 * its week and from nothing else, so that it comes out the same bytes on any thread, whatever was planned before.
 */
public final class Planner implements AutoCloseable {
    private final Programs programs;
    private final Map<Integer, Session> open = new HashMap<>();

    private final boolean keeps;

    public Planner(Programs programs) {
        this(programs, false);
    }

    /** @param keeps whether later plans of the same week are to start from where these end */
    public Planner(Programs programs, boolean keeps) {
        this.programs = programs;
        this.keeps = keeps;
    }

    int scenarios() {
        return programs.scenarios();
    }

    /** @param ahead one for each scenario */
    public Plan plan(Known known, List<Ahead> ahead) {
        var program = programs.at(known.week());
        var session = open.computeIfAbsent(known.week(), week -> program.open());
        session.start(programs.basis(known.week()));
        program.move(session, known, ahead, true);
        if (session.solve(Budget.UNLIMITED) instanceof Optimum optimum) {
            var plan = program.plan(optimum, session.basis());
            if (keeps) {
                programs.keep(known.week(), plan.basis());
            }
            return plan;
        }
        throw new IllegalStateException("a plan without an optimum, though everything can be missed");
    }

    @Override
    public void close() {
        open.values().forEach(Session::close);
        open.clear();
    }

    /** A program for each week and the basis that plans of it start from. */
    public static final class Programs {
        private final Season season;
        private final List<Integer> growing;
        private final int scenarios;
        private final Map<Integer, PlanProgram> built = new ConcurrentHashMap<>();
        private final Map<Integer, Basis> bases = new ConcurrentHashMap<>();

        public Programs(Season season, List<Integer> growing, int scenarios) {
            this.season = season;
            this.growing = growing;
            this.scenarios = scenarios;
        }

        public int scenarios() {
            return scenarios;
        }

        public PlanProgram at(int week) {
            return built.computeIfAbsent(
                    week,
                    w -> new PlanProgram(
                            season, Blocks.of(season, w, growing), Energies.expected(season.feeds()), scenarios));
        }

        public Basis basis(int week) {
            return bases.getOrDefault(week, Basis.NONE);
        }

        public void keep(int week, Basis basis) {
            bases.putIfAbsent(week, basis);
        }
    }
}
