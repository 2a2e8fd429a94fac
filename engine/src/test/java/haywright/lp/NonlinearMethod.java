package haywright.lp;

import haywright.diet.GrowthEnergy;
import org.hipparchus.linear.Array2DRowRealMatrix;
import org.hipparchus.linear.ArrayRealVector;
import org.hipparchus.linear.RealMatrix;
import org.hipparchus.linear.RealVector;
import org.hipparchus.optim.InitialGuess;
import org.hipparchus.optim.MaxIter;
import org.hipparchus.optim.nonlinear.scalar.ObjectiveFunction;
import org.hipparchus.optim.nonlinear.vector.constrained.InequalityConstraint;
import org.hipparchus.optim.nonlinear.vector.constrained.SQPOptimizerS;
import org.hipparchus.optim.nonlinear.vector.constrained.SQPOption;
import org.hipparchus.optim.nonlinear.vector.constrained.TwiceDifferentiableFunction;

/**
 * The least cost of a curved program by sequential quadratic programming of a general-purpose library (Hipparchus), which
 * knows of no cuts. Curved rows are written out here anew, with derivatives by small differences.
 */
final class NonlinearMethod {
    private NonlinearMethod() {}

    /** NaN where the method does not come to an end that keeps every row. */
    static double least(CurvedPrograms.Curved curved) {
        double[] first = improved(curved, start(curved));
        double[] x = first.length == 0 ? first : improved(curved, first);
        double cost = 0;
        for (int j = 0; j < x.length; j++) {
            cost += curved.cost()[j] * x[j];
        }
        return x.length == 0 ? Double.NaN : cost;
    }

    private static double[] improved(CurvedPrograms.Curved curved, double[] from) {
        try {
            var option = new SQPOption();
            option.setEps(1e-9);
            var result = new SQPOptimizerS()
                    .optimize(
                            option,
                            new MaxIter(100),
                            new InitialGuess(from),
                            new ObjectiveFunction(new Cost(curved.cost())),
                            new Rows(curved));
            double[] x = result.getX().toArray();
            for (double left :
                    new Rows(curved).value(new ArrayRealVector(x, false)).toArray()) {
                if (!(left > -1e-8)) {
                    return new double[0];
                }
            }
            return x;
        } catch (RuntimeException e) {
            return new double[0];
        }
    }

    private static double[] start(CurvedPrograms.Curved curved) {
        double[] x = curved.upper().clone();
        for (int j = 0; j < x.length; j++) {
            x[j] *= 0.5;
        }
        return x;
    }

    private static final class Cost extends TwiceDifferentiableFunction {
        private final double[] cost;

        Cost(double[] cost) {
            this.cost = cost;
        }

        @Override
        public int dim() {
            return cost.length;
        }

        @Override
        public double value(RealVector x) {
            return x.dotProduct(new ArrayRealVector(cost, false));
        }

        @Override
        public RealVector gradient(RealVector x) {
            return new ArrayRealVector(cost);
        }

        @Override
        public RealMatrix hessian(RealVector x) {
            return new Array2DRowRealMatrix(cost.length, cost.length);
        }
    }

    /** Every row as something that is 0 or more. */
    private static final class Rows extends InequalityConstraint {
        private final CurvedPrograms.Curved curved;
        private int asked;

        Rows(CurvedPrograms.Curved curved) {
            super(new ArrayRealVector(curved.curves().size() + curved.rows().size() + 2 * curved.cost().length));
            this.curved = curved;
        }

        @Override
        public int dim() {
            return curved.cost().length;
        }

        @Override
        public RealVector value(RealVector at) {
            if (++asked > 2_000) {
                throw new IllegalStateException("it does not come to an end");
            }
            double[] x = at.toArray();
            double[] left = new double[dimY()];
            int i = 0;
            for (ConvexRow row : curved.curves()) {
                left[i++] = row instanceof ConeRow cone ? sure(cone, x) : grown((GrowthEnergy) row, x);
            }
            for (int r = 0; r < curved.rows().size(); r++) {
                left[i++] = curved.atMost()[r] - dot(curved.rows().get(r), x);
            }
            for (int j = 0; j < x.length; j++) {
                left[i++] = x[j];
                left[i++] = curved.upper()[j] - x[j];
            }
            return new ArrayRealVector(left, false);
        }

        @Override
        public RealMatrix jacobian(RealVector at) {
            RealMatrix jacobian = new Array2DRowRealMatrix(dimY(), dim());
            for (int j = 0; j < dim(); j++) {
                double step = 1e-6;
                RealVector up = at.copy();
                up.addToEntry(j, step);
                RealVector down = at.copy();
                down.addToEntry(j, -step);
                jacobian.setColumnVector(j, value(up).subtract(value(down)).mapDivide(2 * step));
            }
            return jacobian;
        }

        private static double sure(ConeRow cone, double[] x) {
            return left(cone, x) - cone.limit();
        }

        private static double left(ConeRow cone, double[] x) {
            double variance = 1e-18;
            for (int j = 0; j < x.length; j++) {
                variance += cone.own()[j] * cone.own()[j] * x[j] * x[j];
            }
            for (double[] doubt : cone.shared()) {
                variance += Math.pow(dot(doubt, x), 2);
            }
            return dot(cone.mean(), x) - cone.z() * Math.sqrt(variance);
        }

        private static double grown(GrowthEnergy energy, double[] x) {
            return 1 - energy.nem() / left(energy.inNem(), x) - energy.neg() / left(energy.inNeg(), x);
        }

        private static double dot(double[] a, double[] x) {
            double sum = 0;
            for (int j = 0; j < x.length; j++) {
                sum += a[j] * x[j];
            }
            return sum;
        }
    }
}
