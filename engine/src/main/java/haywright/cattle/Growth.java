package haywright.cattle;

import static haywright.quantity.Unit.GRAM_A_DAY;
import static haywright.quantity.Unit.KILOGRAM;
import static haywright.quantity.Unit.KILOGRAM_A_DAY;
import static haywright.quantity.Unit.MEGACALORIE;

import haywright.workings.Input;
import haywright.workings.Line;
import haywright.workings.Source;
import haywright.workings.Worked;
import java.util.List;

/**
 * What a gain takes.
 * <pre>
 * EQSBW = SBW·478 / FSBW                              weight of a standard animal as far grown, kg
 * RE    = 0.0635·(0.891·EQSBW)^0.75·(0.956·SWG)^1.097     Mcal of NEg a day
 * NPg   = 268·SWG − 29.4·RE                           net protein, g a day
 * MPg   = NPg / (0.834 − 0.00114·EQSBW)               g a day, to 300 kg; above it NPg / 0.492
 * </pre>
 * 478 kg is the standard for replacement heifers and for cattle fed to 28 % fat. RE is NEg: it is met by what maintenance
 * leaves of the ration, and is never added to NEm. No gain below zero; to about 1.6 kg a day.
 *
 * @param shrunkWeight kg
 * @param finalWeight FSBW, shrunk, kg: mature weight of breeding stock
 * @param gain SWG, kg a day of shrunk weight, at least 0
 * @see "NRC, Nutrient Requirements of Beef Cattle, 1996/2000, chapter 3"
 */
public record Growth(double shrunkWeight, double finalWeight, double gain) implements Worked {
    private static final Source STANDARD = Source.memory("NRC 1996/2000 ch. 3");
    private static final Source ENERGY =
            Source.reproduces("NRC 1996/2000 ch. 3; lecture slides, NE for growing cattle");
    private static final Source PROTEIN = Source.reproduces("NRC 1996/2000 ch. 3; The Cattleman, Feb 2015, Chart 1");
    private static final double LIGHT = 300;

    public Growth {
        Findings.of(
                        Limits.of("weight_growing").check("bodyWeight", shrunkWeight, KILOGRAM),
                        Limits.of("weight_growing").check("matureWeight", finalWeight, KILOGRAM),
                        Limits.of("gain").check("gain", gain, KILOGRAM_A_DAY))
                .refuse();
    }

    public static Growth of(Animal animal) {
        return new Growth(animal.weight().shrunk(), animal.shrunkMatureWeight(), animal.gain());
    }

    /** kg. */
    public double equivalentWeight() {
        return shrunkWeight * 478 / finalWeight;
    }

    /** RE: Mcal of NEg a day. */
    public double neg() {
        return 0.0635 * Math.pow(0.891 * equivalentWeight(), 0.75) * Math.pow(0.956 * gain, 1.097);
    }

    /** g a day. */
    public double netProtein() {
        return 268 * gain - 29.4 * neg();
    }

    /** g a day. */
    public double metabolizableProtein() {
        return netProtein() / (light() ? 0.834 - 0.00114 * equivalentWeight() : 0.492);
    }

    /**
     * The gain that so much NEg carries, kg a day: the exact inverse of {@link #neg()}. The shorter
     * {@code SWG = 13.91·RE^0.9116·EQSBW^−0.6837} of the source gives 0.4 % less.
     *
     * @param retained Mcal of NEg a day, at least 0
     */
    public double gainOn(double retained) {
        return Math.pow(retained / (0.0635 * Math.pow(0.891 * equivalentWeight(), 0.75)), 1 / 1.097) / 0.956;
    }

    private boolean light() {
        return equivalentWeight() <= LIGHT;
    }

    @Override
    public List<Line> lines() {
        var wanted = Input.typed("SWG", gain, KILOGRAM_A_DAY);
        return List.of(
                Line.of(
                        "EQSBW",
                        "SBW·478 / FSBW",
                        equivalentWeight(),
                        KILOGRAM,
                        STANDARD,
                        Input.typed("SBW", shrunkWeight, KILOGRAM),
                        Input.typed("FSBW", finalWeight, KILOGRAM)),
                Line.of("RE", "0.0635·(0.891·EQSBW)^0.75·(0.956·SWG)^1.097", neg(), MEGACALORIE, ENERGY, wanted),
                Line.of("NPg", "268·SWG − 29.4·RE", netProtein(), GRAM_A_DAY, PROTEIN, wanted),
                Line.of(
                        "MPg",
                        light() ? "NPg / (0.834 − 0.00114·EQSBW)" : "NPg / 0.492",
                        metabolizableProtein(),
                        GRAM_A_DAY,
                        PROTEIN));
    }
}
