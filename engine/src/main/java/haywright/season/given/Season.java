package haywright.season.given;

import haywright.cattle.AnimalClass;
import haywright.cattle.herd.Group;
import haywright.cattle.need.NeedByWeek;
import haywright.diet.Feed;
import haywright.diet.WayOfFeeding;
import haywright.forage.Analyte;
import haywright.forage.Composition;
import haywright.forage.FeedClass;
import haywright.outlook.HerdWeather;
import haywright.outlook.LotTons;
import haywright.outlook.Yard;
import haywright.quantity.Unit;
import haywright.ranch.Lot;
import haywright.ranch.Ranch;
import haywright.ration.PricedFeed;
import haywright.weather.KeptWinter;
import haywright.workings.Problem;
import haywright.workings.Refused;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.UUID;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;

/**
 * One ranch from a day until grass, worked out once: its feeds, its groups with what they must be fed in each week, and
 * what they would have needed in every winter that is known. Nothing in it changes.
 */
public final class Season {
    public static final int DAYS_A_WEEK = 7;
    private static final int MIDDLE_OF_WEEK = 3;
    private static final int LONGEST = 300;
    private static final double NINE_IN_TEN = 1.645;
    private static final double DAYS_A_MONTH = 30;
    /** More than any ranch has, and still a number that a program can hold. */
    private static final double MOST_KG = 1e12;

    private final Setting setting;
    private final List<SeasonFeed> feeds;
    private final List<Eater> eaters;
    private final NeedRecord record;
    private final Appetite appetite;

    /**
     * Where and when.
     *
     * @param today the first day
     * @param weeks until the last group is said to go to grass
     * @param begins the first day of each week, those in which grass may come late included
     * @param changes what is asked beside what the ranch has
     */
    public record Setting(Ranch ranch, LocalDate today, int weeks, List<LocalDate> begins, Changes changes) {}

    /** @param usual what one head needs in each week of usual weather */
    public record Herd(Group group, NeedByWeek needs, List<NeedRecord.Week> usual) {}

    private Season(Setting setting, List<SeasonFeed> feeds, List<Eater> eaters, NeedRecord record, Appetite appetite) {
        this.setting = setting;
        this.feeds = List.copyOf(feeds);
        this.eaters = List.copyOf(eaters);
        this.record = record;
        this.appetite = appetite;
    }

    /**
     * @throws Refused where there are no cattle, nothing to feed, no day of grass or one that is past
     */
    public static Season of(Yard yard) {
        return of(yard, Changes.NONE);
    }

    /**
     * What is asked beside what the ranch has.
     *
     * @param cleared lots that count as tested and free of nitrate
     * @param away weeks from the first day in which mature cows feed elsewhere
     * @param firstWeek kg of dry matter that one head eats a day of each feed in the first week, by group and feed, where that
     *     is settled already; a plan goes on from there
     * @param emergencyPrice dollars a kg as fed of hay that has to be found, where it is to be that of another season: what
     *     one more feed for sale saves is none of its price, though hay that is found costs more than all that is listed
     */
    public record Changes(
            Set<String> cleared, int away, Map<UUID, Map<String, Double>> firstWeek, OptionalDouble emergencyPrice) {
        public static final Changes NONE = new Changes(Set.of(), 0, Map.of());

        /** By the dearest hay that is known. */
        public Changes(Set<String> cleared, int away, Map<UUID, Map<String, Double>> firstWeek) {
            this(cleared, away, firstWeek, OptionalDouble.empty());
        }

        public Changes {
            cleared = Set.copyOf(cleared);
            firstWeek = Map.copyOf(firstWeek);
        }
    }

    /** The same, with something changed. */
    public static Season of(Yard yard, Changes changes) {
        var ranch = yard.ranch();
        Refused.unlessEmpty(lacking(yard));
        var turnout = Objects.requireNonNull(ranch.turnout());
        int days = (int) ChronoUnit.DAYS.between(yard.day(), turnout);
        int longest = ranch.groups().values().stream()
                .mapToInt(group -> days(group, yard.day(), days))
                .max()
                .orElseThrow();
        int weeks = (longest + DAYS_A_WEEK - 1) / DAYS_A_WEEK;
        int late = (int) Facts.value("latest_days") / DAYS_A_WEEK;
        var begins = IntStream.range(0, weeks + late)
                .mapToObj(week -> yard.day().plusWeeks(week))
                .toList();
        var setting = new Setting(ranch, yard.day(), weeks, begins, changes);
        var offered = new ArrayList<PricedFeed>();
        yard.feeds()
                .forEach(feed ->
                        offered.add(changes.cleared().contains(feed.feed().id()) ? cleared(feed) : feed));
        offered.add(EmergencyHay.of(yard, changes.emergencyPrice()));
        var index = new HashMap<String, Integer>();
        for (int f = 0; f < offered.size(); f++) {
            index.put(offered.get(f).feed().id(), f);
        }
        var weather = new HerdWeather(ranch.settings());
        var herds = new ArrayList<Herd>();
        var eaters = new ArrayList<Eater>();
        for (var asTyped : ranch.groups().values()) {
            // condition to regain is the plan's to choose, not a need beside it
            var group = asTyped.holding();
            var stages = new ArrayList<Stage>();
            var usual = new ArrayList<NeedRecord.Week>();
            for (var begin : begins) {
                var need = new SteadyNeed(weather.need(group, begin.plusDays(MIDDLE_OF_WEEK)));
                var question = yard.question(group, offered, need);
                stages.add(Stage.of(question.diet(), index, need.nem()));
                usual.add(new NeedRecord.Week(need.nem(), need.intakeFactor()));
            }
            var way = yard.question(group, offered, stages.get(0).diet().need())
                    .options()
                    .way();
            eaters.add(eater(asTyped, stages, way, setting, days, firstWeek(changes, asTyped, index)));
            herds.add(new Herd(
                    group,
                    NeedByWeek.of(
                            group, yard.day(), begins.size(), ranch.settings().system()),
                    usual));
        }
        var known = ranch.settings().weather() == null ? List.<KeptWinter>of() : ranch.knownWinters();
        return new Season(
                setting,
                season(ranch, offered, eaters),
                eaters,
                NeedRecord.of(setting, known, herds),
                Appetite.of(yard));
    }

    private static Eater eater(
            Group group,
            List<Stage> stages,
            WayOfFeeding way,
            Setting setting,
            int days,
            Map<Integer, Double> firstWeek) {
        boolean grows = stages.get(0).growth().isPresent();
        return new Eater(
                group,
                group.head(),
                stages,
                grows ? Optional.empty() : Optional.of(Body.of(group, setting.today())),
                days(group, setting.today(), days),
                group.animals() == AnimalClass.MATURE_COW ? setting.changes().away() : 0,
                way,
                firstWeek);
    }

    private static Map<Integer, Double> firstWeek(Changes changes, Group group, Map<String, Integer> index) {
        var kg = new HashMap<Integer, Double>();
        changes.firstWeek().getOrDefault(group.id(), Map.of()).forEach((feed, eaten) -> {
            var f = index.get(feed);
            if (f != null) {
                kg.put(f, eaten);
            }
        });
        return kg;
    }

    /** With no nitrate either: that of its kind would let it be no more than part of the day, as if the test had found it. */
    private static PricedFeed cleared(PricedFeed priced) {
        var feed = priced.feed();
        var expected = new HashMap<>(feed.composition().expected());
        expected.remove(Analyte.NO3N);
        var safe = new Composition(feed.composition().values(), expected);
        return priced.madeOf(new Feed(feed.id(), feed.name(), feed.feedClass(), safe, false, feed.lot()));
    }

    private static int days(Group group, LocalDate today, int usual) {
        var own = group.turnout();
        long days = own == null ? usual : ChronoUnit.DAYS.between(today, own);
        return days < 1 || days > LONGEST ? usual : (int) days;
    }

    /** What has to be entered before a winter can be planned; empty where nothing is. */
    public static List<Problem> lacking(Yard yard) {
        var ranch = yard.ranch();
        var problems = new ArrayList<Problem>();
        if (ranch.groups().isEmpty()) {
            problems.add(new Problem("groups", "none", "a winter is planned for cattle", "Enter a group of cattle."));
        }
        if (yard.feeds().isEmpty()) {
            problems.add(new Problem(
                    "lots", "none", "a winter is planned on feed with a price", "Enter a lot, or a feed for sale."));
        }
        var turnout = ranch.turnout();
        long days = turnout == null ? 0 : ChronoUnit.DAYS.between(yard.day(), turnout);
        if (turnout == null) {
            problems.add(new Problem(
                    "turnout",
                    "not said",
                    "feed has to last until turnout",
                    "Enter the turnout date in the settings."));
        } else if (days < 1 || days > LONGEST) {
            problems.add(new Problem(
                    "turnout",
                    turnout.toString(),
                    "turnout is 1 to 300 days after " + yard.day(),
                    "Is the date of another year?"));
        }
        return problems;
    }

    private static List<SeasonFeed> season(Ranch ranch, List<PricedFeed> offered, List<Eater> eaters) {
        var all = new ArrayList<SeasonFeed>();
        for (int f = 0; f < offered.size(); f++) {
            var feed = offered.get(f);
            boolean emergency = f == offered.size() - 1;
            var id = emergency ? null : idOf(feed);
            var lot = id == null ? null : ranch.lots().get(id);
            // of a lot whose tons nobody said nothing is counted on
            double kg = lot == null ? 0 : Math.min(MOST_KG, LotTons.of(lot).kg().orElse(0));
            var used = lot == null ? null : LotTons.of(lot).used();
            var sale = id == null ? null : ranch.feedsForSale().get(id);
            double endless = sale != null && Supply.isSaid(sale) ? MOST_KG : Double.POSITIVE_INFINITY;
            all.add(new SeasonFeed(
                    feed,
                    kg,
                    used == null ? 0 : used.doubt() / NINE_IN_TEN,
                    Facts.value(loss(lot, feed.feed().feedClass())) / 100 / DAYS_A_MONTH,
                    carry(lot, feed),
                    feed.own() ? 0 : Math.min(feed.kgAtHand(), endless),
                    Meant.of(ranch, lot, kg, mayBeFed(eaters, f)),
                    Supply.of(sale),
                    emergency));
        }
        return all;
    }

    private static @Nullable UUID idOf(PricedFeed feed) {
        try {
            return UUID.fromString(feed.feed().id());
        } catch (IllegalArgumentException e) {
            return null;
        }
    }

    private static String loss(@Nullable Lot lot, FeedClass kind) {
        if (!kind.isForage()) {
            return "loss_inside";
        }
        var storage = lot == null ? null : lot.storage();
        if (storage == null) {
            return kind.isHay() ? "loss_covered" : "loss_silage";
        }
        return switch (storage) {
            case BARN, BIN -> "loss_inside";
            case TARPED, WRAPPED, OUTSIDE_OFF_GROUND -> "loss_covered";
            case OUTSIDE_ON_GROUND, STANDING -> "loss_outside";
            case BUNKER, BAG, SILO -> "loss_silage";
        };
    }

    /** What a ton left at turnout is worth, as a share of what it would cost to replace. */
    private static double carry(@Nullable Lot lot, PricedFeed feed) {
        var said = lot == null || lot.use() == null ? null : lot.use().left();
        return said == null
                ? Facts.value(carry(feed.feed().feedClass()))
                : said.in(Unit.DOLLAR_PER_KG) / feed.pricePerKgAsFed();
    }

    private static String carry(FeedClass kind) {
        return !kind.isForage()
                ? "carry_other"
                : kind.isHay() || kind == FeedClass.STRAW ? "carry_hay" : "carry_silage";
    }

    /** Whether some group may have this feed in some week; not so a lot that has to be tested first. */
    public boolean mayBeFed(int feed) {
        return mayBeFed(eaters, feed);
    }

    /** By feed, whether the storm reserve may be of it: hay or silage that some group may have. */
    public boolean[] reserves() {
        var may = new boolean[feeds().size()];
        for (int f = 0; f < may.length; f++) {
            may[f] = feeds().get(f).isForage() && mayBeFed(f);
        }
        return may;
    }

    private static boolean mayBeFed(List<Eater> eaters, int feed) {
        return eaters.stream()
                .flatMap(eater -> eater.stages().stream())
                .anyMatch(stage -> Arrays.stream(stage.feeds()).anyMatch(f -> f == feed));
    }

    /** The week in which the first calves are due; −1 where none are ahead. */
    public int calvingWeek() {
        return eaters.stream()
                .flatMap(eater -> eater.body().stream())
                .mapToInt(Body::calvingDay)
                .filter(day -> day >= 0)
                .map(day -> day / DAYS_A_WEEK)
                .min()
                .orElse(-1);
    }

    /** The day grass is expected. */
    public LocalDate grass() {
        return Objects.requireNonNull(ranch().turnout());
    }

    public LocalDate today() {
        return setting.today();
    }

    public Ranch ranch() {
        return setting.ranch();
    }

    public Changes changes() {
        return setting.changes();
    }

    /** Until the last group is said to go to grass. */
    public int weeks() {
        return setting.weeks();
    }

    /** With those in which grass may come late. */
    public int allWeeks() {
        return setting.begins().size();
    }

    public LocalDate begins(int week) {
        return setting.today().plusWeeks(week);
    }

    /** Own lots first, then what is for sale; emergency hay last. */
    public List<SeasonFeed> feeds() {
        return feeds;
    }

    /** Head of a group, in the ranch's order. */
    public int head(int eater) {
        return eaters.get(eater).head();
    }

    /** A group's name, in the ranch's order. */
    public String name(int eater) {
        return eaters.get(eater).group().name();
    }

    public List<Eater> eaters() {
        return eaters;
    }

    public NeedRecord record() {
        return record;
    }

    public Appetite appetite() {
        return appetite;
    }

    /** Dollars a kg as fed that the ranch entered for such hay; null where it entered none. */
    public @Nullable Double emergencyEntered() {
        var entered = setting.ranch().settings().findPrice();
        return entered == null ? null : entered.in(Unit.DOLLAR_PER_KG);
    }

    /** Dollars a kg as fed of hay that has to be found. */
    public double emergencyPrice() {
        return feeds.get(emergency()).price();
    }

    public int emergency() {
        return feeds.size() - 1;
    }
}
