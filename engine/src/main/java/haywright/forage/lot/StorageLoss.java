package haywright.forage.lot;

import haywright.workings.PublishedTable;
import haywright.workings.Source;
import java.util.Comparator;
import java.util.List;

/**
 * Dry matter that hay lost while it was stored, as one source found it: a row of {@code storage_loss.csv}. It is shown and
 * counted nowhere: what a stack holds is what was counted and weighed there.
 *
 * @param material what was stored
 * @param kept how
 * @param months how long
 * @param percent of the dry matter that was brought in
 */
public record StorageLoss(String material, String kept, int months, double percent, Source source) {
    private static final List<StorageLoss> ALL =
            PublishedTable.read(StorageLoss.class, "storage_loss.csv").rows().stream()
                    .map(row -> new StorageLoss(
                            row.text("material"),
                            row.text("kept"),
                            (int) row.number("months").orElseThrow(),
                            row.number("dm_lost_pct").orElseThrow(),
                            Source.read(row.text("source"))))
                    .sorted(Comparator.comparingDouble(StorageLoss::percent))
                    .toList();

    /** The least loss first. */
    public static List<StorageLoss> published() {
        return ALL;
    }
}
