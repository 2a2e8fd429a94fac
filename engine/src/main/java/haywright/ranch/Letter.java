package haywright.ranch;

import java.time.LocalDate;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.UUID;

/**
 * A group's feed letter as it was made: the figures of that day stay, so that a printed letter can be printed again,
 * and edited words survive a recalculation.
 *
 * @param made the day its figures were worked out
 * @param inputsSha256 of everything the figures rest on; when the ranch gives another, the letter is stale and says so
 * @param figures the letter's generated parts by name, as they were that day
 * @param words parts that somebody rewrote, by the same names, and the adviser's own lines
 */
public record Letter(
        UUID group, LocalDate made, String inputsSha256, Map<String, String> figures, Map<String, String> words) {
    public Letter {
        figures = Collections.unmodifiableMap(new LinkedHashMap<>(figures));
        words = Collections.unmodifiableMap(new LinkedHashMap<>(words));
    }
}
