package haywright.app.web.lots;

import haywright.app.web.Ask;
import haywright.app.web.Form;
import haywright.app.words.Measures;
import haywright.app.words.Show;
import haywright.forage.FeedClass;
import haywright.forage.book.FeedBook;
import haywright.forage.energy.Weathered;
import haywright.forage.hazard.NitrateRisk;
import haywright.quantity.Kind;
import haywright.quantity.Quantity;
import haywright.quantity.Unit;
import haywright.ranch.Lot;
import haywright.ranch.Makeup;
import haywright.ranch.Ranch;
import haywright.sampling.stock.Stock;
import haywright.season.given.Facts;
import java.time.LocalDate;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/** The form of one lot, and the lot that comes out of it. How it is stored is {@link StockForm}. */
public final class LotForm {
    public static final Ask NAME = Ask.text("name", "Lot name", "Such as “second cutting, north yard”.");
    public static final Ask FEED_CLASS = Ask.choice("feedClass", "Kind of feed", "");
    public static final Ask WHERE = Ask.text("where", "Where it is", "So the hired man can find it.");
    public static final Ask CUTTING = new Ask("cutting", "Cutting", Unit.NONE, "First, second, third.", 12);
    public static final Ask MADE_ON = Ask.date("madeOn", "Date put up", "Such as Jul 18, 2026.");
    public static final Ask STORAGE = Ask.choice("storage", "Storage", "");
    public static final Ask WEATHERED = Ask.amount(
            "weatheredDepth",
            "Depth weathered since sampling",
            Unit.INCH,
            "Round bales: cut one open and measure to green hay. Empty if none, or" + " if sampled since.");
    public static final Ask BALE_DIAMETER =
            Ask.amount("baleDiameter", "Bale diameter", Unit.FOOT, "Across the flat end.");
    public static final Ask PRICE = Ask.amount(
            "replacementPrice",
            "Price to replace a {ton}",
            Unit.DOLLAR_PER_TON,
            "As fed, in your yard. Empty: a usual price for its kind, marked as assumed on every ration.");
    public static final Ask NITRATE = Ask.choice(
            "nitrateRisk",
            "Drought, frost, shade or heavy nitrogen",
            "Counts as a nitrate danger until tested. Cereal hay and silage always do.");
    public static final Ask NOTES = Ask.text("notes", "Notes", "");

    public static final Ask SELLS = Ask.amount(
            "sells",
            "You could sell it for",
            Unit.DOLLAR_PER_TON,
            "In your yard. The winter book then says what you can spare. Empty: none is sold.");
    public static final Ask LEFT = Ask.amount(
            "left",
            "Worth if left at turnout",
            Unit.DOLLAR_PER_TON,
            "Empty: %s of its price for hay, %s for silage, %s for other feed."
                    .formatted(share("carry_hay"), share("carry_silage"), share("carry_other")));
    public static final Ask KEEP = Ask.amount(
            "keep",
            "Keep clean for calving",
            Unit.TON,
            "{Tons} not fed before the first calves: no mold, no nitrate, net wrap and twine off.");
    public static final Ask FACE = Ask.amount(
            "face",
            "Silage face: take off at least, a day",
            Unit.INCH,
            "So the face does not spoil. {Tons} work too: 1.5 {tons}. Empty: %s inches in cold weather."
                    .formatted(Show.number(Facts.value("face_inches"), 0)));

    private static String share(String fact) {
        return Show.number(100 * Facts.value(fact), 0) + " %";
    }

    public static final Ask CUTTINGS = Ask.number("cuttings", "Cuttings in it", "");
    public static final Ask FIELDS = Ask.number("fields", "Fields in it", "");
    public static final Ask SPECIES = Ask.number("species", "Kinds of plants", "");
    public static final Ask HOURS = Ask.number("balingHours", "Hours from the first bale to the last", "");
    public static final Ask RAINED = Ask.choice("partRained", "Some was rained on", "");
    public static final Ask APART = Ask.choice("storedApart", "Some is stored differently", "");
    public static final Ask TORN = Ask.choice("tornWrap", "Some wrap has holes", "");

    /** Boxes that most lots leave empty, in two folds that open where something in them has to be fixed. */
    public static final List<Ask> MORE =
            List.of(WHERE, FeedPick.FEED, FeedPick.STAGE, CUTTING, MADE_ON, WEATHERED, BALE_DIAMETER, NOTES);

    public static final List<Ask> MAKEUP = List.of(CUTTINGS, FIELDS, SPECIES, HOURS, RAINED, APART, TORN);

    public static final List<Ask> USE = List.of(SELLS, LEFT, KEEP, FACE);

    private static final List<String> LIKE_THE_LAST = List.of(STORAGE.name(), "bale");

    /** Of one lot alone. */
    private static final List<String> OF_ITS_OWN =
            List.of(NAME.name(), "count", "rows", "columns", "tiers", "mass", "bags");

    private LotForm() {}

    /** What goes without saying for a new lot stored like this, or stands as in the last one stored so. */
    static Map<String, String> usual(StockKind kind, Ranch ranch) {
        var usual = new LinkedHashMap<>(StockForm.usual(kind));
        ranch.lots().values().stream()
                .filter(lot -> StockKind.of(lot.stock()) == kind)
                .reduce((before, last) -> last)
                .map(LotForm::known)
                .ifPresent(last -> LIKE_THE_LAST.forEach(name -> usual.put(name, last.getOrDefault(name, ""))));
        var storage = switch (kind) {
            case BUNKER, PILE -> Lot.Storage.BUNKER;
            case BAG -> Lot.Storage.BAG;
            case UPRIGHT_SILO -> Lot.Storage.SILO;
            case BIN -> Lot.Storage.BIN;
            case STANDING -> Lot.Storage.STANDING;
            default -> null;
        };
        if (storage != null) {
            usual.put(STORAGE.name(), Form.id(storage));
        }
        return usual;
    }

    /** Another like it, under a name and of an amount of its own. */
    static Map<String, String> like(Lot lot) {
        var like = new LinkedHashMap<>(known(lot));
        like.keySet().removeAll(OF_ITS_OWN);
        Stream.of(MORE, MAKEUP, USE)
                .flatMap(List::stream)
                .map(Ask::name)
                .toList()
                .forEach(like::remove); // folded, so unseen
        return like;
    }

    /** What is known of a lot, as its form shows it. */
    static Map<String, String> known(Lot lot) {
        var known = new LinkedHashMap<String, String>();
        known.put(NAME.name(), lot.name());
        known.put(FEED_CLASS.name(), Form.id(lot.feedClass()));
        FeedPick.show(known, lot.bookRow(), lot.feedClass());
        known.put(WHERE.name(), lot.where());
        known.put(CUTTING.name(), lot.cutting());
        known.put(MADE_ON.name(), lot.madeOn() == null ? "" : Show.date(lot.madeOn()));
        known.put(STORAGE.name(), lot.storage() == null ? "" : Form.id(lot.storage()));
        var weathered = lot.weathered();
        if (weathered != null) {
            known.put(WEATHERED.name(), WEATHERED.typed(weathered.depth()));
            known.put(BALE_DIAMETER.name(), BALE_DIAMETER.typed(weathered.diameter()));
        }
        known.put(PRICE.name(), lot.replacementPrice() == null ? "" : PRICE.typed(lot.replacementPrice()));
        var use = lot.use();
        if (use != null) {
            known.put(SELLS.name(), use.sells() == null ? "" : SELLS.typed(use.sells()));
            known.put(LEFT.name(), use.left() == null ? "" : LEFT.typed(use.left()));
            known.put(KEEP.name(), use.keep() == null ? "" : KEEP.typed(use.keep()));
            known.put(FACE.name(), use.face() == null ? "" : FACE.typed(use.face()));
        }
        known.put(NITRATE.name(), lot.nitrateRisk() ? "yes" : "");
        known.put(NOTES.name(), lot.notes());
        known.putAll(StockForm.known(lot.stock()));
        var makeup = lot.makeup();
        if (makeup != null) {
            known.put(CUTTINGS.name(), orEmpty(makeup.cuttings()));
            known.put(FIELDS.name(), orEmpty(makeup.fields()));
            known.put(SPECIES.name(), orEmpty(makeup.species()));
            var hours = makeup.balingHours();
            known.put(HOURS.name(), hours == null ? "" : Show.significant(hours, 6));
            known.put(RAINED.name(), makeup.partRained() ? "yes" : "");
            known.put(APART.name(), makeup.storedApart() ? "yes" : "");
            known.put(TORN.name(), makeup.tornWrap() ? "yes" : "");
        }
        return known;
    }

    private static String orEmpty(@Nullable Integer count) {
        return count == null ? "" : count.toString();
    }

    /** Null where was not entered anything. */
    private static @Nullable Makeup makeup(Form form) {
        var cuttings = form.maybeCount(CUTTINGS);
        var fields = form.maybeCount(FIELDS);
        var species = form.maybeCount(SPECIES);
        var hours = form.maybeNumber(HOURS);
        boolean rained = form.isTicked(RAINED);
        boolean apart = form.isTicked(APART);
        boolean torn = form.isTicked(TORN);
        boolean silent = cuttings == null && fields == null && species == null && hours == null;
        return silent && !rained && !apart && !torn
                ? null
                : form.part(() -> new Makeup(cuttings, fields, species, hours, rained, apart, torn))
                        .orElse(null);
    }

    /** Null where nothing weathered. */
    private static @Nullable Weathered weathered(Form form) {
        var depth = form.maybeQuantity(WEATHERED);
        return depth == null
                ? null
                : form.part(() -> new Weathered(
                                depth, form.quantity(BALE_DIAMETER, "It sets how much of a bale is weathered.")))
                        .orElse(null);
    }

    /**
     * The lot of a form, or nothing if anything is wrong with it; then the form says what.
     *
     * @param before the lot as it was; null for a new one
     */
    static Optional<Lot> read(Form form, StockKind kind, UUID id, @Nullable Lot before, Ranch ranch, LocalDate today) {
        var name = form.name(NAME, "Enter a name.");
        form.doubtIfTaken(
                NAME,
                before == null ? "" : before.name(),
                ranch.lots().values().stream().filter(l -> !l.id().equals(id)).map(Lot::name),
                "A lot named %s is already here. Labels and sheets could not tell them apart: add its place or cutting.");
        var feedClass = form.choice(FEED_CLASS, FeedClass.class, "Choose the kind of feed.");
        var bookRow = FeedPick.read(form, feedClass, Optional.ofNullable(before).map(Lot::bookRow));
        var where = form.text(WHERE);
        var cutting = form.text(CUTTING);
        var madeOn = form.maybePast(MADE_ON, today);
        if (madeOn != null && madeOn.isAfter(today) && (before == null || !madeOn.equals(before.madeOn()))) {
            form.doubt(
                    MADE_ON,
                    "madeOn-to-come",
                    Show.date(madeOn) + " is in the future; today is " + Show.date(today) + ".");
        }
        var stock = StockForm.read(form, kind, before == null ? null : before.stock(), ranch, today);
        if ((before == null || !before.name().equals(name))
                && stock.isPresent()
                && stock.get().dryMatter().isEmpty()
                && FeedPick.isWetOfDry(name + " " + form.value(FeedPick.FEED), bookRow, feedClass)) {
            form.doubt(
                    NAME,
                    "wet-of-dry",
                    "The feed book has only the dry kind: until a report gives its dry matter, %s is used."
                            .formatted(Show.dryMatter(FeedPick.dryMatter(bookRow, feedClass))));
        }
        form.text(STORAGE);
        // of what is only weighed, nothing else says how it can be sampled
        var storage = form.isEmpty(STORAGE) && kind != StockKind.WEIGHED
                ? null
                : form.choice(STORAGE, Lot.Storage.class, "Choose the storage.");
        var price = form.maybeQuantity(PRICE);
        if (price != null) {
            form.doubtUnless(
                    PRICE,
                    before == null ? null : before.replacementPrice(),
                    price,
                    Quantity.of(20, Unit.DOLLAR_PER_TON),
                    Quantity.of(700, Unit.DOLLAR_PER_TON));
        }
        boolean nitrateRisk = form.isTicked(NITRATE);
        var notes = form.text(NOTES);
        var makeup = makeup(form);
        var weathered = StockForm.mayBeRound(kind) ? weathered(form) : null;
        var use = use(
                form,
                nitrateRisk
                        || NitrateRisk.isRisk(feedClass, FeedBook.published().rowFor(bookRow, feedClass)),
                before,
                stock);
        return form.build(() -> new Lot(
                id,
                name,
                feedClass,
                bookRow,
                where,
                cutting,
                madeOn,
                storage,
                stock.orElseThrow(),
                price,
                nitrateRisk,
                notes,
                makeup,
                weathered,
                before == null ? List.of() : before.weighings(),
                use));
    }

    /** Null where it is meant for nothing but feeding. */
    private static Lot.@Nullable Use use(Form form, boolean isRisk, @Nullable Lot before, Optional<Stock> stock) {
        var sells = form.maybeQuantity(SELLS);
        var left = form.maybeQuantity(LEFT);
        var keep = form.maybeQuantity(KEEP);
        var face = form.maybeQuantity(FACE);
        if (face != null
                && face.unit().kind() == Kind.LENGTH
                && stock.isPresent()
                && stock.get().alongFace().isEmpty()) {
            form.refuse(
                    FACE.name(),
                    face.asTyped(),
                    Measures.say("of feed stored so, nobody can tell how many {tons} an inch is"),
                    Measures.say("Enter {tons} a day, like 1.5 {tons}."));
        }
        boolean wasKept = before != null && before.use() != null && before.use().keep() != null;
        if (keep != null && isRisk && !wasKept) {
            form.doubt(
                    KEEP,
                    "keep-nitrate",
                    "This kind of hay can hold too much nitrate. Keep it for cows near calving only if a test came back safe.");
        }
        return form.part(() -> new Lot.Use(sells, left, face, keep)).orElse(null);
    }
}
