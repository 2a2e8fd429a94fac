package haywright.cattle;

import haywright.quantity.Unit;
import haywright.workings.Input;
import haywright.workings.Line;
import haywright.workings.Source;
import haywright.workings.Worked;
import java.util.List;

/**
 * A live weight and whether it was taken after shrink: a night without feed and water.
 * <pre>
 * SBW = 0.96·FBW      shrunk body weight, kg
 * </pre>
 * The equations want shrunk weight. Many printed tables put full weight into them unshrunk; that is 3 % of maintenance.
 *
 * @param kg without the unborn calf
 * @see "Arkansas Cooperative Extension MP391: shrunk weight is 96 % of full (read)"
 */
public record LiveWeight(double kg, boolean isShrunk) implements Worked {
    public static final double SHRINK = 0.96;

    public static LiveWeight full(double kg) {
        return new LiveWeight(kg, false);
    }

    public static LiveWeight shrunk(double kg) {
        return new LiveWeight(kg, true);
    }

    /** kg with the gut full. */
    public double full() {
        return isShrunk ? kg / SHRINK : kg;
    }

    /** kg after shrink. */
    public double shrunk() {
        return isShrunk ? kg : SHRINK * kg;
    }

    @Override
    public List<Line> lines() {
        return List.of(
                isShrunk
                        ? Line.of("SBW", "W", kg, Unit.KILOGRAM, Source.ARITHMETIC, Input.typed("W", kg, Unit.KILOGRAM))
                        : Line.of(
                                "SBW",
                                "0.96·FBW",
                                shrunk(),
                                Unit.KILOGRAM,
                                Source.read("Arkansas Cooperative Extension MP391"),
                                Input.typed("FBW", kg, Unit.KILOGRAM)));
    }
}
