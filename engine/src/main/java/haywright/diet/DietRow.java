package haywright.diet;

import haywright.forage.lot.Spread;
import haywright.quantity.Unit;
import haywright.workings.Source;
import java.util.AbstractList;
import java.util.List;
import java.util.RandomAccess;

/**
 * One thing a diet must do: supply at least so much, or no more than so much.
 *
 * <p>An absolute row compares {@code Σ top·x} with the limit. A ratio row compares {@code Σ top·x / Σ bottom·x}, and is
 * still linear: {@code Σ (top − limit·bottom)·x} against zero. What comes from beside the feeds ({@code beside}) is added
 * to the top, and so moves a program's right side alone.
 *
 * @param of which row it is
 * @param name in the rancher's words: "crude protein"
 * @param limit in {@code unit}, a head and day or of the whole diet
 * @param law what it asks, whatever the feeds
 * @param top what a kg of dry matter of each feed adds, in feed order
 * @param bottom what it adds to the divisor; empty for an absolute row
 * @param beside what comes on top from beside the feeds, a head and day
 * @param source who says so
 */
public record DietRow(
        RowId of,
        Kind kind,
        String name,
        Sense sense,
        double limit,
        Unit unit,
        Law law,
        List<Double> top,
        List<Double> bottom,
        double beside,
        Source source) {
    public DietRow {
        top = Packed.of(top);
        bottom = Packed.of(bottom);
    }

    /** Numbers without a box each: many rows of many feeds are what a large ranch's memory is full of. */
    private static final class Packed extends AbstractList<Double> implements RandomAccess {
        private final double[] values;

        private Packed(double[] values) {
            this.values = values;
        }

        static List<Double> of(List<Double> values) {
            return values instanceof Packed
                    ? values
                    : new Packed(values.stream().mapToDouble(v -> v).toArray());
        }

        @Override
        public Double get(int index) {
            return values[index];
        }

        @Override
        public int size() {
            return values.length;
        }
    }

    /** Stable, for documents and programs: {@code cp}. */
    public String id() {
        return of.id();
    }

    /** The same with another limit. */
    public DietRow withLimit(double other) {
        return new DietRow(of, kind, name, sense, other, unit, law, top, bottom, beside, source);
    }

    /**
     * How far the coefficient of a feed may lie from the one in the program: for what it does not count, and for figures
     * that were given as they stand, not at all.
     */
    public Spread spread(Feed feed) {
        return law.counted() == Law.Counted.SURE
                ? feed.spread(made -> law.perKg(feed, made, limit))
                : Spread.certain(law.perKg(feed, feed.composition(), limit));
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
        double value = sum(top, kg) + beside;
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
        return lower(rightHandSide());
    }

    public double upper() {
        return upper(rightHandSide());
    }

    /** @param right what a program's row must come to */
    public double lower(double right) {
        return sense == Sense.AT_LEAST ? right : Double.NEGATIVE_INFINITY;
    }

    public double upper(double right) {
        return sense == Sense.AT_MOST ? right : Double.POSITIVE_INFINITY;
    }

    /** What the feeds must come to in a program, a head and day. */
    public double rightHandSide() {
        return (isRatio() ? 0 : limit) - beside;
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
