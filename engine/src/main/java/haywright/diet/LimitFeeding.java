package haywright.diet;

import haywright.cattle.AnimalClass;
import haywright.cattle.need.Need;
import haywright.workings.Problem;
import haywright.workings.Refused;
import java.util.ArrayList;

/**
 * Whom it is not for: thin cattle, first-calf and bred heifers, growing cattle, and cows in the last month before they
 * calve (judgment, after published limit-feeding advice, which keeps it to mature cows in good flesh).
 */
public final class LimitFeeding {
    private static final double LEAST_SCORE = 5;
    private static final double GESTATION_DAYS = 283;

    /** Days before calving in which it is not begun. */
    public static final int LAST_DAYS = 30;

    private LimitFeeding() {}

    /** @throws Refused where they may not be limit-fed. @param score 1 to 9 */
    public static void check(WayOfFeeding way, Need need, double score) {
        if (way != WayOfFeeding.LIMIT_FED) {
            return;
        }
        var problems = new ArrayList<Problem>();
        if (need.animals() != AnimalClass.MATURE_COW && need.animals() != AnimalClass.BULL) {
            problems.add(problem(need.animals().words()));
        } else if (score < LEAST_SCORE) {
            problems.add(problem("score " + score));
        } else if (need.daysPregnant() > GESTATION_DAYS - LAST_DAYS) {
            problems.add(problem("day %.0f of gestation".formatted(need.daysPregnant())));
        }
        Refused.unlessEmpty(problems);
    }

    private static Problem problem(String value) {
        return new Problem(
                "feeding",
                value,
                "limit-feeding is for mature cattle at score 5 or better, and not begun in the last month before calving",
                "Choose another way of feeding, or ask your nutritionist.");
    }
}
