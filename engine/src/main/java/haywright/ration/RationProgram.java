package haywright.ration;

import haywright.diet.Diet;
import haywright.diet.DietBlock;
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
    private final DietBlock block;
    private final DietBlock.Placed placed;
    private final Session session;

    RationProgram(Diet diet, List<PricedFeed> priced) {
        block = new DietBlock(diet);
        var program = LinearProgram.minimise();
        placed = block.addTo(
                program, priced.stream().mapToDouble(PricedFeed::costPerKgEaten).toArray(), GrowthRow.ID, 1);
        session = program.build().open();
    }

    Outcome solve() {
        return session.solve();
    }

    /** Moves an absolute row's limit. */
    void limit(int row, double limit) {
        block.limit(session, placed, block.diet().rows().get(row), limit);
    }

    /** Asks for another gain, Mcal of NEg a head and day. */
    void gain(double neg) {
        block.gain(session, placed, neg);
    }

    double[] amounts(Plan plan) {
        return IntStream.of(placed.feed()).mapToDouble(plan::value).toArray();
    }

    LinearProgram program() {
        return session.program();
    }

    @Override
    public void close() {
        session.close();
    }
}
