package haywright.app.web.winter;

import haywright.app.report.picture.LotLines;
import haywright.app.web.Page;
import haywright.app.web.Routes;
import haywright.app.words.EatWords;
import haywright.season.kept.KeptBook;
import haywright.season.kept.WinterStory;
import io.javalin.http.NotFoundResponse;
import java.util.List;

/** What happened in one winter of the record, and who eats what as a file. */
public final class StoryPages {
    private StoryPages() {}

    static void routes(Routes on) {
        on.get("winter/of/{winter}", StoryPages::show);
        on.get("winter/who-eats-what.csv", StoryPages::csv);
    }

    /** @param draws how often this winter was played, {@code lasted} of which feed lasted in */
    public record View(KeptBook book, WinterStory story, LotLines lines, long draws, long lasted) {}

    private static void show(Page page) {
        var book = WinterPages.book(page);
        var asked = page.http().pathParam("winter");
        var story = book.winters().stream()
                .filter(winter -> winter.winter().equals(asked))
                .findFirst()
                .orElseThrow(() -> new NotFoundResponse("That winter is not in this book."));
        List<KeptBook.Line> played = book.lines().stream()
                .filter(line -> line.winter().equals(asked))
                .toList();
        page.show(
                "haywright/app/web/winter/story.jte",
                new View(
                        book,
                        story,
                        new LotLines(story, book.begins()),
                        played.size(),
                        played.stream().filter(KeptBook.Line::lasted).count()));
    }

    private static void csv(Page page) {
        page.http()
                .contentType("text/csv; charset=utf-8")
                .header("Content-Disposition", "attachment; filename=\"who-eats-what.csv\"")
                .result(EatWords.csv(WinterPages.book(page).plan()));
    }
}
