package haywright.forage.lot;

import haywright.forage.Analyte;
import haywright.workings.Line;
import haywright.workings.Worked;
import java.util.ArrayList;
import java.util.List;

/**
 * One figure of a lot as it was weighed: what its kind has, moved by what was measured.
 *
 * @param whose figure it is, for the reader: "report of Oct 14, 2026"
 * @param how it was weighed: "says 12.1 %; moved a little toward its kind"; may be empty
 */
public record Weighed(LotEstimate estimate, Analyte analyte, String whose, String how) implements Worked {
    public String words() {
        return how.isEmpty() ? whose : whose + " " + how;
    }

    @Override
    public List<Line> lines() {
        var prior = estimate.prior();
        var seen = Seen.of(prior, estimate.tested(), new ArrayList<>());
        return new Weighing(prior, seen, seen.given(prior), List.of(estimate.of(analyte))).lines();
    }
}
