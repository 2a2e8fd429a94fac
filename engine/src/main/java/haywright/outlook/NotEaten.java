package haywright.outlook;

import haywright.ranch.FedWeek;
import haywright.ranch.Ranch;
import java.util.Objects;
import java.util.Optional;
import java.util.UUID;

/**
 * What share of what is put out of a feed nobody eats, as the weeks of the ranch saw it:
 * <pre>
 * percent = (usual/s² + Σ seen/e²) / (1/s² + n/e²)      sd = 1/√(1/s² + n/e²)
 * </pre>
 *
 * @param usual percent that counts where nobody looked
 * @param percent that is believed
 * @param sd of that, points
 * @param weeks in which somebody looked
 */
public record NotEaten(double usual, double percent, double sd, int weeks) {
    /** How far the waste of one hay may lie from what is said of all, points (judgment). */
    private static final double USUAL_SD = 6;

    /** How far what one person judges by eye in one week may lie from the truth, points (judgment). */
    private static final double SEEN_SD = 6;

    /** Beyond this a lot is not fed but spread. */
    private static final double MOST = 90;

    /** Empty where no week says. @param usual percent that counts else */
    public static Optional<NotEaten> of(Ranch ranch, UUID feed, double usual) {
        var seen = ranch.weeks().values().stream()
                .map(FedWeek::left)
                .map(left -> left.get(feed))
                .filter(Objects::nonNull)
                .mapToDouble(percent -> percent)
                .toArray();
        return seen.length == 0 ? Optional.empty() : Optional.of(of(usual, seen));
    }

    static NotEaten of(double usual, double... seen) {
        double sum = usual / (USUAL_SD * USUAL_SD);
        double known = 1 / (USUAL_SD * USUAL_SD);
        for (double one : seen) {
            sum += one / (SEEN_SD * SEEN_SD);
            known += 1 / (SEEN_SD * SEEN_SD);
        }
        return new NotEaten(usual, Math.min(MOST, sum / known), 1 / Math.sqrt(known), seen.length);
    }
}
