package haywright.season.play;

/**
 * What is done in one week.
 *
 * @param eaten kg of dry matter of each feed that all head of each group are to eat, by group and feed
 * @param buy kg as fed of each feed
 * @param sell kg as fed of each feed
 */
@SuppressWarnings("ArrayRecordComponent")
public record Decision(double[][] eaten, double[] buy, double[] sell) {
    /** That sells nothing. */
    public Decision(double[][] eaten, double[] buy) {
        this(eaten, buy, new double[buy.length]);
    }
}
