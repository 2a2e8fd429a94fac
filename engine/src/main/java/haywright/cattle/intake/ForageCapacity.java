package haywright.cattle.intake;

import static haywright.quantity.Unit.NONE;
import static haywright.quantity.Unit.PERCENT;

import haywright.cattle.AnimalClass;
import haywright.cattle.Breed;
import haywright.cattle.Findings;
import haywright.cattle.Limits;
import haywright.workings.Input;
import haywright.workings.Line;
import haywright.workings.PublishedTable;
import haywright.workings.Source;
import haywright.workings.Worked;
import java.util.List;

/**
 * How much of one forage cattle can hold, as dry matter in percent of full body weight.
 * <pre>
 * F = (1 − m)·(d1 + (d2 − d1)·(TDN − t1)/(t2 − t1)) + m·(l1 + (l2 − l1)·(TDN − t1)/(t2 − t1))
 * </pre>
 * The guide is printed in three classes of forage; here each class's figure holds at its midpoint and what lies between is
 * interpolated, so that a point of TDN more never doubles a ration at a class border. Below the lowest and above the
 * highest midpoint the class's own figure stands. It is a capacity, not a prediction: on dry cows it lies about 6 lb a day
 * above what they ate.
 *
 * @param tdn of the forage, % of dry matter, 0 to 100
 * @param milkingShare m, share of the cattle in milk, 0 to 1
 * @see "Hibberd and Thrift 1992, reprinted by Lalman, Oklahoma State University, 2 October 2024 (read)"
 */
public record ForageCapacity(double tdn, double milkingShare) implements Worked {
    private static final List<PublishedTable.Row> CLASSES =
            PublishedTable.read(ForageCapacity.class, "forage_capacity.csv").rows();
    private static final PublishedTable STRAW = PublishedTable.read(ForageCapacity.class, "straw_capacity.csv");

    public ForageCapacity {
        Findings.of(
                        Limits.of("percent").check("tdn", tdn, PERCENT),
                        Limits.of("share").check("milkingShare", milkingShare, NONE))
                .refuse();
    }

    /** Dry matter of this forage that fills them, % of body weight. */
    public static double percentOfBodyWeight(double tdn, double milkingShare) {
        return new ForageCapacity(tdn, milkingShare).percent();
    }

    /**
     * Dry matter of straw that fills them, % of body weight. None after calving: in a group where some have calved the
     * limit falls with the share that still holds.
     */
    public static double strawPercentOfBodyWeight(AnimalClass animals, double milkingShare) {
        return STRAW.row("class", animals.id()).number("pct_body_weight").orElseThrow() * (1 - milkingShare);
    }

    public double percent() {
        return (1 - milkingShare) * between("dry_pct_body_weight") + milkingShare * between("milking_pct_body_weight");
    }

    /** The lower of the two classes this forage lies between. */
    private int lower() {
        int i = 0;
        while (i < CLASSES.size() - 2 && tdn > midpoint(i + 1)) {
            i++;
        }
        return i;
    }

    private static double midpoint(int i) {
        return CLASSES.get(i).number("tdn_midpoint").orElseThrow();
    }

    private static double held(int i, String column) {
        return CLASSES.get(i).number(column).orElseThrow();
    }

    /** TDN, but not outside the midpoints of the first and last class. */
    private double inside() {
        return Math.max(midpoint(0), Math.min(midpoint(CLASSES.size() - 1), tdn));
    }

    private double between(String column) {
        int i = lower();
        double way = (inside() - midpoint(i)) / (midpoint(i + 1) - midpoint(i));
        return held(i, column) + (held(i + 1, column) - held(i, column)) * way;
    }

    @Override
    public List<Line> lines() {
        int i = lower();
        return List.of(
                Line.of(
                        "Q",
                        "max(t0, min(t9, TDN))",
                        inside(),
                        PERCENT,
                        source(i),
                        Input.typed("TDN", tdn, PERCENT),
                        published("t0", midpoint(0), 0),
                        published("t9", midpoint(CLASSES.size() - 1), CLASSES.size() - 1)),
                Line.of(
                        "F",
                        "(1 − m)·(d1 + (d2 − d1)·(Q − t1)/(t2 − t1)) + m·(l1 + (l2 − l1)·(Q − t1)/(t2 − t1))",
                        percent(),
                        PERCENT,
                        source(i),
                        Input.typed("m", milkingShare, NONE),
                        published("t1", midpoint(i), i),
                        published("t2", midpoint(i + 1), i + 1),
                        published("d1", held(i, "dry_pct_body_weight"), i),
                        published("d2", held(i + 1, "dry_pct_body_weight"), i + 1),
                        published("l1", held(i, "milking_pct_body_weight"), i),
                        published("l2", held(i + 1, "milking_pct_body_weight"), i + 1)));
    }

    private static Input published(String symbol, double value, int i) {
        return Input.published(symbol, value, PERCENT, source(i));
    }

    private static Source source(int i) {
        return Breed.source(CLASSES.get(i));
    }
}
