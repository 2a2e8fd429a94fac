package haywright.ration;

import haywright.diet.Diet;
import haywright.diet.DietBlock;
import haywright.diet.RowId;
import haywright.diet.Sureness;
import haywright.lp.LinearProgram;
import haywright.lp.Optimum;
import haywright.lp.Outcome;
import haywright.lp.Plan;
import haywright.lp.Session;
import java.util.List;
import java.util.Set;
import java.util.stream.IntStream;

/**
 * The program of a diet: one column a feed, one row a limit, and the curved rows. Kept open, so that a changed limit or
 * gain is solved from where it stood. Belongs to the thread that made it.
 */
final class RationProgram implements AutoCloseable {
    private final DietBlock block;
    private DietBlock.Placed placed;
    private final Session session;
    private final List<PricedFeed> priced;

    RationProgram(Diet diet, List<PricedFeed> priced, Sureness sureness) {
        block = new DietBlock(diet, sureness);
        var program = LinearProgram.minimize();
        placed = block.addTo(program, costs(priced), GrowthRow.ID, 1);
        session = program.build().open();
        this.priced = priced;
        for (int i = 0; i < placed.feed().length; i++) {
            if (Double.isFinite(priced.get(i).mostEaten())) {
                feed(i, 0, Double.POSITIVE_INFINITY);
            }
        }
    }

    /** As expected. */
    RationProgram(Diet diet, List<PricedFeed> priced) {
        this(diet, priced, Sureness.EXPECTED);
    }

    /** With these feeds alone. @param allowed their indices */
    static RationProgram of(Diet diet, List<PricedFeed> priced, Sureness sureness, Set<Integer> allowed) {
        var program = new RationProgram(diet, priced, sureness);
        for (int i = 0; i < priced.size(); i++) {
            if (!allowed.contains(i)) {
                program.feed(i, 0, 0);
            }
        }
        return program;
    }

    static double[] costs(List<PricedFeed> priced) {
        return priced.stream().mapToDouble(PricedFeed::weighedPerKgEaten).toArray();
    }

    Outcome solve() {
        return session.solve();
    }

    /** Keeps the rows that are kept surely as surely as that. */
    void keep(Sureness asked) {
        placed = block.keep(session, placed, asked, 1);
    }

    /** Moves an absolute row's limit. */
    void limit(int row, double limit) {
        block.limit(session, placed, block.diet().rows().get(row), limit);
    }

    /** Asks for another gain, Mcal of NEg a head and day. */
    void gain(double neg) {
        block.gain(session, placed, neg);
    }

    /** Holds a feed between these amounts and what one head may have of it, kg of dry matter eaten. */
    void feed(int feed, double least, double most) {
        double may = Math.min(most, priced.get(feed).mostEaten());
        session.columnBounds(placed.feed()[feed], Math.min(least, may), may);
    }

    /** @param perKgEaten what a kg of dry matter of a feed weighs from here on */
    void cost(int feed, double perKgEaten) {
        session.cost(placed.feed()[feed], perKgEaten);
    }

    double[] amounts(Plan plan) {
        return IntStream.of(placed.feed()).mapToDouble(plan::value).toArray();
    }

    /** What one unit more of a row's limit costs, dollars a head and day; of the energy for growth a Mcal of NEg. */
    double price(Optimum optimum, RowId row) {
        var at = placed.row().get(row);
        double price = at == null ? 0 : Math.abs(optimum.dual(at));
        var sure = placed.sure().get(row);
        return sure == null ? price : price + optimum.price(sure.index());
    }

    double priceOfGrowth(Optimum optimum) {
        return optimum.price(placed.growth().orElseThrow().index());
    }

    /** Whether the prices between which the mix stays mean anything: not where a curved row is tight. */
    boolean hasRanges(Optimum optimum) {
        return IntStream.range(0, placed.sure().size() + (placed.growth().isPresent() ? 1 : 0))
                .allMatch(curve -> optimum.price(curve) == 0);
    }

    LinearProgram program() {
        return session.program();
    }

    @Override
    public void close() {
        session.close();
    }
}
