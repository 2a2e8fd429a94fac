package haywright.weather;

/**
 * How far weather worked out for a place lies off: each sampled station was left out in turn and its winters worked out
 * from the others, by name alone, without its height. Of the degree-days below 18 °F from November to March, as shares.
 *
 * @param middle half the stations are missed by less
 * @param nineInTen one station in ten is missed by more
 * @param winterByWinter correlation of the single winters, the middle station
 */
public record Doubt(double middle, double nineInTen, double winterByWinter) {
    /** As the tests find it again. */
    public static final Doubt OF_A_PLACE = new Doubt(0.14, 0.41, 0.97);
}
