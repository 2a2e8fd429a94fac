package haywright.forage.energy;

import haywright.quantity.Kind;
import haywright.quantity.Quantity;
import haywright.quantity.Unit;
import haywright.sampling.stock.BaleSize;
import haywright.workings.Input;
import haywright.workings.Line;
import haywright.workings.Problem;
import haywright.workings.Refused;
import haywright.workings.Source;
import haywright.workings.Worked;
import java.util.ArrayList;
import java.util.List;

/**
 * The outside of round bales that weathered in storage after they were sampled: its share of a bale, and what that takes
 * from the whole bale's digestibility.
 *
 * <pre>
 * w    = 1 − ((D − 2·d) / D)^2        share of the bale, its ends left out
 * loss = 20·w                         points of digestible dry matter, taken for points of TDN
 * </pre>
 *
 * In the trial the layer lost 20 units of digestibility within a year while its protein and fiber hardly changed, and a
 * trial of 18 months found protein, fiber and TDN of whole bales hardly changed: so nothing else moves. A sample cored
 * after the weathering has the layer in it already.
 *
 * @param depth how deep the outside has gone dark, above 0 and less than half of the diameter
 * @param diameter of a bale
 * @see "Storage trial of tall fescue round bales 1990-91; 18 months' trial of alfalfa, fescue and bluestem round bales"
 */
public record Weathered(Quantity depth, Quantity diameter) implements Worked {
    public static final double UNITS_LOST = 20;

    private static final Source TRIAL = Source.read(
            "Storage trial of tall fescue round bales 1990-91: the weathered outer layer, 20 units of IVDMD less, protein and NDF hardly changed");

    public Weathered {
        Refused.unlessOfKind(Kind.LENGTH, "weatheredDepth", depth);
        Refused.unlessOfKind(Kind.LENGTH, "baleDiameter", diameter);
        var problems = new ArrayList<Problem>();
        if (!(diameter.base() > 0.5 && diameter.base() < 3)) {
            problems.add(new Problem(
                    "baleDiameter",
                    diameter.asTyped(),
                    "round bales are from 2 to 9 ft across",
                    "Measure across the flat end."));
        } else if (!(depth.base() > 0 && 2 * depth.base() < diameter.base())) {
            problems.add(new Problem(
                    "weatheredDepth",
                    depth.asTyped(),
                    "the weathered layer is deeper than nothing and less deep than half the bale, "
                            + Quantity.of(diameter.value() / 2, diameter.unit()).asTyped(),
                    "Cut one open and measure from the outside to where it is green again."));
        }
        Refused.unlessEmpty(problems);
    }

    /** Of the bale, 0 to 1. */
    public double share() {
        return BaleSize.outerShare(diameter.base(), depth.base());
    }

    /** Points of TDN that the whole bale has less. */
    public double tdnLost() {
        return UNITS_LOST * share();
    }

    @Override
    public List<Line> lines() {
        return List.of(
                Line.of(
                        "w",
                        "1 − ((D − 2·d) / D)^2",
                        share(),
                        Unit.NONE,
                        Source.ARITHMETIC,
                        Input.typed("D", diameter.base(), Unit.METER),
                        Input.typed("d", depth.base(), Unit.METER)),
                Line.of("loss", "20·w", tdnLost(), Unit.PERCENT, TRIAL));
    }
}
