package haywright.forage.lab;

import haywright.forage.FeedClass;
import haywright.forage.book.FeedBook;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/** The rules of consistency: what a report says against itself, against arithmetic and against the feed book. */
public final class ReportCheck {
    private static final List<Rule> RULES = Stream.of(
                    BasisRules.ALL,
                    FractionRules.ALL,
                    CalculatedRules.ALL,
                    UnitRules.ALL,
                    DamageRules.ALL,
                    BookRules.ALL)
            .flatMap(List::stream)
            .toList();

    private ReportCheck() {}

    /**
     * @param book the row of the feed book that a figure far away is asked about; empty asks nothing
     * @param readings as typed, both columns where both are printed
     */
    public static CheckedReport check(FeedClass feedClass, Optional<FeedBook.Row> book, List<Reading> readings) {
        var sheet = Sheet.of(feedClass, book, readings);
        var issues = new ArrayList<>(sheet.issues());
        RULES.forEach(rule -> rule.look(sheet, issues));
        issues.sort(Comparator.comparing(Issue::level));
        return new CheckedReport(sheet.values(), issues);
    }
}
