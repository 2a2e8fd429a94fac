package haywright.forage.energy;

import haywright.forage.Say;
import haywright.workings.Source;

/**
 * How far what cattle get out of a feed lies around what an equation says.
 *
 * @param sd standard deviation, in the unit of the equation's answer
 * @param source who says so
 */
public record Residual(double sd, Source source) {
    /** "3", "6.1" */
    public String said() {
        return Say.number(sd);
    }
}
