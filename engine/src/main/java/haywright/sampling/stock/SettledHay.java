package haywright.sampling.stock;

import haywright.quantity.Unit;
import haywright.workings.Input;
import haywright.workings.Line;
import haywright.workings.Source;

/** Loose hay that has settled in its stack: 400 to 500 cubic feet a ton, as fed; 450 in the middle. */
final class SettledHay {
    static final Source SOURCE = Source.read("How to measure bushels and hay: 400 to 500 ft³ a ton");
    private static final double MIDDLE = kgPerM3(450);

    private SettledHay() {}

    private static double kgPerM3(double cubicFeetPerTon) {
        return Unit.TON.toBase(1) / Unit.CUBIC_FOOT.toBase(cubicFeetPerTon);
    }

    /** kg as fed, of m³ */
    static double kg(double volume) {
        return volume * MIDDLE;
    }

    /**
     * @param least volume, m³
     * @param most volume, m³
     * @param why in words, what the two ends are
     */
    static MassRange range(double least, double most, String why) {
        return new MassRange(least * kgPerM3(500), most * kgPerM3(400), why, SOURCE);
    }

    /** The mass of the volume V that a line before has. */
    static Line mass(double volume) {
        return Line.of(
                "mass",
                "V·density",
                kg(volume),
                Unit.KILOGRAM,
                SOURCE,
                Input.published("density", MIDDLE, Unit.KG_PER_M3, SOURCE));
    }
}
