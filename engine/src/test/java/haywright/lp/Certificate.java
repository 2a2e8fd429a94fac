package haywright.lp;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import haywright.lp.LinearProgram.Column;
import haywright.lp.LinearProgram.Row;

/**
 * What makes a plan the best one, checked in the program's own numbers: it keeps every limit, each reduced cost is the
 * cost less what the duals pay for the column, duals and reduced costs have the sign of the limit that binds and are 0
 * where none does, and bounds times prices add up to the objective.
 */
final class Certificate {
    private static final double TOLERANCE = 1e-6;

    private Certificate() {}

    static void holds(Optimum o) {
        LinearProgram p = o.program();
        double[] paid = new double[p.columns().size()];
        double[] costs = p.columns().stream().mapToDouble(Column::cost).toArray();
        double[] magnitude = costs.clone();
        double[] sums = new double[p.rows().size()];
        double priced = p.offset();
        double pricedSize = Math.abs(p.offset());
        double cost = p.offset();
        for (int i = 0; i < sums.length; i++) {
            Row r = p.rows().get(i);
            double size = 1;
            for (int k = 0; k < r.columns().length; k++) {
                int j = r.columns()[k];
                double a = r.coefficients()[k];
                paid[j] += o.dual(i) * a;
                magnitude[j] = Math.max(Math.abs(magnitude[j]), Math.abs(o.dual(i) * a));
                sums[i] += a * o.value(j);
                size = Math.max(size, Math.abs(a * o.value(j)));
            }
            assertThat(sums[i]).as(r.name()).isCloseTo(o.activity(i), within(TOLERANCE * size));
            double part = limit(p, o.activity(i), r.lower(), r.upper(), o.dual(i), size, r.name());
            priced += part;
            pricedSize = Math.max(pricedSize, Math.abs(part));
        }
        for (int j = 0; j < costs.length; j++) {
            Column c = p.columns().get(j);
            double size = Math.max(1, Math.abs(magnitude[j]));
            assertThat(o.reducedCost(j)).as(c.name()).isCloseTo(c.cost() - paid[j], within(TOLERANCE * size));
            double part = limit(
                    p, o.value(j), c.lower(), c.upper(), o.reducedCost(j), Math.max(1, Math.abs(o.value(j))), c.name());
            priced += part;
            pricedSize = Math.max(pricedSize, Math.abs(part));
            cost += c.cost() * o.value(j);
            pricedSize = Math.max(pricedSize, Math.abs(c.cost() * o.value(j)));
        }
        assertThat(o.objective()).isCloseTo(cost, within(TOLERANCE * Math.max(1, pricedSize)));
        assertThat(o.objective()).isCloseTo(priced, within(TOLERANCE * Math.max(1, pricedSize)));
    }

    /** Checks one limit and returns what its price adds to the objective. */
    private static double limit(
            LinearProgram p, double at, double lower, double upper, double price, double size, String name) {
        assertThat(at).as(name).isBetween(lower - TOLERANCE * size, upper + TOLERANCE * size);
        double whenMinimizing = p.maximizing() ? -price : price;
        if (Math.abs(price) <= 1e-9) {
            return price * at;
        }
        double binding = whenMinimizing > 0 ? lower : upper;
        if (Math.abs(price) > TOLERANCE) {
            assertThat(at)
                    .as("%s has a price of %s and binds", name, price)
                    .isCloseTo(binding, within(TOLERANCE * size));
        }
        return price * at;
    }
}
