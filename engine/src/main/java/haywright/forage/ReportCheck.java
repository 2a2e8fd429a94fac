package haywright.forage;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/** The rules of consistency: what a report says against itself, against arithmetic and against the feed book. */
public final class ReportCheck {
    private ReportCheck() {}

    /**
     * @param book the row of the feed book that a figure far away is asked about; empty asks nothing
     * @param readings as typed, both columns where both are printed
     */
    public static CheckedReport check(FeedClass feedClass, Optional<FeedBook.Row> book, List<Reading> readings) {
        var sheet = Sheet.of(feedClass, book, readings);
        var issues = new ArrayList<>(sheet.issues());
        issues.sort(Comparator.comparing(Issue::level));
        return new CheckedReport(sheet.values(), issues);
    }
}
