package haywright.forage.energy;

import haywright.forage.Say;
import haywright.workings.Refused;

/**
 * The two fibers of one sample, percent of dry matter: 41 % is 41.0. ADF is part of NDF, so a pair that says otherwise
 * is refused here, before any equation can make a believable number of it.
 */
public record Fiber(double adf, double ndf) {
    public Fiber {
        if (!(adf >= 0 && adf <= ndf && ndf > 0 && ndf <= 100)) { // also refuses NaN
            throw new Refused(
                    adf > ndf ? "adf" : "ndf",
                    "ADF %s %% and NDF %s %% of dry matter".formatted(Say.number(adf), Say.number(ndf)),
                    "they cannot both be right: ADF is part of NDF, and NDF is above 0 and at most 100",
                    "Are the two swapped?");
        }
    }
}
