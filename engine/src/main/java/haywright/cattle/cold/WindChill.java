package haywright.cattle.cold;

import haywright.cattle.Findings;
import haywright.cattle.Limits;
import haywright.quantity.Unit;
import haywright.workings.Refused;
import haywright.workings.Worked;

/** What a temperature feels like in wind. Daily means, not the lowest hour and not gusts. */
public sealed interface WindChill extends Worked permits CattleWindChill, Nws2001WindChill {
    /** °C. */
    double celsius();

    /** @throws Refused for a temperature or a wind that cannot be */
    static void check(double temperature, double wind) {
        Findings.of(
                        Limits.of("day_temperature").check("temperature", temperature, Unit.CELSIUS),
                        Limits.of("wind").check("wind", wind, Unit.KILOMETER_AN_HOUR))
                .refuse();
    }
}
