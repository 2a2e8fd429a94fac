package haywright.app.web.bench;

import haywright.app.report.picture.StripPicture;
import haywright.app.report.picture.SurenessPicture;
import haywright.app.words.BunkRoom;
import haywright.app.words.ColdWords;
import haywright.app.words.Measures;
import haywright.app.words.Show;
import haywright.app.words.ration.LimitWords;
import haywright.app.words.ration.RegainWords;
import haywright.app.words.ration.RuleWords;
import haywright.app.words.ration.SupplyWords;
import haywright.cattle.herd.Group;
import haywright.diet.LeftOut;
import haywright.feeding.Offer;
import haywright.feeding.Offers;
import haywright.feeding.WouldCarry;
import haywright.outlook.FeedingDangers;
import haywright.outlook.Yard;
import haywright.ration.NoRation;
import haywright.ration.PricedFeed;
import haywright.ration.Ration;
import haywright.ration.UsualMineral;
import haywright.workings.Problem;
import haywright.workings.Refused;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.UUID;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/**
 * One group's ration as its first screen shows it.
 *
 * @param feed what to feed, a feed each; empty where there is no ration
 * @param cost of it
 * @param holds in how many of 10
 * @param lasts until when its feeds last, in words
 * @param bales the same in whole bales, or that none come near it; empty where nothing of it is baled
 * @param assumed what nobody said of how they are fed; empty where it was said
 * @param cards as now first, then this mix, then by averages alone
 * @param way what stands in the way; null where there is a ration
 * @param buy the feed nearest to being worth its price; null where none is
 * @param strips null where nothing is fed
 * @param curve null where being surer costs nothing
 * @param misses what the amounts as written are short of; empty for most
 */
public record BenchView(
        Offers offers,
        Group group,
        List<String> feed,
        String cost,
        String holds,
        String lasts,
        String bales,
        String assumed,
        List<Card> cards,
        @Nullable InTheWay way,
        @Nullable Buy buy,
        @Nullable StripPicture strips,
        @Nullable SurenessPicture curve,
        List<String> cold,
        List<String> misses,
        List<String> cautions,
        List<LeftOut> leftOut) {
    /** The pounds of cold followed with a pencil. */
    public List<String> coldPath() {
        return offers.cold().map(cold -> ColdWords.pencil(offers, cold)).orElse(List.of());
    }

    /** What of its cost brings thin cattle to a better score, in words; empty for most. */
    public Optional<String> regain() {
        return RegainWords.ofIt(offers);
    }

    /** @param shortOfHay how much hay is missing until grass, in words; empty where it lasts or cannot be told */
    public record Groups(List<GroupRow> rows, Optional<String> shortOfHay) {}

    /** @param says what to feed and what it costs, or what is wrong, in a few words; done whether there is a ration */
    public record GroupRow(Group group, boolean done, String says, String holds, String now) {}

    public record Cannot(Group group, List<Problem> problems) {}

    /** @param buy what would carry the group if it were bought, a feed each; empty where no one or two feeds would */
    public record InTheWay(List<String> reasons, List<String> lifts, List<ToBuy> buy) {}

    /** @param name that the form of a feed to buy knows it by */
    public record ToBuy(String name, String says) {}

    /** @param id of the feed for sale; empty for a lot of the ranch */
    public record Buy(String id, String says) {}

    /** One group at a glance. */
    public static GroupRow row(Offers offers) {
        var yard = offers.yard();
        var group = offers.group();
        try {
            var fed = offers.now()
                    .map(now -> Show.dollars(now.mix().cost())
                            + shortfalls(offers, now).stream()
                                    .findFirst()
                                    .map(words -> ", " + words)
                                    .orElse(""))
                    .orElse("not said");
            if (yard.feeds().isEmpty()) {
                return new GroupRow(group, false, "no feed on the ranch yet", "", fed);
            }
            return offers.sure()
                    .map(sure -> new GroupRow(
                            group,
                            true,
                            "%s: %s"
                                            .formatted(
                                                    Show.dollars(sure.mix().cost()),
                                                    String.join(", ", MixWords.feeds(yard, group, sure.mix())))
                                    + RegainWords.ofIt(offers).map("; "::concat).orElse(""),
                            SupplyWords.enough(sure.holdsPercent()),
                            fed))
                    .orElseGet(() -> new GroupRow(
                            group,
                            false,
                            "no mix works yet"
                                    + WouldCarry.of(offers.rations(), group, offers.days())
                                            .map(carry -> ": buy " + BuyWords.briefly(carry))
                                            .orElse(""),
                            "",
                            fed));
        } catch (Refused refused) {
            return new GroupRow(group, false, refused.problems().get(0).sentence(), "", "");
        }
    }

    static BenchView of(Offers offers) {
        var yard = offers.yard();
        var group = offers.group();
        var sure = offers.sure();
        var supplies = offers.supplies();
        return new BenchView(
                offers,
                group,
                sure.map(offer -> MixWords.feeds(yard, group, offer.mix())).orElse(List.of()),
                sure.map(offer -> Show.dollars(offer.mix().cost())).orElse(""),
                sure.map(offer -> SupplyWords.enough(offer.holdsPercent())).orElse(""),
                sure.map(offer -> MixWords.lasts(offer, offers.grass())
                                + (offer.gone().size() > 1
                                        ? " When one is gone, figure a new ration before you feed more of the other."
                                        : ""))
                        .orElse(""),
                MixWords.bales(offers),
                assumed(yard, group),
                Card.of(offers),
                offers.answer() instanceof NoRation no ? inTheWay(offers, no) : null,
                offers.answer() instanceof Ration ration ? buy(offers, ration) : null,
                supplies.isEmpty() ? null : new StripPicture("strips", supplies),
                sure.flatMap(offer -> offers.curve().map(curve -> new SurenessPicture("sureness", curve, offer)))
                        .orElse(null),
                offers.cold().map(ColdWords::of).orElse(List.of()),
                sure.map(offer -> shortfalls(offers, offer)).orElse(List.of()),
                Stream.concat(
                                Stream.concat(
                                        nitrate(offers),
                                        Stream.concat(waiting(offers), BunkRoom.words(offers).stream())),
                                offers.answer() instanceof Ration ration
                                        ? Stream.concat(
                                                RuleWords.heldBack(group, ration).stream(),
                                                ration.cautions().stream().map(haywright.workings.Caution::words))
                                        : Stream.of())
                        .toList(),
                offers.rations().question(group).diet().leftOut());
    }

    /** {@code Mix Oat-pea silage into the rest at every feeding.} As the letter says it. */
    private static Stream<String> nitrate(Offers offers) {
        return offers.sure().stream()
                .flatMap(offer -> FeedingDangers.ofNitrate(
                        offers.yard(),
                        offers.rations().question(offers.group()).diet(),
                        offer.mix().portions())
                        .stream())
                .map(haywright.workings.Caution::words);
    }

    /** {@code You asked for Oat hay. It is not in this mix until it is tested.} */
    private static Stream<String> waiting(Offers offers) {
        return offers.waiting().stream()
                .map(wish -> "You asked for %s. It is not in this mix until it is tested and safe."
                        .formatted(name(offers, wish.feed())));
    }

    private static String name(Offers offers, UUID feed) {
        var lot = offers.yard().ranch().lots().get(feed);
        return lot != null
                ? lot.name()
                : Objects.requireNonNull(offers.yard().ranch().feedsForSale().get(feed))
                        .name();
    }

    private static String assumed(Yard yard, Group group) {
        var wishes = yard.ranch().wishes().get(group.id());
        return wishes == null || wishes.way() == null ? "Assumed: put out daily and eaten up." : "";
    }

    /** What a mix may not have in it, then what it is short of, in words that go on a sentence. */
    static List<String> shortfalls(Offers offers, Offer offer) {
        return LimitWords.shortfalls(
                offer.mix(), offers.rations().question(offers.group()).diet().leftOut());
    }

    private static InTheWay inTheWay(Offers offers, NoRation no) {
        var reasons = no.conflicts().stream()
                .map(c -> LimitWords.inTheWay(c.row(), no))
                .toList();
        if (reasons.isEmpty()) {
            reasons = List.of("There is no feed on the ranch that this group may have.");
        }
        return new InTheWay(
                reasons,
                LimitWords.lifts(no, offers.rations().question(offers.group()).need()),
                WouldCarry.of(offers.rations(), offers.group(), offers.days())
                        .map(BuyWords::carry)
                        .orElse(List.of()));
    }

    /** Share of its price under which a feed is dearer than it is worth, and not only left out for being one feed more. */
    private static final double DEARER = 0.99;

    /**
     * Of feeds that are bought, the one that is worth the most for its price: to all groups until grass, or where nobody has
     * said when that is, to this ration.
     */
    private static @Nullable Buy buy(Offers offers, Ration ration) {
        var unused = new HashMap<String, Double>();
        ration.notUsed().forEach(not -> unused.put(not.feed().feed().id(), not.worthBuyingBelow()));
        return offers.yard().feeds().stream()
                .filter(feed -> !feed.own() && !UsualMineral.is(feed))
                .map(feed -> {
                    var id = feed.feed().id();
                    double worth = offers.rations().worth(id).orElse(unused.getOrDefault(id, 0.0));
                    return new Worth(feed, worth / feed.pricePerKgAsFed(), worth);
                })
                .filter(one -> one.perPrice > 0)
                .max(Comparator.comparingDouble(one -> one.perPrice))
                .map(BenchView::buy)
                .orElse(null);
    }

    /** @param perPrice how often a feed brings its price. @param worth dollars a kg as fed */
    private record Worth(PricedFeed feed, double perPrice, double worth) {}

    private static Buy buy(Worth of) {
        var name = of.feed.feed().name();
        return new Buy(
                of.feed.feed().id(),
                of.perPrice < DEARER
                        ? "%s is worth buying below %s delivered. It is on your list at %s."
                                .formatted(name, aTon(of.worth), ofATon(of.feed.pricePerKgAsFed()))
                        : "%s is worth buying at %s: the first %s of it are worth up to %s to the whole ranch."
                                .formatted(name, aTon(of.feed.pricePerKgAsFed()), Measures.tons(), aTon(of.worth)));
    }

    /** Percent that round to 9 of 10. */
    private static final double NEARLY_ALWAYS = 85;

    /** What nearly always holding would cost; empty where the mix does already. */
    public String nearlyAlways() {
        if (curve == null || curve.shown().holdsPercent() >= NEARLY_ALWAYS) {
            return "";
        }
        return curve.curve()
                .holding(NEARLY_ALWAYS)
                .map(way -> "To be enough 9 times in 10 costs %s more per head per day: %s."
                        .formatted(
                                Show.cents(way.counted() - curve.shown().counted()),
                                String.join(", ", MixWords.feeds(offers.yard(), group, way.mix()))))
                .orElse("No mix of these feeds is enough 9 times in 10: a test or another feed would help.");
    }

    /** {@code $185}, of a ton as the ranch has it. */
    static String ofATon(double dollarsPerKg) {
        return "$" + Show.number(Measures.price().fromBase(dollarsPerKg), 0);
    }

    /** {@code $185 a ton}. */
    static String aTon(double dollarsPerKg) {
        return Show.withUnit(Show.number(Measures.price().fromBase(dollarsPerKg), 0), Measures.price());
    }
}
