package haywright.season.given;

import haywright.cattle.AnimalClass;
import haywright.cattle.LiveWeight;
import haywright.cattle.Reserves;
import haywright.cattle.herd.Group;
import haywright.cattle.herd.Regain;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;

/**
 * Energy on the backs of a group, counted in Mcal a head above or below the score that they should calve at. One score is
 * taken to be as many Mcal everywhere as from half a score below 5 to half a score above.
 *
 * @param mcalAScore Mcal a head in one score
 * @param start Mcal a head above the score to calve at, on the first day
 * @param target the score to calve at
 * @param calvingDay days from the first day to the first calving; below zero where none is ahead
 * @param mayLose whether a plan may let them lose condition at all; never first-calf and bred heifers
 */
public record Body(double mcalAScore, double start, double target, int calvingDay, boolean mayLose) {
    private static final double MIDDLE = 5;
    private static final double HALF = 0.5;
    private static final double DAYS_A_MONTH = 30;
    private static final double LEAST_SCORE = 4;

    public static Body of(Group group, LocalDate today) {
        double weight = new LiveWeight(group.matureWeight().base(), group.shrunk()).shrunk();
        double perScore = new Reserves(weight, MIDDLE - HALF, MIDDLE + HALF).energy();
        boolean heifer = group.animals() == AnimalClass.BRED_HEIFER || group.animals() == AnimalClass.FIRST_CALF_HEIFER;
        var wanted = group.wantedScore();
        double target = wanted != null
                ? wanted
                : group.animals() == AnimalClass.BULL
                        ? group.conditionScore()
                        : Facts.value(heifer ? "heifer_score" : "calving_score");
        int calving = group.firstCalving()
                .filter(first -> first.isAfter(today))
                .map(first -> (int) ChronoUnit.DAYS.between(today, first))
                .orElse(-1);
        return new Body(perScore, (group.conditionScore() - target) * perScore, target, calving, !heifer);
    }

    /** Mcal a head that can be gained or lost in so many days. */
    public double most(double days) {
        return Facts.value("score_a_month") * mcalAScore * days / DAYS_A_MONTH;
    }

    /** Mcal a head below the score to calve at that nobody may fall under. */
    public double least() {
        return Math.min((LEAST_SCORE - target) * mcalAScore, start);
    }

    /** Days of a stretch in which losing counts: the last before calving, and all for those that may not lose. */
    public double guarded(int from, int days) {
        if (!mayLose) {
            return days;
        }
        int begins = calvingDay - Regain.NO_LOSS_DAYS;
        return calvingDay < 0 ? 0 : Math.max(0, Math.min(from + days, calvingDay) - Math.max(from, begins));
    }

    public double score(double mcal) {
        return target + mcal / mcalAScore;
    }

    /** Dollars for each Mcal a head that they calve below the score. */
    public double calvingPrice() {
        return Facts.value("score_usd") / mcalAScore;
    }

    /** Dollars for each Mcal a head at turnout below what milk may take. */
    public double turnoutPrice() {
        return Facts.value("turnout_usd") / mcalAScore;
    }

    /** Dollars for each Mcal a head and week below {@link #least}. */
    public double thinPrice() {
        return Facts.value("thin_usd") / mcalAScore;
    }

    /** Mcal a head that milk may take until turnout. */
    public double milk() {
        return Facts.value("milk_loss") * mcalAScore;
    }
}
