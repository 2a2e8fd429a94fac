package haywright.forage;

import java.time.LocalDate;
import java.time.format.DateTimeFormatter;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/**
 * What a lot, or a feed for sale, is made of: its reports before the feed book, the newest report first, and energy and
 * nitrate worked out from them.
 *
 * <p>What a laboratory works out itself (TDN, net energy, feed values, available protein) is not a second measurement.
 * TDN is recomputed from the measured ADF by the line usual for the class; where ADF was not measured or the class has
 * no line, the laboratory's own TDN stands; where there is neither, the book's, with the net energies printed beside it.
 * Which one it was is in {@code notes}. Relative feed value is given for legume, grass and mixed hay whose two fibres
 * were both measured.
 *
 * @param row the row of the feed book that stands in; empty when there is none
 * @param composition on dry matter, every figure with its origin
 * @param tdn the way TDN was had; empty when it is not known
 * @param notes in the reader's words: what stands in for what, which TDN, what was left out and why
 */
public record LotComposition(
        FeedClass feedClass,
        Optional<FeedBook.Row> row,
        Composition composition,
        Optional<Tdn> tdn,
        List<String> notes) {
    static final DateTimeFormatter DAY = DateTimeFormatter.ofPattern("MMM d, uuuu", Locale.US);

    public LotComposition {
        notes = List.copyOf(notes);
    }

    /** @param reports on one lot, in any order */
    public static LotComposition of(FeedClass feedClass, Optional<FeedBook.Row> row, List<LabReport> reports) {
        var told = reports.stream()
                .sorted(Comparator.comparing(LotComposition::day).reversed())
                .map(report -> new Joining.Told(words(report), report.counted()))
                .toList();
        return new Joining(feedClass, row).join(told);
    }

    /**
     * A feed for sale.
     *
     * @param where whose figures they are, in words: "feed tag"
     */
    public static LotComposition ofTag(
            FeedClass feedClass, Optional<FeedBook.Row> row, String where, List<Reading> tag) {
        return new Joining(feedClass, row).join(tag.isEmpty() ? List.of() : List.of(new Joining.Told(where, tag)));
    }

    private static LocalDate day(LabReport report) {
        return report.reported() != null
                ? report.reported()
                : report.sampled() != null ? report.sampled() : LocalDate.MIN;
    }

    private static String words(LabReport report) {
        var day = report.reported() != null ? report.reported() : report.sampled();
        return (day == null ? "report" : "report of " + DAY.format(day))
                + (report.laboratory().isBlank()
                        ? ""
                        : ", " + report.laboratory().strip());
    }
}
