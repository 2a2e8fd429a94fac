package haywright.cattle.cold;

import static haywright.quantity.Unit.CELSIUS;
import static haywright.quantity.Unit.NONE;
import static haywright.quantity.Unit.PERCENT;

import haywright.cattle.Limits;
import haywright.workings.Input;
import haywright.workings.Line;
import haywright.workings.Source;
import haywright.workings.Worked;
import java.util.List;

/**
 * How much more energy cattle need in the cold, by the rule of thumb.
 * <pre>
 * pct = k·max(0, LCT − EAT)      k: 1.8 % a °C (1 % a °F) dry, 3.6 (2 % a °F) wet
 * </pre>
 * It is a share of maintenance. Several published examples take it of the whole ration instead, which overstates it by
 * two thirds late in pregnancy. It stands for days, and nobody can feed more than about half as much again: what is owed
 * after a storm is paid back over the days that follow. Needs of protein, minerals and vitamins stay as they are.
 *
 * @param lowerCritical LCT, °C
 * @param effective EAT, °C: the wind chill of cattle
 * @param perDegree k, % a °C
 * @see "Kansas State University, Cottonwood Connections, January 2025: 1 % a °F dry, 2 % wet (read)"
 */
public record ColdStress(Input lowerCritical, Input effective, double perDegree) implements Worked {
    /** 1 % a °F. */
    public static final double DRY = 1.8;

    /** 2 % a °F. */
    public static final double WET = 3.6;

    private static final Source RULE =
            Source.read("Kansas State University, Cottonwood Connections, January 2025: 1 % a °F dry, 2 % wet");

    public ColdStress {
        Limits.of("critical_temperature")
                .check("lowerCritical", lowerCritical.value(), CELSIUS)
                .refuse();
    }

    /** By the tables. */
    public static ColdStress of(LowerCritical lowerCritical, WindChill chill) {
        return of(Input.computed("LCT", lowerCritical.celsius(), CELSIUS, lowerCritical), chill, lowerCritical.wet());
    }

    /** @param lowerCritical °C, as somebody else has it */
    public static ColdStress given(double lowerCritical, WindChill chill, boolean wet) {
        return of(Input.typed("LCT", lowerCritical, CELSIUS), chill, wet);
    }

    private static ColdStress of(Input lowerCritical, WindChill chill, boolean wet) {
        return new ColdStress(lowerCritical, Input.computed("EAT", chill.celsius(), CELSIUS, chill), wet ? WET : DRY);
    }

    /** °C that the effective temperature lies below the critical one; 0 where it is warmer. */
    public double degreesBelow() {
        return Math.max(0, lowerCritical.value() - effective.value());
    }

    /** Of maintenance, %. */
    public double percent() {
        return perDegree * degreesBelow();
    }

    @Override
    public List<Line> lines() {
        return List.of(Line.of(
                "pct",
                "k·max(0, LCT − EAT)",
                percent(),
                PERCENT,
                RULE,
                Input.published("k", perDegree, NONE, RULE),
                lowerCritical,
                effective));
    }
}
