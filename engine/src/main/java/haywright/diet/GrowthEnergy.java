package haywright.diet;

import haywright.workings.Source;
import java.util.List;

/**
 * Energy for cattle that must hold themselves and gain: what upkeep leaves over must carry the gain.
 *
 * <pre>
 * a / Σ NEm·x + b / Σ NEg·x ≤ 1
 * </pre>
 *
 * with a, b the NEm and NEg needed a day. The left side is convex in x, so that tangents hold it from outside; it falls
 * in proportion when all amounts grow, so that every point can be moved onto the border by one division.
 *
 * @param nem a, Mcal a day
 * @param neg b, Mcal a day, above zero
 * @param nemPerKg Mcal of NEm in a kg of each feed
 * @param negPerKg Mcal of NEg in a kg of each feed
 */
public record GrowthEnergy(double nem, double neg, List<Double> nemPerKg, List<Double> negPerKg) {
    public static final Source SOURCE = Source.read(
            "National Research Council 1996, Nutrient Requirements of Beef Cattle: feed for maintenance first, the rest"
                    + " for gain (as worked in university lecture slides, NE for growing and finishing cattle)");

    public GrowthEnergy {
        nemPerKg = List.copyOf(nemPerKg);
        negPerKg = List.copyOf(negPerKg);
    }

    /** A tangent: {@code Σ perKg·x ≥ atLeast} holds for every diet that carries the gain. */
    public record Cut(double[] perKg, double atLeast) {
        @Override
        public boolean equals(Object o) {
            return this == o;
        }

        @Override
        public int hashCode() {
            return System.identityHashCode(this);
        }
    }

    /** The left side: 1 or less carries the gain; infinite where a part is not fed at all. */
    public double use(double[] kg) {
        return nem / nemIn(kg) + neg / negIn(kg);
    }

    /** NEg that upkeep leaves over, Mcal a day; negative when upkeep itself is not met. */
    public double leftForGain(double[] kg) {
        double u = nemIn(kg);
        return u > 0 ? negIn(kg) * (1 - nem / u) : -nem;
    }

    /** The tangent at these amounts, moved onto the border first. */
    public Cut cutAt(double[] kg) {
        double scale = use(kg);
        double u = nemIn(kg) * scale;
        double v = negIn(kg) * scale;
        var row = new double[kg.length];
        for (int i = 0; i < row.length; i++) {
            row[i] = nem / (u * u) * nemPerKg.get(i) + neg / (v * v) * negPerKg.get(i);
        }
        return new Cut(row, 2 * (nem / u + neg / v) - 1);
    }

    public GrowthEnergy forGain(double otherNeg) {
        return new GrowthEnergy(nem, otherNeg, nemPerKg, negPerKg);
    }

    public double nemIn(double[] kg) {
        return in(nemPerKg, kg);
    }

    public double negIn(double[] kg) {
        return in(negPerKg, kg);
    }

    private static double in(List<Double> perKg, double[] kg) {
        double sum = 0;
        for (int i = 0; i < kg.length; i++) {
            sum += perKg.get(i) * kg[i];
        }
        return sum;
    }
}
