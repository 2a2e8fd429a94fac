package haywright.season.play;

import haywright.season.given.Emergency;
import java.util.List;

/**
 * One winter as it was played to its end.
 *
 * @param winter of the record
 * @param cost dollars, by the accounting of every plan: what was bought, missed and lost of condition, less what is left
 * @param bought dollars for feed, emergency hay included
 * @param sold dollars for feed that was sold
 * @param emergencyKg as fed of hay beyond all that was at hand and for sale
 * @param shortFrom the first week in which some was fed, or the storm reserve was touched; −1 for none
 * @param stormShortKg of dry matter that the storm reserve was short of at the worst
 * @param calvingScores of each group at its first calving; NaN for those that do not calve
 * @param endScores of each group at the end; NaN for those that gain
 * @param scoresKept whether every group calved at what it was to, less what no scorer sees
 * @param leftKg as fed of each feed at the end
 * @param runsOut the week in which each feed that lay there was used up; −1 for those that lasted
 * @param late days that grass came late
 * @param open grams by which the books do not close
 * @param weeks one by one
 */
@SuppressWarnings("ArrayRecordComponent")
public record Played(
        int winter,
        double cost,
        double bought,
        double sold,
        double emergencyKg,
        int shortFrom,
        double stormShortKg,
        double[] calvingScores,
        double[] endScores,
        boolean scoresKept,
        double[] leftKg,
        int[] runsOut,
        int late,
        long open,
        List<Week> weeks) {
    /**
     * One week of it.
     *
     * @param known on its first morning
     * @param decision on it
     * @param fedKg as fed that was put out of each feed, all groups together
     * @param nem Mcal a head and day that each group truly needed
     * @param reserve Mcal a head of each group at its end, above the score to calve at
     * @param boughtKg as fed of each feed, what is bought as it is fed included
     * @param dollars paid for these
     */
    public record Week(
            Known known,
            Decision decision,
            double[] fedKg,
            double[] nem,
            double[] reserve,
            double[] boughtKg,
            double dollars) {}

    /** No emergency hay, storm reserve untouched, and the score at calving kept. */
    public boolean lasted() {
        return emergencyKg < Emergency.KG && stormShortKg < Emergency.KG && scoresKept;
    }
}
