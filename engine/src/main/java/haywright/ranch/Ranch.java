package haywright.ranch;

import haywright.cattle.Group;
import haywright.forage.LabReport;
import java.time.LocalDate;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;

/**
 * One ranch and one winter.
 *
 * @param settings choices that hold for the whole ranch
 * @param letters what was written on a group's feed letter, by group id
 */
public record Ranch(
        UUID id,
        String name,
        Settings settings,
        Map<UUID, Group> groups,
        Map<UUID, Lot> lots,
        Map<UUID, LabReport> reports,
        Map<UUID, Field> fields,
        Map<UUID, FeedForSale> feedsForSale,
        Outfit outfit,
        Map<UUID, FedNow> fedNow,
        LastWinter lastWinter,
        Map<UUID, Letter> letters) {
    public Ranch {
        groups = kept(groups);
        lots = kept(lots);
        reports = kept(reports);
        fields = kept(fields);
        feedsForSale = kept(feedsForSale);
        fedNow = kept(fedNow);
        letters = kept(letters);
    }

    /** Unmodifiable, in the order given. */
    private static <T> Map<UUID, T> kept(Map<UUID, T> map) {
        return Collections.unmodifiableMap(new LinkedHashMap<>(map));
    }

    public static Ranch empty(UUID id, String name) {
        return new Ranch(
                id,
                name,
                Settings.start(),
                Map.of(),
                Map.of(),
                Map.of(),
                Map.of(),
                Map.of(),
                Outfit.NOT_SAID,
                Map.of(),
                LastWinter.NOT_SAID,
                Map.of());
    }

    /** The reports on a lot, oldest first. */
    public List<LabReport> reportsOn(UUID lot) {
        return reports.values().stream()
                .filter(r -> r.lot().equals(lot))
                .sorted((a, b) -> {
                    var left = a.reported() == null ? LocalDate.MIN : a.reported();
                    var right = b.reported() == null ? LocalDate.MIN : b.reported();
                    return left.compareTo(right);
                })
                .toList();
    }

    public int head() {
        return groups.values().stream().mapToInt(Group::head).sum();
    }
}
