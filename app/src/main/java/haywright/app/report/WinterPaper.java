package haywright.app.report;

import haywright.app.report.picture.StackLine;
import haywright.app.report.picture.Svg;
import haywright.app.words.DoNow;
import haywright.app.words.Measures;
import haywright.app.words.Show;
import haywright.app.words.WinterWords;
import haywright.ranch.Ranch;
import haywright.season.WinterBook;
import haywright.season.kept.KeptBook;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * The winter on one page: what to buy and when, in how many winters of 20 the feed lasts, and the days to look again with
 * what should be left on each.
 *
 * @param rations what each group is fed now, a line each
 */
public record WinterPaper(Ranch ranch, KeptBook book, List<String> rations) {
    private static final double LARGEST_POINTS = 12.5;
    private static final double SMALLEST_POINTS = 7.5;
    private static final int MOST_CHOICES = 3;
    private static final int DOTS_WIDE = 62;
    private static final int LINE_WIDE = 90;

    /**
     * A day on which to look again.
     *
     * @param left tons of hay and silage that should be there; empty on a day that is for a decision alone
     */
    public record Again(LocalDate day, String what, String left) {}

    public String headline() {
        return WinterWords.headline(book);
    }

    public String shortIn() {
        return WinterWords.shortIn(book);
    }

    public String costs() {
        return WinterWords.costs(book);
    }

    public String day() {
        return Show.date(book.day());
    }

    public boolean invented() {
        return ranch.settings().invented();
    }

    /** What to do, as orders: a test that may make purchases needless comes first. */
    public List<DoNow> orders() {
        return DoNow.of(book.plan(), book);
    }

    /** Lots that wait for a test. */
    public List<String> notCounted() {
        return Stream.of(WinterWords.leftOut(book.plan()))
                .filter(line -> !line.isEmpty())
                .toList();
    }

    /** Empty where no winter is on record. */
    public Optional<String> dots() {
        return Optional.ofNullable(book.lasts())
                .map(lasts -> Svg.onPaper(StackLine.dots(WinterBook.OF, lasts), DOTS_WIDE));
    }

    public Optional<String> line() {
        return StackLine.of(book).map(line -> Svg.onPaper(line.svg(), LINE_WIDE));
    }

    /** The first day of each month to turnout, and the days by which something worth doing is to be decided, in order. */
    public List<Again> again() {
        var all = new ArrayList<Again>();
        var line = StackLine.of(book);
        for (var day = book.day().withDayOfMonth(1).plusMonths(1);
                day.isBefore(book.grass());
                day = day.plusMonths(1)) {
            var on = day;
            all.add(new Again(
                    day,
                    "Count the stacks, score the cows",
                    line.map(of -> of.left(on)).map(WinterPaper::left).orElse("")));
        }
        book.alternatives().stream()
                .filter(one -> one.net() > 0 && !one.decideBy().isBefore(book.day()))
                .limit(MOST_CHOICES)
                .forEach(one -> all.add(new Again(
                        one.decideBy(),
                        "Decide: %s (%s a winter)".formatted(Measures.say(one.what()), WinterWords.worth(one)),
                        "")));
        all.sort(java.util.Comparator.comparing(Again::day));
        return all;
    }

    private static String left(StackLine.Left left) {
        return "%s (%s to %s)"
                .formatted(Show.number(left.middle(), 0), Show.number(left.low(), 0), Show.number(left.high(), 0));
    }

    public String fileName(Paper.Size size) {
        return "winter-%s-%s-%s.pdf".formatted(FeedLetter.plain(ranch.name()), book.day(), size.id());
    }

    /** In smaller print where it would not fit on one page. */
    public Paper paper(Paper.Size size) {
        return Paper.onOnePage(LARGEST_POINTS, SMALLEST_POINTS, points -> paper(size, points));
    }

    private Paper paper(Paper.Size size, double points) {
        return Paper.of(
                "Winter page: " + ranch.name(),
                "What to buy and when, how the feed lasts in 20 winters, and when to look again",
                "haywright/app/report/winterPaper.jte",
                this,
                size,
                points,
                book.day());
    }
}
