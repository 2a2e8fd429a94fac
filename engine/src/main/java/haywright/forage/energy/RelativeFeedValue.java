package haywright.forage.energy;

import haywright.quantity.Unit;
import haywright.workings.Input;
import haywright.workings.Line;
import haywright.workings.Source;
import haywright.workings.Worked;
import java.util.List;

/**
 * Relative feed value: how hay ranks by digestible dry matter eaten, full-bloom alfalfa = 100.
 *
 * <pre>
 * DDM = 88.9 − 0.779·ADF    digestible dry matter, % of dry matter
 * DMI = 120 / NDF           dry matter eaten, % of body weight
 * RFV = DDM·DMI / 1.29      no unit
 * </pre>
 *
 * For legume and cool-season grass hay and their mixtures, ADF 20 to 50, NDF 30 to 75. Blind to protein and to how
 * digestible the fiber is, so it undervalues grass (Stallings 2004); not for corn silage or straw.
 *
 * @see "Boman, Relative Feed Value of Alfalfa Hay, Utah State University Extension: the equations"
 * @see "Stallings, Dairy Pipeline, Virginia Cooperative Extension, October 2004: the limits"
 */
public record RelativeFeedValue(Fiber fiber) implements Worked {
    private static final Source SOURCE =
            Source.read("Boman, Relative Feed Value of Alfalfa Hay, Utah State University Extension");

    public double digestibleDryMatter() {
        return 88.9 - 0.779 * fiber.adf();
    }

    public double intake() {
        return 120 / fiber.ndf();
    }

    public double index() {
        return digestibleDryMatter() * intake() / 1.29;
    }

    @Override
    public List<Line> lines() {
        return List.of(
                Line.of(
                        "DDM",
                        "88.9 − 0.779·ADF",
                        digestibleDryMatter(),
                        Unit.PERCENT,
                        SOURCE,
                        Input.typed("ADF", fiber.adf(), Unit.PERCENT)),
                Line.of(
                        "DMI",
                        "120 / NDF",
                        intake(),
                        Unit.PERCENT,
                        SOURCE,
                        Input.typed("NDF", fiber.ndf(), Unit.PERCENT)),
                Line.of("RFV", "DDM·DMI / 1.29", index(), Unit.NONE, SOURCE));
    }
}
