package haywright.cattle.need;

import static haywright.quantity.Unit.IU;
import static haywright.quantity.Unit.POUND;

import haywright.workings.Input;
import haywright.workings.Line;
import haywright.workings.Source;
import haywright.workings.Worked;
import java.util.List;

/**
 * Vitamin E, which is counted by body weight.
 * <pre>
 * E = e·BW      IU a day; e is 0.3 IU a lb, and 0.9 in calves that are new or just weaned
 * </pre>
 *
 * @param bodyWeight full, kg
 * @param stressed new to the place, or just weaned
 * @see "MSD Veterinary Manual, fat-soluble vitamin requirements of beef cattle (read)"
 */
public record VitaminE(double bodyWeight, boolean stressed) implements Worked {
    private static final Source TABLE =
            Source.read("MSD Veterinary Manual, fat-soluble vitamin requirements of beef cattle (NASEM 2016)");

    private double perPound() {
        return stressed ? 0.9 : 0.3;
    }

    /** IU a day. */
    public double units() {
        return perPound() * POUND.fromBase(bodyWeight);
    }

    @Override
    public List<Line> lines() {
        return List.of(Line.of(
                "E",
                stressed ? "0.9·BW" : "0.3·BW",
                units(),
                IU,
                TABLE,
                Input.typed("BW", POUND.fromBase(bodyWeight), POUND)));
    }
}
