package haywright.app.web.sampling;

import haywright.app.report.ScoreSheet;
import haywright.app.web.Ask;
import haywright.app.web.Form;
import haywright.app.web.Page;
import haywright.app.web.Routes;
import haywright.app.words.Show;
import haywright.cattle.herd.ConditionScores;
import haywright.cattle.herd.Group;
import haywright.sampling.CountLine;
import java.util.Map;

/** Condition scores of some animals of a group. */
public final class ScorePages {
    public static final Ask SCORES = Ask.text(
            "scores",
            "Each animal’s score, 1 to 9",
            "As they walk by, with spaces between; don’t pick out the thin ones.");

    private static final String SCORE = "haywright/app/web/sampling/scores.jte";
    private static final double CONFIDENCE = 90;

    private ScorePages() {}

    static void routes(Routes on) {
        on.get(
                "take/groups/{group}/scores",
                page -> page.show(SCORE, score(page, page.form(key(group(page)), Map::of))));
        on.post("take/groups/{group}/scores", ScorePages::keepScore);
        on.get("take/groups/{group}/scores/phone.html", page -> {
            var sheet = scoreSheet(page);
            page.phoneFile("score-sheet-" + sheet.code(), sheet.phonePage());
        });
        on.get(
                "take/groups/{group}/scores/{size}",
                page -> SheetPages.print(page, scoreSheet(page)::paper, "score-sheet"));
    }

    public record ScoreView(ScoreSheet sheet, Form form, String action) {}

    private static Group group(Page page) {
        return page.find(page.ranch().groups(), "group");
    }

    private static String key(Group group) {
        return "take/groups/" + group.id() + "/scores";
    }

    private static ScoreView score(Page page, Form form) {
        return new ScoreView(scoreSheet(page), form, page.at(key(group(page))));
    }

    private static ScoreSheet scoreSheet(Page page) {
        return new ScoreSheet(page.ranch(), group(page), page.today());
    }

    private static void keepScore(Page page) {
        var sheet = scoreSheet(page);
        var group = sheet.group();
        var form = page.posted(key(group));
        var typed = Numbers.read(form, SCORES, "Score %d.".formatted(ConditionScores.toScore(group.head())));
        var scores = form.build(() -> new ConditionScores(typed, group.head(), CONFIDENCE));
        if (scores.isEmpty()) {
            page.reject(form, SCORE, score(page, form));
            return;
        }
        keep(page, form, sheet, scores.get());
    }

    static void keep(Page page, Form form, ScoreSheet sheet, ConditionScores found) {
        var group = sheet.group();
        double mean = Math.rint(found.mean() * 10) / 10;
        page.save(
                form,
                "%s scored: %s ± %s; %d of %d below %s"
                        .formatted(
                                group.name(),
                                Show.number(mean, 1),
                                Show.significant(found.halfWidth(), 1),
                                found.below(sheet.thinBelow()),
                                found.scores().size(),
                                Show.significant(sheet.thinBelow(), 2)),
                ranch -> ranch.with(group.scored(mean, Group.Scores.of(mean, found.spread()))),
                key(group));
    }

    static ConditionScores scores(CountLine line, Group group) {
        return new ConditionScores(
                line.numbers().stream()
                        .map(tenths -> (double) tenths / ScoreSheet.TENTHS)
                        .toList(),
                group.head(),
                CONFIDENCE);
    }
}
