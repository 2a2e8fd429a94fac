package haywright.cattle.cold;

import static haywright.quantity.Unit.CELSIUS;
import static haywright.quantity.Unit.CENTIMETER;
import static haywright.quantity.Unit.KILOGRAM;
import static haywright.quantity.Unit.KILOMETER_AN_HOUR;
import static haywright.quantity.Unit.MEGACALORIE;
import static haywright.quantity.Unit.NONE;

import haywright.cattle.Findings;
import haywright.cattle.Limits;
import haywright.workings.Input;
import haywright.workings.Line;
import haywright.workings.Source;
import haywright.workings.Worked;
import java.util.List;

/**
 * What an animal burns to stay warm, by the balance of the heat it makes and the heat it loses.
 * <pre>
 * SA  = 0.09·SBW^0.67                                         surface, m²
 * HE  = (MEI − NEFP) / SA                                     heat made, Mcal/m²
 * TI  = 5.25 + 0.75·CS       5.1875 + 0.3125·CS when young    tissue insulation, °C·m²·d/Mcal
 * EI  = max(0, (7.36 − 0.296·WIND + 2.55·HAIR)·MUD)           coat and air
 * IN  = TI + EI
 * LCT = 39 − 0.85·IN·HE                                       °C
 * MEc = SA·max(0, LCT − EAT) / IN                             Mcal of ME a day
 * </pre>
 * MEI is what the ration brings. Where the ration is raised until it also carries MEc, its own heat warms the animal: one
 * Mcal more of MEI lowers MEc by 0.85, so that the balance stands at MEc / 1.85 ({@link #carried()}), exactly where
 * going round until nothing changes ends. Wind is the mean of a day at the height of the animal, for cattle that stand in
 * it all day.
 *
 * @param shrunkWeight SBW, kg
 * @param grown false for calves and yearlings
 * @param hair effective depth, cm
 * @param wind km/h at the animal
 * @param mud share of the coat's insulation that is left, above 0 to 1
 * @param temperature EAT, °C
 * @param mei Mcal of ME a day
 * @param retained NEFP, Mcal a day: net energy kept in gain, calf and milk
 * @see "NRC, Nutrient Requirements of Beef Cattle, 1996/2000, chapters 1 and 10 (terms read p. 10; coefficients from memory)"
 */
public record HeatBalance(
        double shrunkWeight,
        double conditionScore,
        boolean grown,
        double hair,
        double wind,
        double mud,
        double temperature,
        double mei,
        double retained)
        implements Worked {
    private static final Source BALANCE = Source.memory("NRC 1996/2000 ch. 1 and 10, heat balance");
    private static final Source CARRIED =
            Source.judgment("one Mcal more of ME eaten makes 0.85 Mcal less of MEc, by the lines above");
    private static final double HEAT = 0.85;

    public HeatBalance {
        Findings.of(
                        Limits.of("condition_score").check("conditionScore", conditionScore, NONE),
                        Limits.of("day_temperature").check("temperature", temperature, CELSIUS),
                        Limits.of("wind").check("wind", wind, KILOMETER_AN_HOUR))
                .refuse();
    }

    /** m². */
    public double surface() {
        return 0.09 * Math.pow(shrunkWeight, 0.67);
    }

    /** Mcal/m² and day. */
    public double heat() {
        return (mei - retained) / surface();
    }

    public double tissue() {
        return grown ? 5.25 + 0.75 * conditionScore : 5.1875 + 0.3125 * conditionScore;
    }

    public double coat() {
        return Math.max(0, (7.36 - 0.296 * wind + 2.55 * hair) * mud);
    }

    public double insulation() {
        return tissue() + coat();
    }

    /** °C. */
    public double lowerCritical() {
        return 39 - HEAT * insulation() * heat();
    }

    /** Mcal of ME a day, on the ration as it is. */
    public double metabolizableEnergy() {
        return surface() * Math.max(0, lowerCritical() - temperature) / insulation();
    }

    /** Mcal of ME a day, when the ration grows to carry it. */
    public double carried() {
        return metabolizableEnergy() / (1 + HEAT);
    }

    @Override
    public List<Line> lines() {
        return List.of(
                Line.of("SA", "0.09·SBW^0.67", surface(), NONE, BALANCE, Input.typed("SBW", shrunkWeight, KILOGRAM)),
                Line.of(
                        "HE",
                        "(MEI − NEFP) / SA",
                        heat(),
                        NONE,
                        BALANCE,
                        Input.typed("MEI", mei, MEGACALORIE),
                        Input.typed("NEFP", retained, MEGACALORIE)),
                Line.of(
                        "TI",
                        grown ? "5.25 + 0.75·CS" : "5.1875 + 0.3125·CS",
                        tissue(),
                        NONE,
                        BALANCE,
                        Input.typed("CS", conditionScore, NONE)),
                Line.of(
                        "EI",
                        "max(0, (7.36 − 0.296·WIND + 2.55·HAIR)·MUD)",
                        coat(),
                        NONE,
                        BALANCE,
                        Input.typed("WIND", wind, KILOMETER_AN_HOUR),
                        Input.typed("HAIR", hair, CENTIMETER),
                        Input.published("MUD", mud, NONE, BALANCE)),
                Line.of("IN", "TI + EI", insulation(), NONE, BALANCE),
                Line.of("LCT", "39 − 0.85·IN·HE", lowerCritical(), CELSIUS, BALANCE),
                Line.of(
                        "MEc0",
                        "SA·max(0, LCT − EAT) / IN",
                        metabolizableEnergy(),
                        MEGACALORIE,
                        BALANCE,
                        Input.typed("EAT", temperature, CELSIUS)),
                Line.of("MEc", "MEc0 / 1.85", carried(), MEGACALORIE, CARRIED));
    }
}
