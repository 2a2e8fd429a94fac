package haywright.diet;

import haywright.cattle.need.Need;
import haywright.lp.ConvexRow;
import haywright.workings.Source;
import java.util.List;

/**
 * Energy for cattle that must hold themselves and gain: what upkeep leaves over must carry the gain.
 *
 * <pre>
 * a / Σ NEm·x + b / Σ NEg·x ≤ 1
 * </pre>
 *
 * with a, b the NEm and NEg needed a day. The left side is convex in x, so that cuts hold it from outside.
 *
 * @param nem a, Mcal a day
 * @param neg b, Mcal a day, above zero
 * @param nemPerKg Mcal of NEm in a kg of each feed
 * @param negPerKg Mcal of NEg in a kg of each feed
 */
public record GrowthEnergy(double nem, double neg, List<Double> nemPerKg, List<Double> negPerKg) implements ConvexRow {
    public static final Source SOURCE = Source.read(
            "National Research Council 1996, Nutrient Requirements of Beef Cattle: feed for maintenance first, the rest"
                    + " for gain (as worked in university lecture slides, NE for growing and finishing cattle)");

    public GrowthEnergy {
        nemPerKg = List.copyOf(nemPerKg);
        negPerKg = List.copyOf(negPerKg);
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

    @Override
    public double broken(double[] kg) {
        return nemIn(kg) > 0 && negIn(kg) > 0 ? use(kg) - 1 : Double.POSITIVE_INFINITY;
    }

    /** The tangent where these amounts, all grown alike, would just carry the gain. */
    @Override
    public Cut cutAt(double[] kg) {
        double u = nemIn(kg);
        double v = negIn(kg);
        if (u <= 0) {
            return cut(1, 0);
        }
        return v <= 0 ? cut(0, 1) : cut(nem / (u * u), neg / (v * v));
    }

    /** p·NEm + q·NEg of every diet that carries the gain is at least (√(p·a) + √(q·b))²; p and q are the mark. */
    private Cut cut(double p, double q) {
        var perKg = new double[nemPerKg.size()];
        for (int i = 0; i < perKg.length; i++) {
            perKg[i] = p * nemPerKg.get(i) + q * negPerKg.get(i);
        }
        return new Cut(perKg, new double[] {p, q});
    }

    @Override
    public double atLeast(Cut cut) {
        return Math.pow(root(cut), 2);
    }

    /** For each Mcal of NEg more. */
    @Override
    public double perUnit(Cut cut) {
        return root(cut) * Math.sqrt(cut.mark()[1] / neg);
    }

    private double root(Cut cut) {
        return Math.sqrt(cut.mark()[0] * nem) + Math.sqrt(cut.mark()[1] * neg);
    }

    /** The same feeds for another need. */
    GrowthEnergy of(Need need) {
        return new GrowthEnergy(need.nem(), need.neg(), nemPerKg, negPerKg);
    }

    /** For so many head and days at once. */
    GrowthEnergy over(double headDays) {
        return headDays == 1 ? this : new GrowthEnergy(headDays * nem, headDays * neg, nemPerKg, negPerKg);
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
