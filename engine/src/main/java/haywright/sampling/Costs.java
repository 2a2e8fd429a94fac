package haywright.sampling;

import haywright.workings.Problem;
import haywright.workings.Refused;
import haywright.workings.Source;
import java.util.ArrayList;
import java.util.List;

/**
 * What taking costs, in dollars: for reaching a unit, for one core, for one laboratory result.
 *
 * @param perUnit C_u
 * @param perIncrement C_c
 * @param perAnalysis C_l
 */
public record Costs(double perUnit, double perIncrement, double perAnalysis, Source source) {
    /** A person's time, $25 an hour, and a usual fiber and protein package: judged, to be replaced by the ranch's own. */
    static final double USD_PER_MINUTE = 25.0 / 60;

    static final double USUAL_ANALYSIS_USD = 30;

    public Costs {
        var problems = new ArrayList<Problem>();
        for (var cost : List.of(perUnit, perIncrement, perAnalysis)) {
            if (!(cost >= 0 && Double.isFinite(cost))) {
                problems.add(new Problem("costs", "$" + cost, "a cost is 0 or more", "Enter what it costs."));
            }
        }
        Refused.unlessEmpty(problems);
    }

    public static Costs usual(Material material) {
        return new Costs(
                material.take("minutes_unit") * USD_PER_MINUTE,
                material.take("minutes_increment") * USD_PER_MINUTE,
                USUAL_ANALYSIS_USD,
                Source.judgment("the minutes of takes.csv at $25 an hour; $30 an analysis"));
    }

    public double of(Design design) {
        return perUnit * design.units() + perIncrement * design.cores() + perAnalysis * design.analyses();
    }
}
