package haywright.app.web.sampling;

import haywright.app.web.Ask;
import haywright.app.web.Form;
import haywright.app.web.Page;
import haywright.app.web.Routes;
import haywright.app.words.Show;
import haywright.cattle.AnimalClass;
import haywright.cattle.Group;
import haywright.quantity.Quantity;
import haywright.quantity.Unit;
import haywright.ranch.Lot;
import haywright.sampling.ConditionScores;
import haywright.sampling.RoundPyramid;
import haywright.sampling.Stock;
import haywright.sampling.Weighing;
import io.javalin.http.NotFoundResponse;
import java.time.LocalDate;
import java.util.Map;

/** What is weighed and scored beside the cores: some bales of a lot, some animals of a group. */
public final class CountPages {
    public static final Ask WEIGHTS = Ask.text(
            "kilograms", "Each bale, in pounds", "Five to ten, from all over the stack, with blanks between them.");
    public static final Ask SCORES = Ask.text(
            "scores",
            "Each animal’s score, 1 to 9",
            "As they walk by, with blanks between them; do not pick out the thin ones.");

    private static final String WEIGH = "haywright/app/web/sampling/weigh.jte";
    private static final String SCORE = "haywright/app/web/sampling/scores.jte";
    private static final double CONFIDENCE = 90;

    private CountPages() {}

    static void routes(Routes on) {
        on.get("take/lots/{lot}/weigh", page -> page.show(WEIGH, weigh(page, page.form(key(lot(page)), Map::of))));
        on.post("take/lots/{lot}/weigh", CountPages::keepWeight);
        on.get(
                "take/groups/{group}/scores",
                page -> page.show(SCORE, score(page, page.form(key(group(page)), Map::of))));
        on.post("take/groups/{group}/scores", CountPages::keepScore);
    }

    /** @param now what the lot is taken to weigh a bale, in words */
    public record WeighView(Lot lot, Form form, String now, String action) {}

    /** @param when to score, by the calving dates; empty where none are known */
    public record ScoreView(Group group, Form form, int toScore, String when, double thinBelow, String action) {}

    static boolean canBeWeighed(Lot lot) {
        return lot.stock() instanceof Stock.Bales || lot.stock() instanceof RoundPyramid;
    }

    private static Lot lot(Page page) {
        var lot = page.find(page.ranch().lots(), "lot");
        if (!canBeWeighed(lot)) {
            throw new NotFoundResponse("It is not counted in bales.");
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

    private static WeighView weigh(Page page, Form form) {
        var lot = lot(page);
        return new WeighView(lot, form, Show.quantity(weight(lot.stock())), page.at(key(lot)));
    }

    private static Quantity weight(Stock stock) {
        return stock instanceof Stock.Bales b ? b.baleWeight() : ((RoundPyramid) stock).baleWeight();
    }

    private static int count(Stock stock) {
        return stock instanceof Stock.Bales b ? b.count() : ((RoundPyramid) stock).count();
    }

    private static Stock with(Stock stock, Quantity weight) {
        return stock instanceof Stock.Bales b
                ? new Stock.Bales(b.bale(), b.count(), weight, b.rows(), b.columns(), b.tiers())
                : new RoundPyramid(
                        count(stock),
                        weight,
                        ((RoundPyramid) stock).base(),
                        ((RoundPyramid) stock).tiers(),
                        ((RoundPyramid) stock).length());
    }

    private static void keepWeight(Page page) {
        var lot = lot(page);
        var form = page.posted(key(lot));
        var pounds = Numbers.read(form, WEIGHTS, "Weigh five to ten.");
        var weighed = form.build(
                () -> new Weighing(pounds.stream().map(Unit.POUND::toBase).toList(), count(lot.stock()), CONFIDENCE));
        if (weighed.isEmpty()) {
            page.reject(form, WEIGH, weigh(page, form));
            return;
        }
        var range = weighed.get().range();
        var mean = Quantity.of(Math.rint(Unit.POUND.fromBase(weighed.get().meanKg())), Unit.POUND);
        page.save(
                form,
                "%s weighed: %s a bale, %s to %s, 9 times in 10"
                        .formatted(
                                lot.name(),
                                Show.quantity(mean),
                                Show.tonsNumber(range.lowKg()),
                                Show.tons(range.highKg())),
                ranch -> ranch.with(with(lot, mean)),
                key(lot));
    }

    private static Lot with(Lot lot, Quantity weight) {
        return new Lot(
                lot.id(),
                lot.name(),
                lot.feedClass(),
                lot.bookRow(),
                lot.where(),
                lot.cutting(),
                lot.madeOn(),
                lot.storage(),
                with(lot.stock(), weight),
                lot.replacementPrice(),
                lot.nitrateRisk(),
                lot.notes());
    }

    private static ScoreView score(Page page, Form form) {
        var group = group(page);
        return new ScoreView(
                group, form, ConditionScores.toScore(group.head()), when(group), thinBelow(group), page.at(key(group)));
    }

    /** The first calving less 90 to 60 days: late enough to tell, early enough to mend. */
    private static String when(Group group) {
        return group.calving().stream()
                .map(Group.CalvingWeek::begins)
                .min(LocalDate::compareTo)
                .map(first ->
                        "Best between %s and %s, 90 to 60 days before the first calf: there is still time to feed the thin ones."
                                .formatted(Show.date(first.minusDays(90)), Show.date(first.minusDays(60))))
                .orElse("");
    }

    /** Cows are wanted at 5 and heifers at 6 when they calve: common practice, and the sort is the rancher's. */
    private static double thinBelow(Group group) {
        return group.animals() == AnimalClass.FIRST_CALF_HEIFER || group.animals() == AnimalClass.BRED_HEIFER ? 6 : 5;
    }

    private static void keepScore(Page page) {
        var group = group(page);
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
                                found.below(thinBelow(group)),
                                found.scores().size(),
                                Show.significant(thinBelow(group), 2)),
                ranch -> ranch.with(with(group, mean)),
                key(group));
    }

    private static Group with(Group g, double score) {
        return new Group(
                g.id(),
                g.name(),
                g.animals(),
                g.head(),
                g.weight(),
                g.shrunk(),
                g.weighedOn(),
                g.matureWeight(),
                score,
                g.breed(),
                g.calving(),
                g.calfBirthWeight(),
                g.peakMilk(),
                g.weaning(),
                g.gain(),
                g.turnout());
    }
}
