package haywright.app.web.lots;

import haywright.app.report.picture.LotsPicture;
import haywright.app.web.Form;
import haywright.app.web.Option;
import haywright.app.web.Page;
import haywright.app.web.Routes;
import haywright.app.words.MassWords;
import haywright.app.words.Show;
import haywright.forage.Analyte;
import haywright.outlook.LotSubject;
import haywright.outlook.LotTons;
import haywright.outlook.TestedFor;
import haywright.outlook.UsualPrices;
import haywright.outlook.WorthTesting;
import haywright.outlook.Yard;
import haywright.ranch.Lot;
import haywright.sampling.LotCheck;
import io.javalin.http.NotFoundResponse;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/** The lots of a ranch: the list, and the form of one. */
public final class LotPages {
    private static final String FORM = "haywright/app/web/lots/lot.jte";

    private LotPages() {}

    public static void routes(Routes on) {
        on.get("lots", page -> page.show("haywright/app/web/lots/lots.jte", list(page)));
        LotTable.routes(on);
        on.get("lots/new", page -> page.show("haywright/app/web/lots/kinds.jte", StockKind.values()));
        on.get("lots/new/{kind}", LotPages::add);
        on.post("lots/new/{kind}", page -> save(page, null));
        on.get("lots/{lot}", page -> change(page, StockKind.of(lot(page).stock())));
        on.get("lots/{lot}/as/{kind}", page -> change(page, kind(page.http().pathParam("kind"))));
        on.post("lots/{lot}/as/{kind}", page -> save(page, lot(page)));
        on.get(
                "lots/{lot}/worth",
                page -> page.show("haywright/app/web/lots/worth.jte", WorthView.of(page, lot(page))));
        on.get("lots/{lot}/delete", page -> page.show("haywright/app/web/lots/deleteLot.jte", lot(page)));
        on.post("lots/{lot}/delete", LotPages::delete);
    }

    /**
     * @param total of all lots together, in words; empty when there are none
     * @param picture empty when there are none
     */
    public record ListView(List<Row> rows, String total, Optional<LotsPicture> picture, List<FeedPages.Row> feeds) {}

    /**
     * @param feed of the feed book that its lot names; empty where it is the usual one of its kind
     * @param made cutting and day, in words; may be empty
     * @param amount what was counted or measured, in words
     * @param price what a ton costs to replace, with its dry matter
     * @param isUsualPrice whether nobody said it, and the usual one of its kind is taken
     * @param tested in words
     * @param split what to part it by, with what it costs not to; empty where it is one lot as far as known
     */
    public record Row(
            Lot lot,
            String feed,
            String made,
            String amount,
            String price,
            boolean isUsualPrice,
            TonsView tons,
            String tested,
            State state,
            WorthTesting worth,
            List<LotCheck.Warning> split) {}

    /** Whether a lot is tested: drawn as well as written. */
    public enum State {
        TESTED,
        UNTESTED,
        DANGER
    }

    /**
     * @param lot null for a new one
     * @param tons of the lot as it is kept; null for a new one
     * @param split as the lot is kept
     */
    public record FormView(
            Form form,
            StockKind kind,
            @Nullable Lot lot,
            @Nullable TonsView tons,
            List<LotCheck.Warning> split,
            String action,
            List<Option> classes,
            List<Option> storages,
            List<Option> fields) {}

    private static ListView list(Page page) {
        var ranch = page.ranch();
        var yard = page.yard();
        var rows =
                ranch.lots().values().stream().map(lot -> row(page, yard, lot)).toList();
        return new ListView(
                rows,
                rows.isEmpty() ? "" : MassWords.onHand(ranch),
                rows.isEmpty()
                        ? Optional.empty()
                        : Optional.of(new LotsPicture(
                                rows.stream().map(row -> drawn(yard, row)).toList())),
                ranch.feedsForSale().values().stream()
                        .map(feed -> FeedPages.row(yard, feed))
                        .toList());
    }

    private static LotsPicture.One drawn(Yard yard, Row row) {
        var used = LotTons.of(row.lot()).used();
        return new LotsPicture.One(
                row.lot().name(),
                switch (row.state()) {
                    case TESTED -> LotsPicture.Fill.TESTED;
                    case UNTESTED -> LotsPicture.Fill.UNTESTED;
                    case DANGER -> LotsPicture.Fill.DANGER;
                },
                row.tested(),
                used == null ? OptionalDouble.empty() : OptionalDouble.of(used.kg()),
                used == null ? 0 : used.range().lowKg(),
                used == null ? 0 : used.range().highKg(),
                yard.composition(row.lot()).composition().value(Analyte.CP));
    }

    private static Row row(Page page, Yard yard, Lot lot) {
        var made = new ArrayList<String>();
        if (!lot.cutting().isBlank()) {
            made.add(lot.cutting() + " cutting");
        }
        if (lot.madeOn() != null) {
            made.add("put up " + Show.date(lot.madeOn()));
        }
        var tested = TestedFor.of(page.ranch(), lot);
        var worth = WorthTesting.of(yard, lot);
        var state = worth.verdict() == WorthTesting.Verdict.DANGER
                ? State.DANGER
                : tested.isForFeeding() ? State.TESTED : State.UNTESTED;
        return new Row(
                lot,
                FeedPick.words(lot.bookRow()),
                String.join(", ", made),
                StockForm.amount(page.ranch(), lot.stock()),
                Show.price(UsualPrices.of(lot), yard.dryMatter(lot)),
                lot.replacementPrice() == null,
                TonsView.of(lot),
                tested(state, tested),
                state,
                worth,
                split(lot));
    }

    private static List<LotCheck.Warning> split(Lot lot) {
        var subject = LotSubject.of(lot);
        return LotCheck.of(subject.material(), subject.facts()).warnings();
    }

    private static String tested(State state, TestedFor tested) {
        return state == State.DANGER ? "Not tested for nitrate: don’t feed it yet" : tested.words();
    }

    private static void add(Page page) {
        var kind = kind(page.http().pathParam("kind"));
        page.show(FORM, view(page, page.form(path(kind, null), () -> begun(page, kind)), kind, null));
    }

    /** After the lot that the address names, or with what is usual. */
    private static Map<String, String> begun(Page page, StockKind kind) {
        var like = page.http().queryParam("like");
        return page.ranch().lots().values().stream()
                .filter(lot -> lot.id().toString().equals(like) && StockKind.of(lot.stock()) == kind)
                .findFirst()
                .map(LotForm::like)
                .orElseGet(() -> LotForm.usual(kind, page.ranch()));
    }

    private static void change(Page page, StockKind kind) {
        var lot = lot(page);
        page.show(FORM, view(page, page.form(path(kind, lot), () -> LotForm.known(lot)), kind, lot));
    }

    /** @param before null for a new one */
    private static void save(Page page, @Nullable Lot before) {
        var kind = kind(page.http().pathParam("kind"));
        var id = before == null ? UUID.randomUUID() : before.id();
        var form = page.posted(path(kind, before));
        if (before != null && StockKind.of(before.stock()) != kind) {
            form.isOneAnswer(); // boxes of two kinds of storage make no lot
        }
        var lot = LotForm.read(form, kind, id, before, page.ranch(), page.today());
        if (lot.isEmpty()) {
            page.reject(form, FORM, view(page, form, kind, before));
            return;
        }
        var words =
                (before == null ? "Lot added: " : "Lot changed: ") + lot.get().name();
        var another = "lots/new/" + Form.id(kind) + "?like=" + id;
        page.save(form, words, ranch -> ranch.with(lot.get()), page.wantsMore() ? another : "lots");
    }

    private static void delete(Page page) {
        var lot = lot(page);
        var form = page.posted(path(StockKind.of(lot.stock()), lot));
        page.save(form, "Lot deleted: " + lot.name(), ranch -> ranch.withoutLot(lot.id()), "lots");
    }

    private static Lot lot(Page page) {
        return page.find(page.ranch().lots(), "lot");
    }

    /** The path of a lot's form; what is left unfinished is kept under it. */
    private static String path(StockKind kind, @Nullable Lot lot) {
        return lot == null ? "lots/new/" + Form.id(kind) : "lots/" + lot.id() + "/as/" + Form.id(kind);
    }

    private static StockKind kind(String asked) {
        try {
            return StockKind.valueOf(asked.toUpperCase(Locale.ROOT));
        } catch (IllegalArgumentException e) {
            throw new NotFoundResponse();
        }
    }

    private static FormView view(Page page, Form form, StockKind kind, @Nullable Lot lot) {
        return new FormView(
                form,
                kind,
                lot,
                lot == null ? null : TonsView.of(lot),
                lot == null ? List.of() : split(lot),
                page.at(path(kind, lot)),
                FeedNames.kinds(),
                Option.of(Lot.Storage.class, Lot.Storage::words),
                page.ranch().fields().values().stream()
                        .map(f -> new Option(f.id().toString(), f.name()))
                        .toList());
    }
}
