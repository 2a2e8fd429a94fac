package haywright.sampling;

import haywright.workings.Problem;
import haywright.workings.Refused;
import java.util.ArrayList;

/**
 * What is known of how a lot came about, as far as it decides whether it is one lot.
 *
 * @param tons short tons as fed; 0 when not known
 * @param cuttings how many cuttings lie in it, at least 1
 * @param fields how many fields it came from, at least 1
 * @param balingHours from the first bale to the last; 0 when not known
 * @param partRained some of it was rained on, the rest was not
 * @param storedApart some of it is kept differently
 * @param tornWrap wrapped feed with holes among sound
 * @param species how many kinds or mixes of plants, at least 1
 */
public record LotFacts(
        double tons,
        int cuttings,
        int fields,
        double balingHours,
        boolean partRained,
        boolean storedApart,
        boolean tornWrap,
        int species) {
    /** One cutting of one field, put up and kept alike, and nothing more known. */
    public static final LotFacts PLAIN = new LotFacts(0, 1, 1, 0, false, false, false, 1);

    public LotFacts {
        var problems = new ArrayList<Problem>();
        if (!(tons >= 0 && Double.isFinite(tons))) {
            problems.add(new Problem("tons", tons + " tons", "a lot weighs 0 or more", "Enter how much."));
        }
        if (!(balingHours >= 0 && Double.isFinite(balingHours))) {
            problems.add(new Problem(
                    "balingHours", balingHours + " h", "hours are 0 or more", "From the first bale to the last."));
        }
        atLeastOne("cuttings", cuttings, problems);
        atLeastOne("fields", fields, problems);
        atLeastOne("species", species, problems);
        Refused.unlessEmpty(problems);
    }

    private static void atLeastOne(String field, int count, ArrayList<Problem> problems) {
        if (count < 1) {
            problems.add(new Problem(
                    field,
                    String.valueOf(count),
                    "a lot has at least one",
                    "Enter 1 if it is all alike, or leave it empty."));
        }
    }

    public LotFacts with(double tons) {
        return new LotFacts(tons, cuttings, fields, balingHours, partRained, storedApart, tornWrap, species);
    }
}
