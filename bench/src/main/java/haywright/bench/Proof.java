package haywright.bench;

import haywright.lp.LinearProgram;
import haywright.lp.LinearProgram.Column;
import haywright.lp.LinearProgram.Row;
import haywright.lp.Optimum;

/**
 * How nearly a plan proves itself the best, from the program's own numbers, each as a share of the largest number that
 * went into it.
 *
 * @param broken the worst broken limit
 * @param priced the worst difference of a reduced cost from cost less what the duals pay for the column
 * @param slack the worst price on a limit that does not bind
 * @param gap objective against bounds times prices
 */
record Proof(double broken, double priced, double slack, double gap) {
    static Proof of(Optimum o) {
        return new Reckoning(o).proof();
    }

    double worst() {
        return Math.max(Math.max(broken, priced), Math.max(slack, gap));
    }

    private static final class Reckoning {
        private final Optimum o;
        private final LinearProgram p;
        private double broken;
        private double priced;
        private double slack;
        private double dualObjective;
        private double largest = 1;

        Reckoning(Optimum o) {
            this.o = o;
            p = o.program();
        }

        Proof proof() {
            int n = p.columns().size();
            double[] pays = new double[n];
            double[] size = new double[n];
            dualObjective = p.offset();
            for (int i = 0; i < p.rows().size(); i++) {
                Row r = p.rows().get(i);
                int[] index = r.columns();
                double[] value = r.coefficients();
                double sum = 0;
                double rowSize = 1;
                for (int k = 0; k < index.length; k++) {
                    sum += value[k] * o.value(index[k]);
                    rowSize = Math.max(rowSize, Math.abs(value[k] * o.value(index[k])));
                    pays[index[k]] += value[k] * o.dual(i);
                    size[index[k]] = Math.max(size[index[k]], Math.abs(value[k] * o.dual(i)));
                }
                limit(sum, r.lower(), r.upper(), o.dual(i), rowSize);
            }
            for (int j = 0; j < n; j++) {
                Column c = p.columns().get(j);
                double off = Math.abs(o.reducedCost(j) - (c.cost() - pays[j]));
                priced = Math.max(priced, off / Math.max(1, Math.max(size[j], Math.abs(c.cost()))));
                limit(o.value(j), c.lower(), c.upper(), o.reducedCost(j), Math.max(1, Math.abs(o.value(j))));
            }
            return new Proof(broken, priced, slack, Math.abs(dualObjective - o.objective()) / largest);
        }

        private void limit(double at, double lower, double upper, double price, double size) {
            broken = Math.max(broken, Math.max(lower - at, at - upper) / size);
            if (price != 0) {
                boolean onLower = (p.maximizing() ? -price : price) > 0;
                double off = Math.abs(at - (onLower ? lower : upper)) / size;
                slack = Math.max(slack, Math.min(off, Math.abs(price)));
                dualObjective += price * at;
                largest = Math.max(largest, Math.abs(price * at));
            }
        }
    }
}
