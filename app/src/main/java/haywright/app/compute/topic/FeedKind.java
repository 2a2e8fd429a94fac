package haywright.app.compute.topic;

import haywright.app.compute.shape.Nearest;
import haywright.forage.Analyte;
import haywright.forage.FeedClass;
import haywright.forage.book.FeedBook;
import haywright.forage.lab.CheckedReport;
import haywright.forage.lab.Issue;
import haywright.forage.lab.Reading;
import haywright.forage.lab.ReportCheck;
import haywright.workings.Problem;
import haywright.workings.Refused;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/**
 * A feed as a topic names it: a class ({@code legume_hay}) or a feed of the book ({@code alfalfa_hay}).
 *
 * @param row what the book says of it
 * @param bookRow as a lot would name it: empty where it is just the class, or the usual feed of it
 */
record FeedKind(FeedClass feedClass, Optional<FeedBook.Row> row, String bookRow) {
    static FeedKind named(String field, String id) {
        var asked = words(id);
        var book = FeedBook.published();
        for (var feedClass : FeedClass.values()) {
            if (words(feedClass).equals(asked)) {
                return new FeedKind(feedClass, book.usual(feedClass), "");
            }
        }
        return book.feeds().stream()
                .filter(feed -> words(feed.name()).equals(asked))
                .findFirst()
                .map(feed -> new FeedKind(feed.feedClass(), Optional.of(feed.lead()), book.idOf(feed)))
                .orElseThrow(() -> {
                    var known = Stream.concat(
                                    Arrays.stream(FeedClass.values()).map(FeedKind::words),
                                    book.feeds().stream().map(feed -> words(feed.name())))
                            .toList();
                    return new Refused(
                            field,
                            id,
                            "neither a class of feed nor a feed of the book has this name",
                            Nearest.to(asked, known)
                                    .map(near -> "Did you mean " + near.replace(' ', '_') + "?")
                                    .orElse("Name its class, such as grass_hay."));
                });
    }

    private static String words(FeedClass feedClass) {
        return words(feedClass.id());
    }

    private static String words(String name) {
        return name.strip().toLowerCase(Locale.ROOT).replace('_', ' ').replace('-', ' ');
    }

    /**
     * What the rules of consistency make of the figures.
     *
     * @param field where an analyte stands in the request; null is the whole of the figures
     * @throws Refused when one cannot be: it would not count, and must not be dropped in silence
     */
    CheckedReport sound(Function<@Nullable Analyte, String> field, String whose, List<Reading> readings) {
        var checked = ReportCheck.check(feedClass, row, readings);
        Refused.unlessEmpty(checked.issues().stream()
                .filter(i -> i.level() == Issue.Level.E)
                .map(i -> new Problem(field.apply(i.field()), whose + i.words(), "this cannot be", i.fix()))
                .toList());
        return checked;
    }
}
