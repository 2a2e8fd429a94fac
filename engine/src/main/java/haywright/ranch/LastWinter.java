package haywright.ranch;

import haywright.quantity.Kind;
import haywright.quantity.Quantity;
import haywright.workings.Problem;
import haywright.workings.Refused;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * Last winter as the ranch remembers it; checked against what the equations say it needed before advice is given.
 *
 * @param head cattle fed
 * @param days days fed
 * @param fed everything fed, as tons of hay as fed
 * @param scoreBefore mean condition score of the cows in fall
 * @param scoreAfter and in spring
 */
public record LastWinter(
        @Nullable Integer head,
        @Nullable Integer days,
        @Nullable Quantity fed,
        @Nullable Double scoreBefore,
        @Nullable Double scoreAfter) {
    public LastWinter {
        var problems = new ArrayList<Problem>();
        if (head != null && head < 1) {
            problems.add(
                    new Problem("head", head + " head", "a herd has at least one head", "Enter how many were fed."));
        }
        if (days != null && (days < 1 || days > 366)) {
            problems.add(new Problem(
                    "days", days + " days", "a winter has 1 to 366 days", "Enter how many days they were fed."));
        }
        if (fed != null) {
            Refused.unlessOfKind(Kind.MASS, "fed", fed);
        }
        score("scoreBefore", scoreBefore, problems);
        score("scoreAfter", scoreAfter, problems);
        Refused.unlessEmpty(problems);
    }

    private static void score(String field, @Nullable Double score, List<Problem> problems) {
        if (score != null && !(score >= 1 && score <= 9)) {
            problems.add(new Problem(
                    field,
                    score.toString(),
                    "condition is scored from 1 to 9",
                    "Check that it is not on the 5-point scale."));
        }
    }

    public static final LastWinter NOT_SAID = new LastWinter(null, null, null, null, null);
}
