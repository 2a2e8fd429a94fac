package haywright.ranch;

import haywright.quantity.Kind;
import haywright.quantity.Quantity;
import haywright.workings.Problem;
import haywright.workings.Refused;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;

/**
 * What was fed, counted, scored and left in a stretch of days. A record outlives the lots and groups it speaks of: what was
 * fed was fed.
 *
 * @param from the first day
 * @param to the last day, on whose evening counts and scores are true
 * @param fed as fed, all groups together, by lot or feed bought
 * @param counted as fed, what is left of a lot
 * @param left percent of what was put out of a feed that the cattle left
 * @param scored mean condition score of a group
 * @param expected as fed, what should have been left of a lot by the figures before
 * @param scoredBefore the score of a group that was scored, as it was entered before
 */
public record FedWeek(
        UUID id,
        LocalDate from,
        LocalDate to,
        Map<UUID, Quantity> fed,
        Map<UUID, Quantity> counted,
        Map<UUID, Double> left,
        Map<UUID, Double> scored,
        Map<UUID, Quantity> expected,
        Map<UUID, Double> scoredBefore) {
    private static final int LONGEST_DAYS = 60;
    private static final double PERCENT = 100;
    private static final double LEAST_SCORE = 1;
    private static final double MOST_SCORE = 9;

    public FedWeek {
        fed = kept(fed);
        counted = kept(counted);
        left = kept(left);
        scored = kept(scored);
        expected = kept(expected);
        scoredBefore = kept(scoredBefore);
        var problems = new ArrayList<Problem>();
        masses("fed", fed, problems);
        masses("counted", counted, problems);
        masses("expected", expected, problems);
        range("left", left, 0, PERCENT, "what they left is 0 to 100 % of what was put out", problems);
        range("scored", scored, LEAST_SCORE, MOST_SCORE, "condition scores run from 1 to 9", problems);
        long days = ChronoUnit.DAYS.between(from, to) + 1;
        if (days < 1 || days > LONGEST_DAYS) {
            problems.add(new Problem(
                    "to",
                    to.toString(),
                    "a record is of 1 to 60 days, the first among them",
                    "Enter the first and the last day; use one record a week."));
        }
        if (problems.isEmpty() && fed.isEmpty() && counted.isEmpty() && scored.isEmpty()) {
            problems.add(left.keySet().stream()
                    .findFirst()
                    .map(feed -> new Problem(
                            "fed/" + feed,
                            "nothing",
                            "what was not eaten is a share of what was fed",
                            "Enter what was fed of it."))
                    .orElse(new Problem(
                            "fed", "nothing", "a record says something", "Enter what was fed, counted or scored.")));
        }
        Refused.unlessEmpty(problems);
    }

    private static <T> Map<UUID, T> kept(Map<UUID, T> map) {
        return Collections.unmodifiableMap(new LinkedHashMap<>(map));
    }

    private static void masses(String field, Map<UUID, Quantity> all, List<Problem> problems) {
        all.forEach((feed, mass) -> {
            var of = field + "/" + feed;
            Refused.unlessOfKind(Kind.MASS, of, mass);
            if (!(mass.base() >= 0)) {
                problems.add(new Problem(of, mass.asTyped(), "this is 0 or more", "Enter 0 for none."));
            }
        });
    }

    private static void range(
            String field, Map<UUID, Double> all, double low, double high, String rule, List<Problem> problems) {
        all.forEach((whose, one) -> {
            if (!(one >= low && one <= high)) {
                problems.add(new Problem(field + "/" + whose, Double.toString(one), rule, "Check the figure."));
            }
        });
    }

    public int days() {
        return (int) ChronoUnit.DAYS.between(from, to) + 1;
    }
}
