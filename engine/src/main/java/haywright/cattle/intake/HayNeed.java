package haywright.cattle.intake;

import static haywright.quantity.Unit.DAY;
import static haywright.quantity.Unit.KILOGRAM;
import static haywright.quantity.Unit.KILOGRAM_A_DAY;
import static haywright.quantity.Unit.NONE;
import static haywright.quantity.Unit.PERCENT;

import haywright.cattle.Findings;
import haywright.cattle.Limits;
import haywright.workings.Input;
import haywright.workings.Line;
import haywright.workings.Source;
import haywright.workings.Worked;
import java.util.List;

/**
 * Hay to have in the stack for a time of feeding.
 * <pre>
 * E = herd·days                                                eaten, kg of dry matter
 * N = E / ((1 − f/100)·(1 − s/100)·DM/100)                     to have, kg as fed
 * </pre>
 * What is lost is a share of what is put out or stored. Multiplying what is eaten by one plus the loss, as some pages do,
 * asks for too little.
 *
 * @param herd what the herd eats a day, kg of dry matter
 * @param feedingLoss f, % of what is put out
 * @param storageLoss s, % of what is in the stack
 * @param dryMatter of the hay, % as fed
 */
public record HayNeed(double herd, double days, double dryMatter, double feedingLoss, double storageLoss)
        implements Worked {
    private static final Source LOSSES =
            Source.read("WV Farm Bureau Magazine May 2014, p. 15: needed = eaten / (1 − loss)");

    public HayNeed {
        Findings.of(
                        Limits.of("head_days").check("days", days, DAY),
                        Limits.of("dry_matter").check("dryMatter", dryMatter, PERCENT),
                        Limits.of("loss").check("feedingLoss", feedingLoss, PERCENT),
                        Limits.of("loss").check("storageLoss", storageLoss, PERCENT))
                .refuse();
    }

    /** What a number of head eat together a day, kg of dry matter. */
    public static double herd(int head, double intake) {
        Findings.of(
                        Limits.of("head").check("head", head, NONE),
                        Limits.of("intake").check("dmi", intake, KILOGRAM_A_DAY))
                .refuse();
        return head * intake;
    }

    /** kg of dry matter. */
    public double eaten() {
        return herd * days;
    }

    /** kg as fed. */
    public double needed() {
        return eaten() / ((1 - feedingLoss / 100) * (1 - storageLoss / 100) * dryMatter / 100);
    }

    @Override
    public List<Line> lines() {
        return List.of(
                Line.of(
                        "E",
                        "herd·days",
                        eaten(),
                        KILOGRAM,
                        Source.ARITHMETIC,
                        Input.typed("herd", herd, KILOGRAM),
                        Input.typed("days", days, DAY)),
                Line.of(
                        "N",
                        "E / ((1 − f/100)·(1 − s/100)·DM/100)",
                        needed(),
                        KILOGRAM,
                        LOSSES,
                        Input.typed("f", feedingLoss, PERCENT),
                        Input.typed("s", storageLoss, PERCENT),
                        Input.typed("DM", dryMatter, PERCENT)));
    }
}
