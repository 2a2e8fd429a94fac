package haywright.ration;

import haywright.diet.Diet;
import haywright.diet.DietRow;
import haywright.diet.GrowthEnergy;
import haywright.lp.LinearProgram;
import haywright.lp.Outcome;
import haywright.lp.Plan;
import haywright.lp.Session;
import java.util.List;
import java.util.stream.IntStream;

/**
 * The program of a diet: one column a feed, one row a limit, and the curved row of growth. Kept open, so that a changed
 * limit or gain is solved from where it stood. Belongs to the thread that made it.
 */
final class RationProgram implements AutoCloseable {
    private final Diet diet;
    private final Session session;
    private final int feeds;

    RationProgram(Diet diet, List<PricedFeed> priced) {
        this.diet = diet;
        feeds = priced.size();
        var program = LinearProgram.minimise();
        for (var feed : priced) {
            program.column(feed.feed().id(), feed.costPerKgEaten(), 0, Double.POSITIVE_INFINITY);
        }
        var all = IntStream.range(0, feeds).toArray();
        for (var row : diet.rows()) {
            program.row(row.id(), row.lower(), row.upper(), all, row.coefficients());
        }
        diet.growth().ifPresent(energy -> program.convex(GrowthRow.ID, all, energy));
        session = program.build().open();
    }

    Outcome solve() {
        return session.solve();
    }

    /** Moves an absolute row's limit. */
    void limit(int row, double limit) {
        var of = diet.rows().get(row);
        if (of.isRatio()) {
            throw new IllegalArgumentException(of.id() + " is a ratio: its coefficients move with its limit");
        }
        boolean least = of.sense() == DietRow.Sense.AT_LEAST;
        session.rowBounds(row, least ? limit : Double.NEGATIVE_INFINITY, least ? Double.POSITIVE_INFINITY : limit);
    }

    /** Asks for another gain. */
    void gain(GrowthEnergy energy) {
        session.convex(0, energy);
    }

    double[] amounts(Plan plan) {
        return IntStream.range(0, feeds).mapToDouble(plan::value).toArray();
    }

    LinearProgram program() {
        return session.program();
    }

    @Override
    public void close() {
        session.close();
    }
}
