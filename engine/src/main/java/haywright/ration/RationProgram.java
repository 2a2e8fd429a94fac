package haywright.ration;

import haywright.diet.Diet;
import haywright.diet.DietRow;
import haywright.diet.GrowthEnergy;
import haywright.lp.Infeasible;
import haywright.lp.LinearProgram;
import haywright.lp.LpSession;
import haywright.lp.Optimum;
import haywright.lp.Outcome;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;

/**
 * The linear program of a diet: one column a feed, one row a limit, tangents for growth added until they hold. Kept
 * open, so that a changed price or limit is solved from where it stood. Belongs to the thread that made it.
 */
final class RationProgram implements AutoCloseable {
    static final String GROWTH = "growth";

    /** The growth row may be missed by this share; later tangents move the cost by less than a hundredth of a cent. */
    private static final double CLOSE = 1e-9;

    private static final int MOST_CUTS = 60;

    private final Diet diet;
    private final LpSession session;
    private final int feeds;
    private final Optional<GrowthEnergy> growth;
    private int cuts;

    RationProgram(Diet diet, List<PricedFeed> priced) {
        this(diet, priced, diet.growth());
    }

    /** @param growth in place of the diet's own, for trying another gain */
    RationProgram(Diet diet, List<PricedFeed> priced, Optional<GrowthEnergy> growth) {
        this.diet = diet;
        this.growth = growth;
        feeds = priced.size();
        var program = LinearProgram.minimise();
        for (var feed : priced) {
            program.column(feed.feed().id(), feed.costPerKgEaten(), 0, Double.POSITIVE_INFINITY);
        }
        for (var row : diet.rows()) {
            add(program, row.id(), row.lower(), row.upper(), row.coefficients());
        }
        growth.ifPresent(energy -> {
            add(program, GROWTH + "_nem", energy.nem(), Double.POSITIVE_INFINITY, array(energy.nemPerKg()));
            add(program, GROWTH + "_neg", energy.neg(), Double.POSITIVE_INFINITY, array(energy.negPerKg()));
        });
        session = program.build().open();
    }

    Outcome solve() {
        var outcome = session.solve();
        while (growth.isPresent() && outcome instanceof Optimum optimum) {
            var kg = amounts(optimum);
            if (growth.get().use(kg) <= 1 + CLOSE || cuts == MOST_CUTS) {
                return optimum;
            }
            var cut = growth.get().cutAt(kg);
            cuts++;
            session.addRow(GROWTH + "_" + cuts, cut.atLeast(), Double.POSITIVE_INFINITY, all(), cut.perKg());
            outcome = session.solve();
        }
        return outcome;
    }

    void cost(int feed, double perKgEaten) {
        session.cost(feed, perKgEaten);
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

    double[] amounts(Optimum optimum) {
        return IntStream.range(0, feeds).mapToDouble(optimum::value).toArray();
    }

    /** What one more of the growth row costs: the sum of its tangents' prices; see {@link GrowthEnergy}. */
    double growthPrice(Optimum optimum) {
        double sum = 0;
        for (int i = 0; i < cuts; i++) {
            sum += optimum.dual(diet.rows().size() + 2 + i);
        }
        return sum;
    }

    /** Rows of the diet in a conflict; the growth row's parts count as one, given as a true second value. */
    ConflictingRows conflict(Infeasible infeasible) {
        var rows = new ArrayList<DietRow>();
        boolean gain = false;
        for (var limit : infeasible.limits()) {
            if (!limit.onRow()) {
                continue;
            }
            if (limit.index() < diet.rows().size()) {
                rows.add(diet.rows().get(limit.index()));
            } else {
                gain = true;
            }
        }
        return new ConflictingRows(rows, gain);
    }

    record ConflictingRows(List<DietRow> rows, boolean gain) {}

    LinearProgram program() {
        return session.program();
    }

    @Override
    public void close() {
        session.close();
    }

    private static void add(
            LinearProgram.Builder program, String name, double lower, double upper, double[] coefficients) {
        program.row(name, lower, upper, IntStream.range(0, coefficients.length).toArray(), coefficients);
    }

    private int[] all() {
        return IntStream.range(0, feeds).toArray();
    }

    private static double[] array(List<Double> list) {
        return list.stream().mapToDouble(Double::doubleValue).toArray();
    }
}
