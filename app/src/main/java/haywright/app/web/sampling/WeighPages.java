package haywright.app.web.sampling;

import haywright.app.report.ScoreSheet;
import haywright.app.report.WeighSheet;
import haywright.app.web.Ask;
import haywright.app.web.Form;
import haywright.app.web.Page;
import haywright.app.web.Routes;
import haywright.app.web.lots.TonsView;
import haywright.app.words.Show;
import haywright.outlook.LotTons;
import haywright.quantity.Quantity;
import haywright.quantity.Unit;
import haywright.ranch.Lot;
import haywright.ranch.LotWeighing;
import haywright.ranch.SheetCode;
import haywright.sampling.CountLine;
import haywright.sampling.stock.Stock;
import io.javalin.http.NotFoundResponse;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** What is weighed beside the cores, and lines that came back of a scale or a pen. */
public final class WeighPages {
    public static final Ask WEIGHED_ON = Ask.date("weighedOn", "Date weighed", "Such as Nov 25, 2026.");
    public static final Ask WEIGHTS =
            Ask.text("bales", "Bale weights, lb", "5 to 10, from all over the stack, with spaces between.");
    public static final Ask WHOLE =
            Ask.amount("whole", "Or the whole lot", Unit.TON, "Total of all load tickets, as fed.");

    private static final String WEIGH = "haywright/app/web/sampling/weigh.jte";

    private WeighPages() {}

    static void routes(Routes on) {
        on.get("take/lots/{lot}/weigh", page -> page.show(WEIGH, weigh(page, weighForm(page))));
        on.post("take/lots/{lot}/weigh", WeighPages::keepWeight);
        on.get("take/lots/{lot}/weigh/phone.html", page -> {
            var sheet = new WeighSheet(page.ranch(), baled(page), page.today());
            page.phoneFile("weighing-sheet-" + sheet.code(), sheet.phonePage());
        });
        on.get(
                "take/lots/{lot}/weigh/{size}",
                page -> SheetPages.print(
                        page,
                        size -> new WeighSheet(page.ranch(), baled(page), page.today()).paper(size),
                        "weighing-sheet"));
        on.post("take/lots/{lot}/weigh/{number}/delete", WeighPages::deleteWeight);
        ScorePages.routes(on);
    }

    /** @param kept what was weighed so far, oldest first, in words */
    public record WeighView(Lot lot, Form form, TonsView tons, List<String> kept, String action) {}

    private static Lot lot(Page page) {
        var lot = page.find(page.ranch().lots(), "lot");
        if (lot.stock() instanceof Stock.Standing) {
            throw new NotFoundResponse("It is not cut yet.");
        }
        return lot;
    }

    private static Lot baled(Page page) {
        var lot = lot(page);
        if (lot.stock().bales() == 0) {
            throw new NotFoundResponse("It is not baled.");
        }
        return lot;
    }

    private static String key(Lot lot) {
        return "take/lots/" + lot.id() + "/weigh";
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
                lot.weighings().stream().map(WeighPages::words).toList(),
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
        keep(page, form, lot, weighing.get());
    }

    private static void keep(Page page, Form form, Lot lot, LotWeighing weighing) {
        var tons = TonsView.of(lot.with(weighing));
        page.anew(); // it is put to what was weighed in another window
        page.save(
                form,
                "%s weighed: %s, %s".formatted(lot.name(), tons.tons(), tons.range()),
                ranch -> ranch.with(lot.with(weighing)),
                key(lot));
    }

    /** Whether text that came back is of a sheet for weights or scores, by the first letter of its code. */
    static boolean isLine(String text) {
        return text.strip().matches("(?is)[WC][A-Z0-9]{5}-.*");
    }

    /** A line that came back: the weights of a lot or the scores of a group. The same line twice changes nothing. */
    static void takeIn(Page page, Form form, String text) {
        var read = form.buildFrom(ReturnPages.LINE, () -> CountLine.read(text));
        var ranch = page.ranch();
        if (read.isPresent()) {
            var line = read.get();
            ReturnPages.dated(page, form, line.on());
            var lot = ranch.lots().values().stream()
                    .filter(l -> SheetCode.ofWeights(l).equals(line.sheet())
                            && l.stock().bales() > 0)
                    .findFirst();
            var group = ranch.groups().values().stream()
                    .filter(g -> SheetCode.ofScores(g).equals(line.sheet()))
                    .findFirst();
            if (lot.isPresent()) {
                var weighing = form.buildFrom(ReturnPages.LINE, () -> weighing(line, lot.get()));
                if (weighing.isPresent()) {
                    keep(page, form, lot.get(), weighing.get());
                    return;
                }
            } else if (group.isPresent()) {
                var scores = form.buildFrom(ReturnPages.LINE, () -> ScorePages.scores(line, group.get()));
                if (scores.isPresent()) {
                    ScorePages.keep(page, form, new ScoreSheet(ranch, group.get(), page.today()), scores.get());
                    return;
                }
            } else {
                form.refuse(
                        ReturnPages.LINE.name(),
                        line.sheet(),
                        "no lot or group of this ranch has a sheet with this code",
                        "Check whether it is another ranch’s.");
            }
        }
        page.reject(form, "haywright/app/web/sampling/take.jte", TakePages.list(page, form, null));
    }

    private static LotWeighing weighing(CountLine line, Lot lot) {
        var bales = line.numbers().stream()
                .map(pounds -> Quantity.of(pounds, Unit.POUND))
                .toList();
        return LotWeighing.ofBales(line.on(), bales, lot.stock().bales());
    }

    private static Optional<LotWeighing> readWeight(Form form, Lot lot, LocalDate today) {
        var on = form.past(WEIGHED_ON, "Enter the day.", today);
        if (on.isAfter(today)) {
            form.refuse(WEIGHED_ON.name(), Show.date(on), "a weighing can’t be in the future", "Enter the day.");
        }
        var whole = form.maybeQuantity(WHOLE);
        int bales = lot.stock().bales();
        if (bales < 2 || (whole != null && form.isEmpty(WEIGHTS))) {
            var all = whole != null ? whole : form.quantity(WHOLE, "Enter what the load tickets add up to.");
            return form.build(() -> LotWeighing.ofWhole(on, all));
        }
        if (whole != null) {
            form.refuse(
                    WHOLE.name(),
                    form.value(WHOLE),
                    "enter some bales or the whole lot, not both",
                    "Clear one of the two.");
        }
        var kept = Numbers.read(form, WEIGHTS, Unit.POUND, "Weigh five to ten.");
        unusual(form, lot, kept);
        return form.build(() -> LotWeighing.ofBales(on, kept, bales));
    }

    /** A slip of the finger among several weights is seen by how far it lies from what was thought. */
    private static void unusual(Form form, Lot lot, List<Quantity> kept) {
        double thought = LotTons.baleKg(lot).orElseThrow();
        for (var bale : kept) {
            if (bale.base() > 0 && (bale.base() > 2 * thought || bale.base() < thought / 2)) {
                form.doubt(
                        WEIGHTS,
                        "bales-unusual",
                        "%s is far from the %s entered for a bale."
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
            throw new NotFoundResponse("It is gone.");
        }
        var left = new ArrayList<>(lot.weighings());
        left.remove(number);
        page.save(
                page.posted(key(lot)),
                "Weighing deleted: " + lot.name(),
                ranch -> ranch.with(lot.with(left)),
                key(lot));
    }
}
