package haywright.app.web.winter;

import haywright.app.document.BookDocument;
import haywright.app.report.Paper;
import haywright.app.report.WinterPaper;
import haywright.app.report.picture.StackLine;
import haywright.app.store.Edit;
import haywright.app.store.Trouble;
import haywright.app.web.KeptBooks;
import haywright.app.web.Page;
import haywright.app.web.Routes;
import haywright.app.web.bench.BenchView;
import haywright.app.words.Show;
import haywright.app.words.WeekWords;
import haywright.feeding.hay.ShortOfHay;
import haywright.season.given.Facts;
import haywright.season.kept.KeptBook;
import haywright.season.kept.KeptPlan;
import haywright.workings.Problem;
import haywright.workings.Refused;
import io.javalin.http.NotFoundResponse;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.Optional;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/** Whether the feed lasts to grass. The page answers at once; winters come in as they are played. */
public final class WinterPages {
    private static final Books BOOKS = new Books();
    private static final int MOST_CHANGES = 5;
    /** What was typed of a week stands on its own page. */
    private static final Pattern WEEK = Pattern.compile("^(Week entered, [^:]*): .*", Pattern.DOTALL);

    /** A book begins with a week's feeding; after that the stacks are others. */
    private static final int GOOD_DAYS = 7;

    private WinterPages() {}

    public static void routes(Routes on) {
        on.get("winter", WinterPages::show);
        on.post("winter", WinterPages::again);
        on.post("winter/stop", WinterPages::stop);
        on.get("winter/page/{size}", WinterPages::print);
        new WeekPages(BOOKS).routes(on);
        StoryPages.routes(on);
        on.get("winter/choices", page -> page.show("haywright/app/web/winter/choices.jte", book(page)));
        on.get("winter/eats", page -> page.show("haywright/app/web/winter/eats.jte", book(page)));
        on.get("winter/figures", page -> page.show("haywright/app/web/winter/figures.jte", book(page)));
        new BothPages().routes(on);
    }

    /**
     * @param book null while it is made
     * @param plan null until there is one
     * @param stack null until a few winters are played
     * @param refused why there can be no book of this ranch yet
     * @param waits what it waits for, in a sentence; empty where it is begun
     * @param unkept why it could not be kept; empty where nothing stands in the way
     * @param age how it stands to the ranch as it is now
     * @param since what became of the ranch since the book before this one; null where there is none
     * @param isDamaged whether one kept later can't be read
     * @param otherDay why the bench names another day; empty where it names none
     * @param grass the day to which it plans; today where there is no plan yet
     */
    public record View(
            @Nullable KeptBook book,
            @Nullable KeptPlan plan,
            @Nullable StackLine stack,
            List<Problem> refused,
            boolean isMaking,
            String waits,
            boolean failed,
            String unkept,
            Age age,
            @Nullable Since since,
            boolean isDamaged,
            int done,
            int of,
            boolean isStopping,
            String otherDay,
            LocalDate grass) {
        /** Whether there is a reason to make it again. */
        public boolean isAskedAgain() {
            return failed || book != null && (age.isOlder || age.days > 0 || !book.isWhole());
        }
    }

    /**
     * @param isOlder whether something that moves it was changed after it was begun
     * @param changes what, in the words of the history, newest first
     * @param days since the day it was made for, where that is a week or more; else 0
     */
    public record Age(boolean isOlder, List<String> changes, long days) {}

    /**
     * @param moved what is another than in the book before; empty while this one is made
     * @param why this book answers differently than that one
     * @param changes that moved it, in the words of the history
     */
    public record Since(KeptBook before, List<WeekWords.Moved> moved, List<String> why, List<String> changes) {}

    private static void show(Page page) {
        page.show("haywright/app/web/winter/winter.jte", view(page));
    }

    static View view(Page page) {
        var damaged = KeptBooks.isDamaged(page.desk(), page.ranch());
        var making = BOOKS.of(page);
        var kept = KeptBooks.newest(page.desk(), page.ranch());
        if (making.isEmpty() && kept.isPresent()) {
            return kept(kept.get(), page, damaged);
        }
        var made = making.orElseGet(() -> BOOKS.madeOrBegun(page));
        made.keepAgain();
        return made(made, page, damaged);
    }

    private static View made(Making making, Page page, boolean damaged) {
        var now = making.now();
        var book = now.book();
        var grass = now.grass();
        return new View(
                book,
                book == null ? now.plan() : book.plan(),
                grass == null
                        ? null
                        : StackLine.of(now.begins(), now.lines(), grass).orElse(null),
                now.refused(),
                now.isMaking(),
                waits(making),
                now.failed(),
                unkept(now),
                age(page, making.hash().equals(KeptBooks.hash(page.ranch())), making.rev(), page.today()),
                since(page, making.hash(), making.rev(), book),
                damaged,
                now.done(),
                now.of(),
                now.isStopping(),
                book == null ? "" : otherDay(page, book),
                grass == null ? page.today() : grass);
    }

    private static String waits(Making making) {
        return BOOKS.before(making)
                .map(other -> other.ranch().id().equals(making.ranch().id())
                        ? "The book of this ranch as it was before is being stopped. This one comes next."
                        : "The winter book of %s is being made. This one waits for it."
                                .formatted(other.ranch().name()))
                .orElse("");
    }

    private static String unkept(Making.Now now) {
        var why = now.unkept();
        return why == null || now.book() == null
                ? ""
                : Trouble.of(why).map(Trouble::cause).orElse("What failed is written in errors.log.");
    }

    private static View kept(KeptBooks.Kept kept, Page page, boolean damaged) {
        var book = kept.book();
        return new View(
                book,
                book.plan(),
                StackLine.of(book).orElse(null),
                List.of(),
                false,
                "",
                false,
                "",
                age(page, kept.isCurrent(), kept.rev(), book.day()),
                since(page, kept.hash(), kept.rev(), book),
                damaged,
                book.draws(),
                book.draws(),
                false,
                otherDay(page, book),
                book.grass());
    }

    private static Age age(Page page, boolean isCurrent, long rev, LocalDate day) {
        long days = ChronoUnit.DAYS.between(day, page.today());
        return new Age(!isCurrent, isCurrent ? List.of() : changes(page, rev), days >= GOOD_DAYS ? days : 0);
    }

    private static List<String> changes(Page page, long since) {
        return words(moving(page, since, Long.MAX_VALUE));
    }

    private static List<Edit> moving(Page page, long after, long to) {
        return page.desk().store().ranches().history(page.ranch().id()).stream()
                .filter(edit -> edit.rev() > after
                        && edit.rev() <= to
                        && (edit.paths().isEmpty() || edit.paths().stream().anyMatch(BookDocument::moves)))
                .toList();
    }

    private static List<String> words(List<Edit> edits) {
        return edits.stream()
                .map(edit -> WEEK.matcher(edit.words()).replaceFirst("$1"))
                .distinct()
                .limit(MOST_CHANGES)
                .toList();
    }

    /** Bench, letter and ranch page count what is fed now and nothing bought. */
    private static String otherDay(Page page, KeptBook book) {
        return book.hayShort().isEmpty()
                ? ""
                : ShortOfHay.of(page.rations(), ShortOfHay.Asked.NOTHING)
                        .flatMap(hay -> hay.gone().map(gone -> otherDay(hay, gone)))
                        .orElse("");
    }

    private static String otherDay(ShortOfHay hay, LocalDate gone) {
        return "The rations page says %s: fed %s, with no more hay bought. The winter book counts buying feed and saving %s days of hay for storms, so its date is different."
                .formatted(
                        Show.day(gone),
                        hay.isFedNowSaid() ? "the way you feed now" : "by today’s rations",
                        Show.number(Facts.value("storm_days"), 0));
    }

    private static @Nullable Since since(Page page, String hash, long rev, @Nullable KeptBook now) {
        var before = KeptBooks.before(page.desk(), page.ranch(), hash)
                .filter(one -> one.rev() < rev)
                .orElse(null);
        if (before == null) {
            return null;
        }
        var edits = moving(page, before.rev(), rev);
        var weeks = page.ranch().weeks().values().stream()
                .filter(week -> edits.stream().anyMatch(edit -> edit.paths().contains("weeks/" + week.id())))
                .toList();
        return new Since(
                before.book(),
                now == null
                        ? List.of()
                        : Stream.concat(
                                        WeekWords.fed(before.book(), weeks, page.ranch()).stream(),
                                        WeekWords.moved(before.book(), now).stream())
                                .toList(),
                WeekWords.why(before.book(), weeks, page.ranch(), page.today()),
                words(edits));
    }

    /** Of the newest book there is: the paper carries its day. */
    private static void print(Page page) {
        var size = Paper.Size.of(page.http().pathParam("size")).orElseThrow(NotFoundResponse::new);
        var paper = new WinterPaper(page.ranch(), book(page), thisWeek(page));
        page.http()
                .contentType("application/pdf")
                .header("Content-Disposition", "inline; filename=\"%s\"".formatted(paper.fileName(size)))
                .result(paper.paper(size).pdf());
    }

    /** The book that the page shows; a page that does not exist where there is none yet. */
    static KeptBook book(Page page) {
        return book(view(page));
    }

    static KeptBook book(View view) {
        return Optional.ofNullable(view.book())
                .orElseThrow(() -> new NotFoundResponse("There is no winter book of this ranch yet."));
    }

    /** What each group is to be fed now, as bench and letter have it: {@code Mature cows: $1.91: 9.2 lb Pivot hay; enough 8 times in 10}. */
    public static List<String> thisWeek(Page page) {
        return page.ranch().groups().values().stream()
                .map(group -> BenchView.row(page.offers(group)))
                .map(row ->
                        row.group().name() + ": " + row.says() + (row.holds().isEmpty() ? "" : "; " + row.holds()))
                .toList();
    }

    /** Whether an earlier page had every group's ration worked out: a page that is not of them waits for none. */
    public static boolean isAtHand(Page page) {
        return page.ranch().groups().values().stream()
                .allMatch(group -> page.offersAtHand(group).isPresent());
    }

    /** {@code $1,062 a day for all}: cents as they stand in the lines times head; empty where a group has no ration. */
    public static String costADay(Page page) {
        double dollars = 0;
        try {
            for (var group : page.ranch().groups().values()) {
                var sure = page.offers(group).sure();
                if (sure.isEmpty()) {
                    return "";
                }
                dollars += group.head() * sure.get().cents();
            }
        } catch (Refused e) {
            return ""; // the line of the group says why
        }
        return dollars == 0 ? "" : "$%s a day for all.".formatted(Show.number(dollars, 0));
    }

    private static void again(Page page) {
        BOOKS.begin(page);
        Page.leave(page.http(), page.at("winter"));
    }

    private static void stop(Page page) {
        BOOKS.of(page).ifPresent(Making::stop);
        Page.leave(page.http(), page.at("winter"));
    }
}
