package haywright.forage.energy;

import haywright.workings.Worked;
import java.util.Optional;

/**
 * Total digestible nutrients of a feed by one of the ways it is known. They differ by more than laboratories do: at 40 %
 * ADF the published lines give 48 to 60, so every figure carries which way it came.
 */
public sealed interface Tdn extends Worked
        permits AdfTdn, HeldTdn, ProximateTdn, StatedTdn, SummativeTdn, WeatheredTdn, WeissTdn {
    /** Percent of dry matter, at maintenance. */
    double percent();

    /** How far the truth lies around it, points of TDN; empty where its source prints none and nobody else does. */
    Optional<Residual> residual();
}
