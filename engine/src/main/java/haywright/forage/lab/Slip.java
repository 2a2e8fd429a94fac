package haywright.forage.lab;

import haywright.forage.Analyte;
import haywright.forage.FeedClass;
import java.util.Optional;

/**
 * A figure that would be usual with its point moved.
 *
 * @param words "ten times", "a tenth of"
 * @param likely the figure with the point moved back
 */
record Slip(String words, double likely) {
    /** A figure this far outside the usual range is not just a good or a poor feed. */
    private static final double FAR = 3;

    static Optional<Slip> of(FeedClass feedClass, Analyte analyte, double value) {
        return analyte.usual(feedClass).flatMap(usual -> {
            if (value > FAR * usual.high()) {
                return usual(usual, value / 10, "ten times").or(() -> usual(usual, value / 100, "a hundred times"));
            }
            if (value > 0 && value < usual.low() / FAR) {
                return usual(usual, value * 10, "a tenth of").or(() -> usual(usual, value * 100, "a hundredth of"));
            }
            return Optional.empty();
        });
    }

    private static Optional<Slip> usual(Analyte.Range usual, double moved, String words) {
        boolean near = moved >= 0.7 * usual.low() && moved <= 1.3 * usual.high();
        return near ? Optional.of(new Slip(words, moved)) : Optional.empty();
    }
}
