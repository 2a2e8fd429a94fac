package haywright.app.web.lots;

import haywright.app.web.Ask;
import haywright.app.web.Form;
import haywright.app.words.Measures;
import haywright.app.words.Show;
import haywright.forage.Analyte;
import haywright.forage.Basis;
import haywright.forage.FeedClass;
import haywright.forage.lab.Reading;
import haywright.quantity.Kind;
import haywright.quantity.Quantity;
import haywright.quantity.Unit;
import haywright.ranch.FeedForSale;
import haywright.season.given.Facts;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/** The form of one feed to buy. */
public final class FeedForm {
    public static final Ask NAME =
            Ask.text("name", "Feed", "As you would ask for it: corn, dried distillers grains, 20 % cake, alfalfa hay.");
    public static final Ask FEED_CLASS = Ask.choice("feedClass", "Kind of feed", "Empty: told by the name.");
    public static final Ask PRICE =
            Ask.amount("price", "Price, delivered", Unit.DOLLAR_PER_TON, "As fed. $0.21/lb or $12.50/cwt works too.");
    public static final Ask AT_MOST =
            Ask.amount("atMost", "Most you can get this winter", Unit.TON, "Leave it empty if there is plenty.");
    public static final Ask DELIVERY = Ask.text("delivery", "Delivery", "A semi load of 25 {tons}, 5 days’ notice.");
    public static final Ask LOAD = Ask.amount("load", "One load holds", Unit.TON, "As fed. {1 ton}");
    public static final Ask FREIGHT = Ask.amount(
            "freight", "Freight per load", Unit.DOLLAR, "Only what the price leaves out. Counted by full loads.");
    public static final Ask MILES =
            Ask.amount("miles", "Or by the mile: miles loaded", Unit.MILE, "One way, in place of freight per load.");
    public static final Ask PER_MILE = Ask.amount("perMile", "Dollars a loaded mile", Unit.DOLLAR, "");
    public static final Ask A_WEEK =
            Ask.amount("aWeek", "Most they can bring in a week", Unit.TON, "Leave it empty if there is plenty.");
    public static final Ask LATER = Ask.amount(
            "later",
            "Price if you wait to mid-March",
            Unit.DOLLAR_PER_TON,
            "As the price above, without freight. Empty: %s %% more."
                    .formatted(Show.number(Facts.value("late_premium"), 0)));
    public static final Ask HARD = new Ask(
            "hardPercent",
            "Costs more in a hard winter by",
            Unit.PERCENT,
            "A winter as cold as 1 in 6. Empty: %s %%.".formatted(Show.number(Facts.value("cold_premium"), 0)),
            6);
    public static final Ask BASIS = Ask.choice(
            "tagBasis",
            "The figures on the tag are",
            "Tags are as fed unless they say otherwise. A lab sheet can be either.");

    /** What a tag or a seller's analysis usually prints, in its order. */
    private static final Map<Analyte, String> PRINTED = printed();

    /** Dollars for a ton of dry matter below which a dry concentrate is asked about: judgment. */
    private static final double LEAST_DRY_PRICE = 100;

    private static final Set<FeedClass> DRY_FEEDS = EnumSet.of(
            FeedClass.GRAIN,
            FeedClass.PROTEIN_MEAL,
            FeedClass.DISTILLERS_GRAINS,
            FeedClass.BYPRODUCT_PROTEIN,
            FeedClass.BYPRODUCT_ENERGY,
            FeedClass.CAKE);

    private FeedForm() {}

    private static Map<Analyte, String> printed() {
        var printed = new LinkedHashMap<Analyte, String>();
        printed.put(Analyte.DM, "Dry matter");
        printed.put(Analyte.CP, "Crude protein (CP)");
        printed.put(Analyte.TDN, "TDN");
        printed.put(Analyte.FAT, "Fat");
        printed.put(Analyte.CA, "Calcium (Ca)");
        printed.put(Analyte.P, "Phosphorus (P)");
        return printed;
    }

    /** What is folded below the three boxes. */
    public static final List<Ask> KIND = List.of(FEED_CLASS, FeedPick.FEED, FeedPick.STAGE);

    public static final List<Ask> DELIVERED = List.of(DELIVERY, LOAD, FREIGHT, MILES, PER_MILE, A_WEEK);

    public static final List<Ask> WAITING = List.of(LATER, HARD);

    public static List<Ask> tagAndBasis() {
        return Stream.concat(Stream.of(BASIS), tag().stream()).toList();
    }

    public static List<Ask> tag() {
        return PRINTED.keySet().stream().map(FeedForm::ask).toList();
    }

    private static Ask ask(Analyte analyte) {
        return new Ask("tag-" + analyte.id(), String.valueOf(PRINTED.get(analyte)), Unit.PERCENT, "", 6);
    }

    static Map<String, String> known(FeedForSale feed) {
        var known = new LinkedHashMap<String, String>();
        known.put(NAME.name(), feed.name());
        known.put(FEED_CLASS.name(), Form.id(feed.feedClass()));
        FeedPick.show(known, feed.bookRow(), feed.feedClass());
        known.put(PRICE.name(), PRICE.typed(feed.price()));
        known.put(AT_MOST.name(), feed.atMost() == null ? "" : AT_MOST.typed(feed.atMost()));
        known.put(DELIVERY.name(), feed.delivery());
        known.put(LOAD.name(), feed.load() == null ? "" : LOAD.typed(feed.load()));
        known.put(FREIGHT.name(), feed.freight() == null ? "" : FREIGHT.typed(feed.freight()));
        var terms = feed.terms();
        if (terms != null) {
            known.put(MILES.name(), terms.miles() == null ? "" : MILES.typed(terms.miles()));
            known.put(PER_MILE.name(), terms.perMile() == null ? "" : PER_MILE.typed(terms.perMile()));
            known.put(A_WEEK.name(), terms.aWeek() == null ? "" : A_WEEK.typed(terms.aWeek()));
            known.put(LATER.name(), terms.later() == null ? "" : LATER.typed(terms.later()));
            known.put(HARD.name(), terms.hardPercent() == null ? "" : Show.significant(terms.hardPercent(), 8));
        }
        for (var reading : feed.tag()) {
            known.put("tag-" + reading.analyte().id(), Show.significant(reading.value(), 8));
            if (reading.analyte() != Analyte.DM) {
                known.put(BASIS.name(), Form.id(reading.basis()));
            }
        }
        return known;
    }

    /** @param before the feed as it was; null for a new one */
    static Optional<FeedForSale> read(Form form, UUID id, @Nullable FeedForSale before) {
        var name = form.name(NAME, "Enter a name.");
        var told = form.isEmpty(FEED_CLASS)
                ? FeedNames.meant(name + " " + form.value(FeedPick.FEED))
                : Optional.<FeedNames.Meant>empty();
        form.text(FEED_CLASS);
        var feedClass = told.map(FeedNames.Meant::kind)
                .orElseGet(() -> form.choice(
                        FEED_CLASS, FeedClass.class, "The name does not tell what kind of feed it is: choose one."));
        boolean bookIsTold = told.isPresent() && form.isEmpty(FeedPick.FEED) && form.isEmpty(FeedPick.STAGE);
        var bookRow = bookIsTold
                ? told.get().bookRow()
                : FeedPick.read(form, feedClass, Optional.ofNullable(before).map(FeedForSale::bookRow));
        var price = form.quantity(PRICE, "Enter what it costs in your yard.");
        form.doubtUnless(
                PRICE,
                before == null ? null : before.price(),
                price,
                Quantity.of(20, Unit.DOLLAR_PER_TON),
                Quantity.of(4000, Unit.DOLLAR_PER_TON));
        var atMost = form.maybeQuantity(AT_MOST);
        var delivery = form.text(DELIVERY);
        var load = form.maybeQuantity(LOAD);
        var freight = form.maybeQuantity(FREIGHT);
        var miles = form.maybeQuantity(MILES);
        var perMile = form.maybeQuantity(PER_MILE);
        var aWeek = form.maybeQuantity(A_WEEK);
        var later = form.maybeQuantity(LATER);
        var hard = form.maybeNumber(HARD);
        var tag = tag(form, before);
        askDryMatter(form, name, feedClass, bookRow, price, tag, before);
        return form.build(() -> new FeedForSale(
                id,
                name,
                feedClass,
                bookRow,
                tag,
                price,
                atMost,
                delivery,
                load,
                freight,
                new FeedForSale.Terms(miles, perMile, aWeek, later, hard)));
    }

    /**
     * The book's concentrates are dry. One that is called wet needs its own dry matter: as a dry one it would be fed far
     * too short. And what costs far too little for a dry one is asked about, unless it was entered like that before.
     */
    private static void askDryMatter(
            Form form,
            String name,
            FeedClass feedClass,
            String bookRow,
            Quantity price,
            List<Reading> tag,
            @Nullable FeedForSale before) {
        boolean isTold = tag.stream().anyMatch(r -> r.analyte() == Analyte.DM);
        if (feedClass.isForage() || isTold || !form.problem(FeedPick.FEED).isEmpty()) {
            return;
        }
        double usual = FeedPick.dryMatter(bookRow, feedClass);
        var dm = Show.number(usual, 0);
        if (FeedPick.isWetOfDry(name + " " + form.value(FeedPick.FEED), bookRow, feedClass)) {
            form.refuse(
                    ask(Analyte.DM).name(),
                    "",
                    "the feed book has only the dry kind, at %s %% dry matter".formatted(dm),
                    "Enter the dry matter of “%s”, from its tag or the seller.".formatted(name));
        } else if (price.unit().kind() == Kind.PRICE
                && price.base() > 0
                && !(before != null && price.equals(before.price()) && bookRow.equals(before.bookRow()))) {
            double dry = price.in(Unit.DOLLAR_PER_TON) * 100 / usual;
            if (DRY_FEEDS.contains(feedClass) && dry < LEAST_DRY_PRICE) {
                form.doubt(
                        PRICE,
                        "price-of-dry-matter",
                        "At the feed book’s %s %% dry matter this is %s a %s of dry matter, cheap for %s. If it is wet, enter its dry matter below."
                                .formatted(
                                        dm,
                                        Show.dollars(Measures.ofDollarsATon(dry)),
                                        Measures.ton(),
                                        feedClass.words()));
            }
        }
    }

    /** Figures that the form has no box for, from a file or another page, are kept. */
    private static List<Reading> tag(Form form, @Nullable FeedForSale before) {
        var tag = new ArrayList<Reading>();
        var asked = tag().stream().filter(ask -> !form.isEmpty(ask)).toList();
        boolean needsBasis = asked.stream().anyMatch(ask -> !ask.name().equals("tag-dm"));
        var basis =
                needsBasis ? form.choice(BASIS, Basis.class, "Choose as fed or dry matter basis.") : Basis.AS_RECEIVED;
        for (var analyte : PRINTED.keySet()) {
            var ask = ask(analyte);
            var value = form.maybeNumber(ask);
            if (value == null) {
                continue;
            }
            if (!(value >= 0 && value <= 100)) {
                form.refuse(
                        ask.name(),
                        Show.significant(value, 6) + " %",
                        "a percentage is 0 to 100",
                        "Check the decimal point.");
            }
            tag.add(new Reading(analyte, value, Unit.PERCENT, analyte == Analyte.DM ? Basis.DRY_MATTER : basis));
        }
        if (before != null) {
            before.tag().stream().filter(r -> !PRINTED.containsKey(r.analyte())).forEach(tag::add);
        }
        return tag;
    }
}
