package haywright.app.web.sampling;

import haywright.app.report.ScoreSheet;
import haywright.app.report.WeighSheet;
import haywright.app.web.Ask;
import haywright.app.web.Form;
import haywright.app.web.Page;
import haywright.app.web.Routes;
import haywright.app.web.lots.TonsView;
import haywright.app.words.Show;
import haywright.cattle.Group;
import haywright.quantity.Quantity;
import haywright.quantity.Unit;
import haywright.ranch.Lot;
import haywright.ranch.LotWeighing;
import haywright.sampling.ConditionScores;
import haywright.sampling.Stock;
import io.javalin.http.NotFoundResponse;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** What is weighed and scored beside the cores: some bales of a lot, some animals of a group. */
public final class CountPages {
    public static final Ask WEIGHED_ON = Ask.date("weighedOn", "Day they were weighed", "For example Nov 25, 2026.");
    public static final Ask WEIGHTS = Ask.text(
            "bales", "Each bale, in pounds", "Five to ten, from all over the stack, with blanks between them.");
    public static final Ask WHOLE =
            Ask.amount("whole", "Or all of the lot", Unit.TON, "What the tickets of all its loads add up to, as fed.");
    public static final Ask SCORES = Ask.text(
            "scores",
            "Each animal’s score, 1 to 9",
            "As they walk by, with blanks between them; do not pick out the thin ones.");

    private static final String WEIGH = "haywright/app/web/sampling/weigh.jte";
    private static final String SCORE = "haywright/app/web/sampling/scores.jte";
    private static final double CONFIDENCE = 90;

    private CountPages() {}

    static void routes(Routes on) {
        on.get("take/lots/{lot}/weigh", page -> page.show(WEIGH, weigh(page, weighForm(page))));
        on.post("take/lots/{lot}/weigh", CountPages::keepWeight);
        on.get(
                "take/lots/{lot}/weigh/{size}",
                page -> SheetPages.print(
                        page,
                        size -> new WeighSheet(page.ranch(), baled(page), page.today()).paper(size),
                        "weighing-sheet"));
        on.post("take/lots/{lot}/weigh/{number}/delete", CountPages::deleteWeight);
        on.get(
                "take/groups/{group}/scores",
                page -> page.show(SCORE, score(page, page.form(key(group(page)), Map::of))));
        on.post("take/groups/{group}/scores", CountPages::keepScore);
        on.get(
                "take/groups/{group}/scores/{size}",
                page -> SheetPages.print(page, scoreSheet(page)::paper, "score-sheet"));
    }

    /** @param kept what was weighed so far, oldest first, in words */
    public record WeighView(Lot lot, Form form, TonsView tons, List<String> kept, String action) {}

    public record ScoreView(ScoreSheet sheet, Form form, String action) {}

    private static Lot lot(Page page) {
        var lot = page.find(page.ranch().lots(), "lot");
        if (lot.stock() instanceof Stock.Standing) {
            throw new NotFoundResponse("It still stands in the field.");
        }
        return lot;
    }

    private static Lot baled(Page page) {
        var lot = lot(page);
        if (lot.stock().bales() == 0) {
            throw new NotFoundResponse("It does not lie in bales.");
        }
        return lot;
    }

    private static Group group(Page page) {
        return page.find(page.ranch().groups(), "group");
    }

    private static String key(Lot lot) {
        return "take/lots/" + lot.id() + "/weigh";
    }

    private static String key(Group group) {
        return "take/groups/" + group.id() + "/scores";
    }

    private static Form weighForm(Page page) {
        return page.form(key(lot(page)), () -> Map.of(WEIGHED_ON.name(), Show.date(page.today())));
    }

    private static WeighView weigh(Page page, Form form) {
        var lot = lot(page);
        return new WeighView(
                lot,
                form,
                TonsView.of(lot),
                lot.weighings().stream().map(CountPages::words).toList(),
                page.at(key(lot)));
    }

    private static String words(LotWeighing weighing) {
        var whole = weighing.whole();
        var what = whole != null
                ? "all of it, " + Show.quantity(whole)
                : String.join(
                        ", ", weighing.bales().stream().map(Show::quantity).toList());
        return Show.date(weighing.on()) + ": " + what;
    }

    private static void keepWeight(Page page) {
        var lot = lot(page);
        var form = page.posted(key(lot));
        var weighing = readWeight(form, lot, page.today());
        if (weighing.isEmpty()) {
            page.reject(form, WEIGH, weigh(page, form));
            return;
        }
        var tons = TonsView.of(lot.with(weighing.get()));
        page.save(
                form,
                "%s weighed: %s, %s".formatted(lot.name(), tons.tons(), tons.range()),
                ranch -> ranch.with(lot.with(weighing.get())),
                key(lot));
    }

    private static Optional<LotWeighing> readWeight(Form form, Lot lot, LocalDate today) {
        var on = form.date(WEIGHED_ON, "Which day was it?");
        if (on.isAfter(today)) {
            form.refuse(
                    WEIGHED_ON.name(), Show.date(on), "nothing is weighed before its day comes", "Which day was it?");
        }
        var whole = form.maybeQuantity(WHOLE);
        int bales = lot.stock().bales();
        if (bales < 2 || (whole != null && form.isEmpty(WEIGHTS))) {
            var all = whole != null ? whole : form.quantity(WHOLE, "What do the load tickets add up to?");
            return form.build(() -> LotWeighing.ofWhole(on, all));
        }
        if (whole != null) {
            form.refuse(
                    WHOLE.name(),
                    form.value(WHOLE),
                    "it is either some bales or all of the lot",
                    "Empty one of the two.");
        }
        var pounds = Numbers.read(form, WEIGHTS, "Weigh five to ten.");
        var kept = pounds.stream().map(w -> Quantity.of(w, Unit.POUND)).toList();
        unusual(form, lot, kept);
        return form.build(() -> LotWeighing.ofBales(on, kept, bales));
    }

    /** A slip of the finger among several weights is seen by how far it lies from what was thought. */
    private static void unusual(Form form, Lot lot, List<Quantity> kept) {
        double thought = lot.baleKg().orElseThrow();
        for (var bale : kept) {
            if (bale.base() > 0 && (bale.base() > 2 * thought || bale.base() < thought / 2)) {
                form.doubt(
                        WEIGHTS,
                        "bales-unusual",
                        "%s is far from the %s that a bale was taken to weigh."
                                .formatted(Show.quantity(bale), Show.withUnit(Show.poundsNumber(thought), Unit.POUND)));
                return;
            }
        }
    }

    private static void deleteWeight(Page page) {
        var lot = lot(page);
        int number;
        try {
            number = Integer.parseInt(page.http().pathParam("number"));
        } catch (NumberFormatException e) {
            throw new NotFoundResponse();
        }
        if (number < 0 || number >= lot.weighings().size()) {
            throw new NotFoundResponse("It is not there any more.");
        }
        var left = new ArrayList<>(lot.weighings());
        left.remove(number);
        page.save(
                page.posted(key(lot)),
                "Weighing taken away: " + lot.name(),
                ranch -> ranch.with(lot.with(left)),
                key(lot));
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
        var found = scores.get();
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
}
