package haywright.ranch;

import java.time.LocalDate;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;

/**
 * A group's feed letter as it was made: the figures of that day stay, so that a printed letter can be printed again,
 * and edited words survive a recalculation.
 *
 * @param made the day its figures were worked out for
 * @param version of the program that worked them out
 * @param inputsSha256 of everything the figures rest on; when the ranch gives another, the letter is stale and says so
 * @param table what is fed, as it was printed that day
 * @param figures the letter's worked-out parts by name, as they read that day
 * @param words parts that somebody rewrote, by the same names, and the adviser's own lines
 */
public record Letter(
        UUID group,
        LocalDate made,
        String version,
        String inputsSha256,
        List<Row> table,
        Map<String, String> figures,
        Map<String, String> words) {
    public Letter {
        table = List.copyOf(table);
        figures = Collections.unmodifiableMap(new LinkedHashMap<>(figures));
        words = Collections.unmodifiableMap(new LinkedHashMap<>(words));
    }

    /**
     * One feed.
     *
     * @param where it lies, in the rancher's words, or that it is bought
     * @param aHead as fed, with its unit: "24 lb"
     * @param forTheGroup in what the feeder counts: "7½ bales a day", "240 lb a day"
     */
    public record Row(String feed, String where, String aHead, String forTheGroup) {}
}
