package haywright.ranch;

import haywright.quantity.Kind;
import haywright.quantity.Quantity;
import haywright.workings.Refused;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.Collection;
import java.util.Collections;
import java.util.LinkedHashMap;
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
        masses("fed", fed.values());
        masses("counted", counted.values());
        masses("expected", expected.values());
        long days = ChronoUnit.DAYS.between(from, to) + 1;
        if (days < 1 || days > LONGEST_DAYS) {
            throw new Refused(
                    "to",
                    to.toString(),
                    "a record is of 1 to 60 days, from " + from,
                    "Enter the first and the last day; use one record a week.");
        }
        if (fed.isEmpty() && counted.isEmpty() && scored.isEmpty()) {
            throw new Refused("fed", "nothing", "a record says something", "Enter what was fed, counted or scored.");
        }
        range("left", left.values(), 0, PERCENT, "what they left is 0 to 100 % of what was put out");
        range("scored", scored.values(), LEAST_SCORE, MOST_SCORE, "condition scores run from 1 to 9");
    }

    private static <T> Map<UUID, T> kept(Map<UUID, T> map) {
        return Collections.unmodifiableMap(new LinkedHashMap<>(map));
    }

    private static void masses(String field, Collection<Quantity> all) {
        for (var one : all) {
            Refused.unlessOfKind(Kind.MASS, field, one);
            if (!(one.base() >= 0)) {
                throw new Refused(field, one.asTyped(), "tons are 0 or more", "Enter 0 for none.");
            }
        }
    }

    private static void range(String field, Collection<Double> all, double low, double high, String rule) {
        for (double one : all) {
            if (!(one >= low && one <= high)) {
                throw new Refused(field, Double.toString(one), rule, "Check the figure.");
            }
        }
    }

    public int days() {
        return (int) ChronoUnit.DAYS.between(from, to) + 1;
    }
}
