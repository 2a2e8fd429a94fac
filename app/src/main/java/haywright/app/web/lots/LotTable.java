package haywright.app.web.lots;

import haywright.app.web.Ask;
import haywright.app.web.Form;
import haywright.app.web.Option;
import haywright.app.web.Page;
import haywright.app.web.Routes;
import haywright.app.web.table.Column;
import haywright.app.web.table.TableForm;
import haywright.app.words.Measures;
import haywright.app.words.Parse;
import haywright.app.words.Show;
import haywright.forage.FeedClass;
import haywright.outlook.LotTons;
import haywright.quantity.Unit;
import haywright.ranch.Lot;
import haywright.ranch.Ranch;
import haywright.sampling.stock.Stock;
import haywright.workings.Refused;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import java.util.stream.Stream;

/** A list of lots from a spreadsheet: bales that were counted, or tons. Each line is read as the form of a lot is. */
final class LotTable implements TableForm.Of<Lot> {
    private static final String MASS = "mass";
    private static final String BALE_WEIGHT = "baleWeight";
    /** Tons in a list are rounded. */
    private static final double ROUNDED = 0.02;

    private static final List<Option> KINDS = Stream.concat(
                    Option.of(FeedClass.class, FeedClass::words).stream(),
                    Stream.of(
                            new Option(Form.id(FeedClass.LEGUME_HAY), "alfalfa"),
                            new Option(Form.id(FeedClass.LEGUME_HAY), "alfalfa hay"),
                            new Option(Form.id(FeedClass.MIXED_HAY), "alfalfa-grass hay"),
                            new Option(Form.id(FeedClass.MIXED_HAY), "grass-alfalfa hay"),
                            new Option(Form.id(FeedClass.CROP_RESIDUE), "cornstalks"),
                            new Option(Form.id(FeedClass.GRAIN), "grain")))
            .toList();

    private static final List<Option> BALES = Stream.concat(
                    Option.of(Stock.BaleKind.class, Stock.BaleKind::words).stream(),
                    Stream.of(
                            new Option(Form.id(Stock.BaleKind.LARGE_ROUND), "round"),
                            new Option(Form.id(Stock.BaleKind.LARGE_ROUND), "rounds"),
                            new Option(Form.id(Stock.BaleKind.LARGE_ROUND), "round bales"),
                            new Option(Form.id(Stock.BaleKind.LARGE_SQUARE), "big square"),
                            new Option(Form.id(Stock.BaleKind.LARGE_SQUARE), "big squares"),
                            new Option(Form.id(Stock.BaleKind.SMALL_SQUARE), "small squares")))
            .toList();

    private static final TableForm TABLE = new TableForm(List.of(
            Column.typed(LotForm.NAME.name(), "lot", "name", "lot name", "stack"),
            Column.chosen(LotForm.FEED_CLASS.name(), KINDS, "kind of feed", "kind", "feed kind", "type"),
            Column.typed(FeedPick.FEED.name(), "feed in the book", "feed"),
            Column.chosen("bale", BALES, "kind of bale", "bale", "bale type"),
            Column.typed("count", "bales", "number of bales", "bale count", "no of bales"),
            Column.typed(BALE_WEIGHT, "bale weight", "weight of a bale", "lb per bale"),
            Column.typed(
                    MASS,
                    "tons",
                    "total tons",
                    "tons as fed",
                    "tonnes",
                    "total tonnes",
                    "tonnes as fed",
                    "weight of the whole lot",
                    "total weight"),
            Column.chosen(
                    LotForm.STORAGE.name(), Option.of(Lot.Storage.class, Lot.Storage::words), "storage", "stored"),
            Column.typed(LotForm.MADE_ON.name(), "put up", "date put up", "made", "made on", "baled on"),
            Column.typed(LotForm.CUTTING.name(), "cutting", "cut"),
            Column.typed(LotForm.WHERE.name(), "where", "where it is", "place", "location", "yard"),
            Column.typed(
                    LotForm.PRICE.name(),
                    "price to replace a ton",
                    "price",
                    "price a ton",
                    "$/ton",
                    "$ ton",
                    "price to replace a tonne",
                    "price a tonne",
                    "$/tonne",
                    "$/t",
                    "value"),
            Column.typed(LotForm.NOTES.name(), "notes", "remarks")));

    private static final TableForm.At AT = new TableForm.At("lots/table", "Lots from a table", "lots", "lot");

    private final Page page;

    private LotTable(Page page) {
        this.page = page;
    }

    static void routes(Routes on) {
        on.get(AT.key(), page -> TABLE.show(page, AT));
        on.post(AT.key(), page -> TABLE.keep(page, AT, new LotTable(page)));
    }

    @Override
    public Map<String, String> usual() {
        return Map.of();
    }

    @Override
    public List<String> said() {
        return List.of();
    }

    /** Bales and tons without what a bale weighs: the tons say it. */
    @Override
    public void fill(Map<String, String> boxes) {
        if (boxes.containsKey("count") && boxes.containsKey(MASS) && !boxes.containsKey(BALE_WEIGHT)) {
            try {
                double pounds =
                        Parse.quantity(MASS, boxes.get(MASS), Measures.mass()).in(Unit.POUND)
                                / Parse.count("count", boxes.get("count"), Unit.NONE);
                boxes.put(BALE_WEIGHT, Show.withUnit(Show.number(pounds, 0), Unit.POUND));
            } catch (Refused refused) {
                return; // said beside the cell it is of when the line is read
            }
        }
    }

    @Override
    public Optional<Lot> read(Ranch ranch, Form form) {
        boolean isBaled = !form.value("count").isBlank();
        var tons = form.maybeQuantity(Ask.amount(MASS, "{Tons}", Unit.TON, ""));
        if (!isBaled && tons == null && !form.hasProblems()) {
            form.refuse(
                    MASS,
                    "",
                    Measures.say("neither bales nor {tons} are said"),
                    "Enter one of the two, or add it on its own page.");
        }
        if (form.hasProblems()) {
            return Optional.empty();
        }
        var lot = LotForm.read(
                form, isBaled ? StockKind.BALES : StockKind.WEIGHED, UUID.randomUUID(), null, ranch, page.today());
        if (isBaled && tons != null && lot.isPresent()) {
            agree(form, tons.in(Unit.TON), lot.get());
        }
        return form.hasProblems() ? Optional.empty() : lot;
    }

    /** Bales, their weight and tons: refused where they are not one another's. */
    private static void agree(Form form, double said, Lot lot) {
        double come = Unit.TON.fromBase(LotTons.of(lot).kg().orElse(0));
        if (Math.abs(said - come) > ROUNDED * come) {
            form.refuse(
                    MASS,
                    form.value(MASS),
                    "%d bales of %s come to %s %s"
                            .formatted(
                                    lot.stock().bales(),
                                    form.value(BALE_WEIGHT),
                                    Show.number(Measures.ofTons(come), 1),
                                    Measures.tons()),
                    "Which is right? Clear the other.");
        }
    }

    @Override
    public String says(Form form, Lot lot) {
        return "%s: %s, %s, %s"
                .formatted(
                        lot.name(),
                        lot.feedClass().words(),
                        StockForm.amount(page.ranch(), lot.stock()),
                        TonsView.of(lot).tons());
    }

    @Override
    public Ranch with(Ranch ranch, Lot lot) {
        return ranch.with(lot);
    }
}
