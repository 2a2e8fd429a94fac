package haywright.sampling;

import haywright.workings.Source;
import java.util.List;

/**
 * The published method for a material, as its sources word it. Conflicts between sources stand there as conflicts.
 *
 * @param leftOut a published way that would hurt somebody, and why it is not offered; empty where there is none
 * @param practice what is commonly done, without a source; marked so wherever it is shown
 */
public record Method(
        String lot,
        String count,
        String statistical,
        String increments,
        String tool,
        String bore,
        String depth,
        String entry,
        String split,
        String mass,
        String packing,
        String storage,
        String timing,
        String doThis,
        String doNot,
        String safety,
        String leftOut,
        List<Practice> practice,
        Source source) {
    public Method {
        practice = List.copyOf(practice);
    }
}
