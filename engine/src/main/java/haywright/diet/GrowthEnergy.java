package haywright.diet;

import haywright.cattle.need.Need;
import haywright.lp.ConeRow;
import haywright.lp.ConvexRow;
import haywright.workings.Source;
import java.util.Arrays;

/**
 * Energy for cattle that must hold themselves and gain: what upkeep leaves over must carry the gain.
 *
 * <pre>
 * a / u(x) + b / v(x) ≤ 1
 * </pre>
 *
 * with a, b the NEm and NEg needed a day, u and v the Mcal of NEm and NEg in what is eaten: as expected, or with their
 * doubt taken off, which keeps them concave. The left side is convex in x, so that cuts hold it from outside.
 *
 * @param nem a, Mcal a day
 * @param neg b, Mcal a day, above zero
 * @param inNem u: Mcal of NEm in a kg of each feed, and what is not sure of it
 * @param inNeg v: the same of NEg
 */
public record GrowthEnergy(double nem, double neg, ConeRow inNem, ConeRow inNeg) implements ConvexRow {
    public static final Source SOURCE = Source.read(
            "National Research Council 1996, Nutrient Requirements of Beef Cattle: feed for maintenance first, the rest"
                    + " for gain (as worked in university lecture slides, NE for growing and finishing cattle)");

    /** Of feeds as they are expected. @param nemPerKg Mcal of NEm in a kg of each. @param negPerKg the same of NEg */
    public static GrowthEnergy expected(double nem, double neg, double[] nemPerKg, double[] negPerKg) {
        return new GrowthEnergy(nem, neg, ConeRow.certain(nemPerKg), ConeRow.certain(negPerKg));
    }

    /** NEg that upkeep leaves over of feeds as they are expected, Mcal a day; negative when upkeep itself is not met. */
    public double leftForGain(double[] kg) {
        double u = inNem.mean(kg);
        return u > 0 ? inNeg.mean(kg) * (1 - nem / u) : -nem;
    }

    @Override
    public double broken(double[] kg) {
        double u = inNem.left(kg);
        double v = inNeg.left(kg);
        return u > 0 && v > 0 ? nem / u + neg / v - 1 : Double.POSITIVE_INFINITY;
    }

    /** The tangent where these amounts, all grown alike, would just carry the gain. */
    @Override
    public Cut cutAt(double[] kg) {
        double u = inNem.left(kg);
        double v = inNeg.left(kg);
        if (u <= 0) {
            return cut(1, 0, kg);
        }
        return v <= 0 ? cut(0, 1, kg) : cut(nem / (u * u), neg / (v * v), kg);
    }

    /** p·u + q·v of every diet that carries the gain is at least (√(p·a) + √(q·b))²; p and q are the mark. */
    private Cut cut(double p, double q, double[] kg) {
        var u = inNem.gradient(kg);
        var v = inNeg.gradient(kg);
        var perKg = new double[kg.length];
        Arrays.setAll(perKg, i -> p * u[i] + q * v[i]);
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
        return new GrowthEnergy(need.nem(), need.neg(), inNem, inNeg);
    }

    /** For so many head and days at once. */
    GrowthEnergy over(double headDays) {
        return headDays == 1 ? this : new GrowthEnergy(headDays * nem, headDays * neg, inNem, inNeg);
    }

    public GrowthEnergy forGain(double otherNeg) {
        return new GrowthEnergy(nem, otherNeg, inNem, inNeg);
    }
}
