package haywright.outlook;

import haywright.cattle.herd.Group;
import haywright.cattle.need.GroupRequirement;
import haywright.cattle.need.Need;
import haywright.diet.DietOptions;
import haywright.diet.DietOptions.FeedLimit.Per;
import haywright.diet.Feed;
import haywright.diet.LimitFeeding;
import haywright.diet.WayOfFeeding;
import haywright.forage.Analyte;
import haywright.forage.FeedClass;
import haywright.forage.book.FeedBook;
import haywright.forage.book.Prior;
import haywright.forage.hazard.HazardClass;
import haywright.forage.hazard.NitrateRisk;
import haywright.forage.lot.LotComposition;
import haywright.forage.lot.LotDistribution;
import haywright.forage.lot.LotEstimate;
import haywright.quantity.Kind;
import haywright.quantity.Unit;
import haywright.ranch.FeedForSale;
import haywright.ranch.Lot;
import haywright.ranch.Ranch;
import haywright.ranch.WaterSource;
import haywright.ranch.Wishes;
import haywright.ration.Allotment;
import haywright.ration.LeastCostRation;
import haywright.ration.Portion;
import haywright.ration.PricedFeed;
import haywright.ration.UsualMineral;
import haywright.sampling.stock.Stock;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.Set;
import java.util.UUID;
import java.util.concurrent.ConcurrentHashMap;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/**
 * A ranch on one day, as the equations see it: what every lot is made of, what every group needs, and what is asked of a
 * ration between them. What a lot is made of is worked out once and kept as long as the yard.
 */
public final class Yard {
    /** Silage and tubs lose little; common practice, no source. Long hay and straw lose what the ranch says. */
    /** One of them on its tag tells what a mineral is. */
    private static final List<Analyte> MINERALS = List.of(Analyte.CA, Analyte.P, Analyte.MG, Analyte.NA);

    private static final double LITTLE_LOSS_PERCENT = 3;

    /** Grain and cake out of a bunk; common practice, no source. */
    private static final double BUNK_LOSS_PERCENT = 5;

    /** On the ground, the middle of 10 to 25 % of cubes and meal: King Ranch Institute (Mathis) 2013. */
    private static final double GROUND_LOSS_PERCENT = 17;

    public static final int LONGEST_WINTER = 300;

    private static final FeedBook BOOK = FeedBook.published();

    private final Ranch ranch;
    private final LocalDate day;
    private final Map<Lot, LotComposition> made = new ConcurrentHashMap<>();
    private final Map<FeedForSale, LotComposition> bought = new ConcurrentHashMap<>();
    private @Nullable List<PricedFeed> offered;

    /** @param day the day that is looked at */
    public Yard(Ranch ranch, LocalDate day) {
        this.ranch = ranch;
        this.day = day;
    }

    public Ranch ranch() {
        return ranch;
    }

    public LocalDate day() {
        return day;
    }

    /** With its estimate, where there is one. */
    public LotComposition composition(Lot lot) {
        return made.computeIfAbsent(lot, l -> composition(ranch, l));
    }

    /** By the reports of this ranch. */
    public static LotComposition composition(Ranch ranch, Lot lot) {
        return LotComposition.of(
                lot.feedClass(),
                BOOK.rowFor(lot.bookRow(), lot.feedClass()),
                SameHay.counted(ranch, lot.id()),
                LotTests.estimate(ranch, lot),
                Optional.ofNullable(lot.weathered()),
                ranch.energyPicks(lot.id()).ways(),
                lot.stock().dryMatter());
    }

    /** A tag is taken at its word; a feed without one is any lot of its kind. */
    public LotComposition composition(FeedForSale feed) {
        return bought.computeIfAbsent(feed, Yard::ofSale);
    }

    private static LotComposition ofSale(FeedForSale feed) {
        var row = BOOK.rowFor(feed.bookRow(), feed.feedClass());
        return feed.tag().isEmpty()
                ? LotComposition.of(
                        feed.feedClass(),
                        row,
                        List.of(),
                        Prior.of(feed.feedClass(), feed.bookRow()).map(kind -> LotEstimate.of(kind, List.of())))
                : LotComposition.ofTag(feed.feedClass(), row, "feed tag", feed.tag());
    }

    /** Of a lot or a feed for sale. @param id as feeds of a ration have it */
    public LotComposition composition(String id) {
        var key = UUID.fromString(id);
        var lot = ranch.lots().get(key);
        return lot != null
                ? composition(lot)
                : composition(Objects.requireNonNull(ranch.feedsForSale().get(key)));
    }

    /** % as fed, that a ration counts. */
    public double dryMatter(Lot lot) {
        return PricedFeed.dryMatterOf(feed(lot));
    }

    /** % as bought, that a ration counts. */
    public double dryMatter(FeedForSale sale) {
        return PricedFeed.dryMatterOf(feed(sale));
    }

    /** What a ration would feed of a feed that is bought. */
    private Feed feed(FeedForSale sale) {
        var composition = composition(sale);
        return new Feed(
                sale.id().toString(),
                sale.name(),
                sale.feedClass(),
                composition.composition(),
                NitrateRisk.isRisk(sale.feedClass(), BOOK.rowFor(sale.bookRow(), sale.feedClass())),
                Optional.of(LotDistribution.of(composition)));
    }

    /** What a ration would feed of a lot. */
    Feed feed(Lot lot) {
        return feed(lot, composition(lot));
    }

    public static Feed feed(Lot lot, LotComposition composition) {
        return new Feed(
                lot.id().toString(),
                lot.name(),
                lot.feedClass(),
                composition.composition(),
                lot.isNitrateDanger(),
                Optional.of(LotDistribution.of(composition)));
    }

    /** Lots that are weighed at the usual price of their kind, since nobody has said what replaces them. */
    public List<Lot> unpriced() {
        return ranch.lots().values().stream()
                .filter(lot -> lot.replacementPrice() == null && !(lot.stock() instanceof Stock.Standing))
                .toList();
    }

    /** Every lot that can be carried to cattle, then every feed for sale. What still stands in a field is not in it. */
    public synchronized List<PricedFeed> feeds() {
        if (offered == null) {
            offered = List.copyOf(offer());
        }
        return offered;
    }

    private List<PricedFeed> offer() {
        var feeds = new ArrayList<PricedFeed>();
        for (var lot : ranch.lots().values()) {
            if (!(lot.stock() instanceof Stock.Standing)) {
                feeds.add(priced(
                        feed(lot),
                        UsualPrices.of(lot).in(Unit.DOLLAR_PER_KG),
                        true,
                        LotTons.of(lot).kg().orElse(Double.POSITIVE_INFINITY)));
            }
        }
        for (var sale : ranch.feedsForSale().values()) {
            var most = sale.atMost();
            feeds.add(priced(
                    feed(sale), sale.deliveredPerKg(), false, most == null ? Double.POSITIVE_INFINITY : most.base()));
        }
        return feeds.isEmpty() ? feeds : UsualMineral.beside(feeds);
    }

    /**
     * Minerals that the ranch buys and of which no figure is known, where the usual one stands in for them: without its tag
     * nothing tells a mix from salt or limestone.
     */
    public List<FeedForSale> untaggedMinerals() {
        return feeds().stream().noneMatch(UsualMineral::is)
                ? List.of()
                : ranch.feedsForSale().values().stream()
                        .filter(sale -> sale.feedClass() == FeedClass.MINERAL
                                && MINERALS.stream()
                                        .noneMatch(mineral -> feed(sale)
                                                .composition()
                                                .value(mineral)
                                                .isPresent()))
                        .toList();
    }

    /** @param price dollars a kg as fed, in the yard */
    private PricedFeed priced(Feed feed, double price, boolean own, double kgAtHand) {
        return new PricedFeed(
                feed,
                price,
                PricedFeed.dryMatterOf(feed),
                notEaten(feed).map(NotEaten::percent).orElseGet(() -> usualLossPercent(feed.feedClass())),
                ranch.outfit().handlingPerKg(),
                own,
                kgAtHand,
                0,
                Double.POSITIVE_INFINITY);
    }

    /** Percent of what is put out of a feed that nobody eats, where nobody looked. */
    public double usualLossPercent(FeedClass kind) {
        return lossPercent(kind, ranch.outfit().feedsInBunks());
    }

    /** What the weeks of the ranch say of what its cattle leave of a feed; empty where nobody looked. */
    private Optional<NotEaten> notEaten(Feed feed) {
        return NotEaten.of(ranch, UUID.fromString(feed.id()), usualLossPercent(feed.feedClass()));
    }

    /** The same of a lot. */
    public Optional<NotEaten> notEaten(Lot lot) {
        return NotEaten.of(ranch, lot.id(), usualLossPercent(lot.feedClass()));
    }

    /** Of what is put out of it, by how it is fed. */
    private double lossPercent(FeedClass kind, boolean inBunks) {
        return switch (kind) {
            case LEGUME_HAY, GRASS_HAY, MIXED_HAY, CEREAL_HAY, STRAW, CROP_RESIDUE ->
                ranch.settings().hayLossPercent();
            case CORN_SILAGE, LEGUME_SILAGE, CEREAL_SILAGE, TUB, MINERAL, NPN -> LITTLE_LOSS_PERCENT;
            default -> inBunks ? BUNK_LOSS_PERCENT : GROUND_LOSS_PERCENT;
        };
    }

    /** Percent of grain and cake that is lost on the ground; 0 where none is listed or all of it goes into a bunk. */
    public double grainLossPercent() {
        var kinds = Stream.concat(
                ranch.lots().values().stream().map(Lot::feedClass),
                ranch.feedsForSale().values().stream().map(FeedForSale::feedClass));
        // a kind of which more is lost where it does not go into a bunk
        boolean isAny = kinds.anyMatch(kind -> lossPercent(kind, false) > lossPercent(kind, true));
        return isAny && !ranch.outfit().feedsInBunks() ? GROUND_LOSS_PERCENT : 0;
    }

    public GroupRequirement need(Group group) {
        return new HerdWeather(ranch.settings()).need(group, day);
    }

    /** From today; empty where no day of grass is said, or it is none of this winter. */
    public OptionalInt daysToGrass() {
        var turnout = ranch.turnout();
        long days = turnout == null ? 0 : day.until(turnout, ChronoUnit.DAYS);
        return days < 1 || days > LONGEST_WINTER ? OptionalInt.empty() : OptionalInt.of((int) days);
    }

    /** What is asked for a group today, as if it were alone on the ranch. */
    public LeastCostRation alone(Group group) {
        var alone = ask(group, feeds(), need(group));
        LimitFeeding.check(alone.options().way(), alone.need(), group.conditionScore());
        return alone;
    }

    /**
     * Of one group, one stretch after the other: what is asked in the middle of each.
     *
     * @param ends days after today on which each ends
     */
    public List<Allotment.Stretch> stretches(Group group, List<Integer> ends) {
        var weather = new HerdWeather(ranch.settings());
        var all = new ArrayList<Allotment.Stretch>();
        int from = 0;
        for (int to : ends) {
            var need = weather.need(group, day.plusDays((from + to) / 2));
            all.add(new Allotment.Stretch(to - from, ask(group, feeds(), need)));
            from = to;
        }
        return all;
    }

    /** What is asked for a group of these feeds and this need, by all that the ranch said of it. */
    public LeastCostRation question(Group group, List<PricedFeed> feeds, Need need) {
        return ask(group, feeds, need);
    }

    private LeastCostRation ask(Group group, List<PricedFeed> feeds, Need need) {
        var outfit = ranch.outfit();
        var wanted = ranch.wishes().getOrDefault(group.id(), Wishes.none(group.id()));
        boolean inBunks = outfit.feedsInBunks() || wanted.isInABunk();
        double lost = lossPercent(FeedClass.GRAIN, inBunks);
        var offered = feeds.stream()
                .map(feed -> isSeen(feed)
                        ? feed
                        : feed.losing(Math.min(
                                feed.feedingLossPercent(),
                                lossPercent(feed.feed().feedClass(), inBunks))))
                .toList();
        var options = new DietOptions(
                        Set.copyOf(wanted.limitsOff()),
                        wanted.feeds().stream()
                                .map(wish -> limit(wish, offered))
                                .toList(),
                        outfit.timesADay(),
                        outfit.mixing(),
                        new DietOptions.Water(
                                worst(HazardClass.Hazard.NO3W) / WaterSource.NO3_OF_N, worst(HazardClass.Hazard.SO4W)),
                        wanted.way() == null ? WayOfFeeding.PUT_OUT_DAILY : wanted.way(),
                        false,
                        true)
                .losing(1 / (1 - lost / 100))
                .withoutStraw(HayFacts.strawNotFor(group.animals(), group.conditionScore(), offered));
        return new LeastCostRation(offered, need, options, wanted.sureness(), LeastCostRation.Amounts.AS_FED);
    }

    /** Whether what is left of it was looked at, so that no usual share counts beside that. */
    private boolean isSeen(PricedFeed feed) {
        return !ranch.weeks().isEmpty()
                && ranch.weeks().values().stream()
                        .anyMatch(week -> week.left().keySet().stream()
                                .anyMatch(id -> id.toString().equals(feed.feed().id())));
    }

    /** Of the worst water that was tested, mg a liter: nobody says which group drinks where. */
    private double worst(HazardClass.Hazard hazard) {
        return ranch.waters().values().stream()
                .mapToDouble(water -> water.found().getOrDefault(hazard, 0.0))
                .max()
                .orElse(0);
    }

    private static DietOptions.FeedLimit limit(Wishes.Wish wish, List<PricedFeed> feeds) {
        var id = wish.feed().toString();
        if (wish.amount().unit().kind() == Kind.SHARE) {
            return new DietOptions.FeedLimit(
                    id, wish.sense(), Per.SHARE_PCT, wish.amount().base());
        }
        double putOut = wish.amount().in(Unit.KILOGRAM_A_DAY);
        double perKgEaten = feeds.stream()
                .filter(f -> f.feed().id().equals(id))
                .mapToDouble(f -> f.putOut(1))
                .findFirst()
                .orElse(1);
        return new DietOptions.FeedLimit(id, wish.sense(), Per.KG_PUT_OUT, putOut, perKgEaten);
    }

    /** Kilograms of a bale of what this portion is; empty for what is not baled. */
    public OptionalDouble baleKg(Portion portion) {
        var lot = ranch.lots().get(idOf(portion));
        return lot == null ? OptionalDouble.empty() : LotTons.baleKg(lot);
    }

    private static UUID idOf(Portion portion) {
        return UUID.fromString(portion.feed().feed().id());
    }
}
