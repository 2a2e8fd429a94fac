package haywright.diet;

import haywright.quantity.Unit;
import haywright.workings.Source;
import java.util.List;

/**
 * One thing a diet must do: supply at least so much, or no more than so much.
 *
 * <p>An absolute row compares {@code Σ top·x} with the limit. A ratio row compares {@code Σ top·x / Σ bottom·x}, and is
 * still linear: {@code Σ (top − limit·bottom)·x} against zero.
 *
 * @param id stable, for documents and programs: {@code cp}
 * @param name in the rancher's words: "crude protein"
 * @param limit in {@code unit}, a head and day or of the whole diet
 * @param top what a kg of dry matter of each feed adds, in feed order
 * @param bottom what it adds to the divisor; empty for an absolute row
 * @param source who says so
 */
public record DietRow(
        String id,
        Kind kind,
        String name,
        Sense sense,
        double limit,
        Unit unit,
        List<Double> top,
        List<Double> bottom,
        Source source) {
    public DietRow {
        top = List.copyOf(top);
        bottom = List.copyOf(bottom);
    }

    public enum Sense {
        AT_LEAST,
        AT_MOST
    }

    /** What sort of row it is: decides who may lift it. */
    public enum Kind {
        /** The animal's need; a smaller target lifts it. */
        NEED,
        /** A limit of good practice; lifted only with professional advice. */
        PRACTICE,
        /** Could hurt the cattle; never offered to be lifted. */
        DANGER,
        /** What the ranch has, or wants to use; the ranch can lift it. */
        CHOICE
    }

    public boolean isRatio() {
        return !bottom.isEmpty();
    }

    /** What these amounts supply, in {@code unit}; NaN for a ratio of nothing. */
    public double supplied(double[] kg) {
        double value = sum(top, kg);
        return isRatio() ? value / sum(bottom, kg) : value;
    }

    /** How far on the right side of the limit; negative when it is broken. */
    public double margin(double[] kg) {
        double over = supplied(kg) - limit;
        return sense == Sense.AT_LEAST ? over : -over;
    }

    /** The row's coefficients for a linear program. */
    public double[] coefficients() {
        var row = new double[top.size()];
        for (int i = 0; i < row.length; i++) {
            row[i] = isRatio() ? top.get(i) - limit * bottom.get(i) : top.get(i);
        }
        return row;
    }

    public double lower() {
        return sense == Sense.AT_LEAST ? rightHandSide() : Double.NEGATIVE_INFINITY;
    }

    public double upper() {
        return sense == Sense.AT_MOST ? rightHandSide() : Double.POSITIVE_INFINITY;
    }

    private double rightHandSide() {
        return isRatio() ? 0 : limit;
    }

    /** The divisor of a ratio row for these amounts; 1 for an absolute row. */
    public double divisor(double[] kg) {
        return isRatio() ? sum(bottom, kg) : 1;
    }

    private static double sum(List<Double> perKg, double[] kg) {
        double sum = 0;
        for (int i = 0; i < kg.length; i++) {
            sum += perKg.get(i) * kg[i];
        }
        return sum;
    }
}
