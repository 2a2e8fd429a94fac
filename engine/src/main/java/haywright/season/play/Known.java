package haywright.season.play;

/**
 * What is known on the morning of a week, and all that a policy is given.
 *
 * @param week from 0
 * @param days on which each group is fed this week: whether grass is there is seen
 * @param stock kg as fed of each feed, as it is believed
 * @param face of each feed: whether its silage face is open, and what it is to be left at
 * @param canBuy kg as fed of each feed that can still be bought
 * @param reserve Mcal a head of each group above the score to calve at, as it was seen last
 * @param departed standard deviations by which last week was harder than usual
 * @param hardSoFar standard deviations by which the winter so far was
 * @param late days that grass is late already, on a week past the day that was said
 * @param lean share by which what the cattle show they need lies above what the figures say
 */
@SuppressWarnings("ArrayRecordComponent")
public record Known(
        int week,
        int[] days,
        double[] stock,
        Face[] face,
        double[] canBuy,
        double[] reserve,
        double departed,
        double hardSoFar,
        int late,
        double lean) {
    /** How a silage face stands. */
    public enum Face {
        /** Nothing was taken of it, and it may be opened. */
        CLOSED,
        /** Not opened this week. */
        LEFT_CLOSED,
        OPEN
    }

    Known with(int feed, Face as) {
        var other = face.clone();
        other[feed] = as;
        return new Known(week, days, stock, other, canBuy, reserve, departed, hardSoFar, late, lean);
    }
}
