package haywright.cattle;

import static haywright.quantity.Unit.GRAM_A_DAY;
import static haywright.quantity.Unit.KILOGRAM;
import static haywright.quantity.Unit.MEGACALORIE;

import haywright.quantity.Unit;
import haywright.workings.Input;
import haywright.workings.Line;
import haywright.workings.Source;
import haywright.workings.Worked;
import java.util.List;

/**
 * What the unborn calf takes.
 * <pre>
 * MEy  = CBW·(0.4504 − 0.000766·t)·exp((0.03233 − 0.0000275·t)·t) / 1000              Mcal ME a day
 * NEmy = 0.576·MEy                                                                    Mcal a day, as NEm
 * Yp   = CBW·(0.001669 − 0.00000211·t)·exp((0.0278 − 0.0000176·t)·t)·6.25             g net protein a day
 * MPy  = Yp / 0.65                                                                    g a day
 * CW   = CBW·0.01828·exp(0.02·t − 0.0000143·t^2)                                      conceptus, kg
 * CG   = CBW·18.28·(0.02 − 0.0000286·t)·exp(0.02·t − 0.0000143·t^2)                   its gain, g a day
 * </pre>
 * Holds from day 100 to 280; before that it is under 0.17 Mcal. Twins: the sum of both birth weights. 0.576 is NEm/ME of a
 * diet of 2.0 Mcal ME/kg. Both editions have the same equations, as far as recalled.
 *
 * @param birthWeight of the calf, kg
 * @param day of gestation, above 0
 * @see "NRC, Nutrient Requirements of Beef Cattle, 1996/2000, Table 4-2 p. 43: NEm by day (read)"
 */
public record Pregnancy(double birthWeight, double day) implements Worked {
    /** Days from breeding to calving; NRC planning takes 280 to 285 (Merck Veterinary Manual: 283). */
    public static final double GESTATION = 283;

    /** The last third begins on this day. */
    public static final double LAST_THIRD = GESTATION * 2 / 3;

    /** The calcium and phosphorus of the calf are laid down at the end. */
    private static final double LAST_STRETCH = 90;

    private static final Source ENERGY = Source.reproduces("NRC 1996/2000 ch. 4; Table 4-2 p. 43");
    private static final Source EFFICIENCY = Source.read("NRC 1996/2000 p. 43: km at ME 2.0");
    private static final Source PROTEIN = Source.memory("NRC 1996/2000 ch. 4");

    public Pregnancy {
        check(birthWeight, day).refuse();
    }

    Findings findings() {
        return check(birthWeight, day);
    }

    private static Findings check(double birthWeight, double day) {
        return Findings.of(
                Limits.of("calf_birth_weight").check("calfBirthWeight", birthWeight, KILOGRAM),
                Limits.of("days_pregnant").check("daysPregnant", day, Unit.DAY));
    }

    public double metabolizableEnergy() {
        return birthWeight * (0.4504 - 0.000766 * day) * Math.exp((0.03233 - 0.0000275 * day) * day) / 1000;
    }

    /** Mcal a day, in terms of NEm. */
    public double nem() {
        return 0.576 * metabolizableEnergy();
    }

    /** g a day. */
    public double netProtein() {
        return birthWeight * (0.001669 - 0.00000211 * day) * Math.exp((0.0278 - 0.0000176 * day) * day) * 6.25;
    }

    /** g a day. */
    public double metabolizableProtein() {
        return netProtein() / 0.65;
    }

    /** Calf, membranes and fluids, kg; not in the cow's own weight. */
    public double conceptusWeight() {
        return birthWeight * 0.01828 * Math.exp(0.02 * day - 0.0000143 * day * day);
    }

    /** g a day. */
    public double conceptusGain() {
        return birthWeight * 18.28 * (0.02 - 0.0000286 * day) * Math.exp(0.02 * day - 0.0000143 * day * day);
    }

    /** In the last 90 days. */
    public boolean late() {
        return day > GESTATION - LAST_STRETCH;
    }

    @Override
    public List<Line> lines() {
        var calf = Input.typed("CBW", birthWeight, KILOGRAM);
        var t = Input.typed("t", day, Unit.DAY);
        return List.of(
                Line.of(
                        "MEy",
                        "CBW·(0.4504 − 0.000766·t)·exp((0.03233 − 0.0000275·t)·t) / 1000",
                        metabolizableEnergy(),
                        MEGACALORIE,
                        ENERGY,
                        calf,
                        t),
                Line.of("NEmy", "0.576·MEy", nem(), MEGACALORIE, EFFICIENCY),
                Line.of(
                        "Yp",
                        "CBW·(0.001669 − 0.00000211·t)·exp((0.0278 − 0.0000176·t)·t)·6.25",
                        netProtein(),
                        GRAM_A_DAY,
                        PROTEIN,
                        calf,
                        t),
                Line.of("MPy", "Yp / 0.65", metabolizableProtein(), GRAM_A_DAY, PROTEIN),
                Line.of(
                        "CW",
                        "CBW·0.01828·exp(0.02·t − 0.0000143·t^2)",
                        conceptusWeight(),
                        KILOGRAM,
                        PROTEIN,
                        calf,
                        t));
    }
}
