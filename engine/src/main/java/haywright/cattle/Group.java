package haywright.cattle;

import haywright.quantity.Quantity;
import java.time.LocalDate;
import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/**
 * A group of cattle that is fed together.
 *
 * @param head how many; at least 1
 * @param weight mean live weight on {@code weighedOn}, without the calf in her
 * @param shrunk whether {@code weight} was taken after shrink
 * @param matureWeight what they weigh grown up at condition 5; for bulls and steers the final weight
 * @param conditionScore mean, 1 to 9
 * @param breed a row of {@code breeds.csv}, which decides breed effect, birth weight and milk; empty for average cattle
 * @param calving how many are due or calved in the week that begins on each date; empty where none are
 * @param calfBirthWeight mean; null takes the breed's
 * @param peakMilk a day at peak; null takes the breed's, scaled for first-calf heifers
 * @param weaning the day the calves leave; null when there are none
 * @param gain wanted gain a day; zero for grown cattle that hold
 * @param turnout the day this group goes to grass, if planned
 */
public record Group(
        UUID id,
        String name,
        AnimalClass animals,
        int head,
        Quantity weight,
        boolean shrunk,
        LocalDate weighedOn,
        Quantity matureWeight,
        double conditionScore,
        String breed,
        List<CalvingWeek> calving,
        @Nullable Quantity calfBirthWeight,
        @Nullable Quantity peakMilk,
        @Nullable LocalDate weaning,
        Quantity gain,
        @Nullable LocalDate turnout) {
    public Group {
        calving = List.copyOf(calving);
    }

    /** @param begins the first day of the week */
    public record CalvingWeek(LocalDate begins, int head) {}
}
