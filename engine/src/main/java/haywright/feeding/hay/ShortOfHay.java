package haywright.feeding.hay;

import haywright.cattle.herd.Group;
import haywright.cattle.herd.Regain;
import haywright.diet.LeftOut;
import haywright.diet.WayOfFeeding;
import haywright.feeding.Rations;
import haywright.outlook.Yard;
import haywright.quantity.Unit;
import haywright.ranch.Ranch;
import haywright.ration.Allotment;
import haywright.ration.PricedFeed;
import haywright.season.WinterPlan;
import haywright.workings.Problem;
import haywright.workings.Refused;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/**
 * Whether hay lasts until grass, and what to do where it does not. Hay is hay and silage here; straw and stalks are not.
 * Tons are of this ranch's hay as fed: dry matter put out over the mean dry matter of what lies there.
 * <pre>
 * short = max(a·d − T, M)        gone = today + T/a
 * </pre>
 * T is what lies there and may be fed, before anything is bought, a what is put out a day as fed now, d the days until grass, M what is missing when
 * everybody is fed to need: the least that a program of all groups leaves missing ({@link Allotment#leastMissing}).
 */
public final class ShortOfHay {
    /** Days by which 195 tons at 1.95 a day may miss 100. */
    private static final double HAIR = 1e-6;

    private final Rations rations;
    private final Yard yard;
    private final Asked asked;
    private final HayDates dates;
    private final HayEaters eaters;
    private final HayTons tons;
    private final double onHand;
    private final double canBeHad;
    private final double aDay;
    private final boolean isSaid;
    private final int days;
    private final Allotment byNeed;
    private @Nullable HayLadder ladder;

    /**
     * What the ladder has to be told.
     *
     * @param sold head of open, old and late cows to sell; null for those that are not due, or late
     * @param dollarsSold what one of them brings; null where nobody said
     * @param away head of dry cows that can feed on stalks or elsewhere; null where nobody said
     * @param awayDays for how long
     * @param dollarsAway a head and day; null where nobody said
     * @param not steps that are not to be taken
     */
    public record Asked(
            @Nullable Integer sold,
            @Nullable Double dollarsSold,
            @Nullable Integer away,
            @Nullable Integer awayDays,
            @Nullable Double dollarsAway,
            Set<HayStep.What> not) {
        /** Nobody said anything. */
        public static final Asked NOTHING = new Asked(null, null, null, null, null);

        /** All steps are taken. */
        public Asked(
                @Nullable Integer sold,
                @Nullable Double dollarsSold,
                @Nullable Integer away,
                @Nullable Integer awayDays,
                @Nullable Double dollarsAway) {
            this(sold, dollarsSold, away, awayDays, dollarsAway, Set.of());
        }

        public Asked {
            not = Set.copyOf(not);
            var problems = new ArrayList<Problem>();
            least("sold", sold, problems);
            least("dollarsSold", dollarsSold, problems);
            least("away", away, problems);
            least("awayDays", awayDays, problems);
            least("dollarsAway", dollarsAway, problems);
            Refused.unlessEmpty(problems);
        }

        private static void least(String field, @Nullable Number value, List<Problem> problems) {
            if (value != null && value.doubleValue() < 0) {
                problems.add(new Problem(field, value.toString(), "this is 0 or more", "Leave it empty if not known."));
            }
        }
    }

    /** What has to be known first. */
    public enum Lacks {
        CATTLE,
        HAY,
        GRASS
    }

    /**
     * What one group gets if all steps are taken, from today to grass.
     *
     * @param head that stay
     * @param rows those that have calved and the others apart, one stretch of days after the other
     * @param unmet by need, the largest share that is not met at any time; empty where all is met
     * @param scoreLost points of condition that one in milk loses until grass
     * @param stops what they get now and no ration may have, each with its reason
     * @param notFed names of feeds that are wished for it and may not be fed: the wish is left out
     */
    public record LeastHarm(
            Group group,
            int head,
            List<HayRow> rows,
            Map<String, Double> unmet,
            double scoreLost,
            List<LeftOut> stops,
            List<String> notFed) {}

    /**
     * What all groups take of one feed until grass, by the rows that are printed.
     *
     * @param tonsThereAre on hand or for sale; infinite where nobody said
     */
    public record Used(PricedFeed feed, double tons, double tonsThereAre) {}

    /** Hay that is for sale, in tons of it as fed. */
    public record ToBuy(PricedFeed feed, double tons) {}

    /** Nothing where there is an answer. */
    public static List<Lacks> lacks(Yard yard) {
        var lacks = new ArrayList<Lacks>();
        if (yard.ranch().groups().isEmpty()) {
            lacks.add(Lacks.CATTLE);
        }
        if (HayEaters.counted(yard).stream().noneMatch(PricedFeed::isHayOrSilage)) {
            lacks.add(Lacks.HAY);
        }
        if (yard.daysToGrass().isEmpty()) {
            lacks.add(Lacks.GRASS);
        }
        return lacks;
    }

    /** Empty where something is lacking; kept with the rations where nothing is asked. @throws Refused where a group cannot be, or cannot be fed */
    public static Optional<ShortOfHay> of(Rations rations, Asked asked) {
        if (!lacks(rations.yard()).isEmpty()) {
            return Optional.empty();
        }
        return Optional.of(
                asked.equals(Asked.NOTHING)
                        ? rations.once(ShortOfHay.class, () -> new ShortOfHay(rations, asked))
                        : new ShortOfHay(rations, asked));
    }

    private ShortOfHay(Rations rations, Asked asked) {
        this.rations = rations;
        yard = rations.yard();
        this.asked = asked;
        dates = HayDates.of(
                yard, asked.away() == null ? null : Objects.requireNonNullElse(asked.awayDays(), HayLadder.A_MONTH));
        eaters = new HayEaters(rations, dates);
        days = yard.daysToGrass().orElseThrow();
        tons = HayTons.of(eaters.hay());
        onHand = tons.tons(HayTons.dry(tons.hay().stream().filter(PricedFeed::own)));
        canBeHad = tons.tons(HayTons.dry(tons.hay().stream().filter(feed -> !feed.own())));
        byNeed = HayLadder.solve(yard, eaters, HayPlan.NOTHING);
        var now = new HayFedNow(rations, tons, byNeed);
        isSaid = now.isSaid();
        aDay = tons.tons(now.dryADay());
    }

    private LocalDate day() {
        return yard.day();
    }

    // The answer

    public Ranch ranch() {
        return yard.ranch();
    }

    /** For whom the plan keeps a lot that no ration has today; empty for one that is fed, or never. */
    public Optional<WinterPlan.Kept> kept(PricedFeed lot) {
        return rations.kept(lot.feed().id());
    }

    /** Of the winter, without any of the steps. */
    public Optional<WinterPlan> plan() {
        return rations.plan();
    }

    public LocalDate today() {
        return day();
    }

    public LocalDate grass() {
        return day().plusDays(days);
    }

    public int daysToGrass() {
        return days;
    }

    /** Tons of hay and silage of the ranch, and of none that is left out of every ration. */
    public double tonsOnHand() {
        return onHand;
    }

    /** Tons of hay and silage for sale of which the ranch said how much can be had. */
    public double tonsThatCanBeHad() {
        return canBeHad;
    }

    /** Tons that go out a day, as fed now or by today's rations. */
    public double tonsADay() {
        return aDay;
    }

    /** Whether every group's feed of today is said; else rations stand in. */
    public boolean isFedNowSaid() {
        return isSaid;
    }

    /** The day on which nothing on hand is left, fed as now; empty where it lasts until grass. */
    public Optional<LocalDate> gone() {
        double lasts = onHand / aDay;
        return lasts < days ? Optional.of(day().plusDays((long) (lasts + HAIR))) : Optional.empty();
    }

    /** a·d − T, tons; 0 or less where it lasts. */
    private double tonsShortAsNow() {
        return aDay * days - onHand;
    }

    /** Tons short until grass of what is on hand; 0 where that lasts. */
    public double tonsShort() {
        double most = Math.max(tonsShortAsNow(), tons.missing(byNeed));
        return most < HayTons.NOTHING ? 0 : most;
    }

    public boolean isShort() {
        return tonsShort() > 0;
    }

    private synchronized HayLadder ladder() {
        if (ladder == null) {
            ladder = new HayLadder(yard, eaters, dates, tons, asked, byNeed, tonsShortAsNow());
        }
        return ladder;
    }

    /** In the order in which they are to be taken; empty where hay lasts. */
    public List<HayStep> steps() {
        return isShort() ? ladder().steps() : List.of();
    }

    /** Tons of hay that {@link #buys} comes to. */
    public double tonsBought() {
        return tons.tons(buys().stream()
                .mapToDouble(buy -> HayTons.dry(buy.feed(), Unit.TON.toBase(buy.tons())))
                .sum());
    }

    /** Tons still short when all steps are taken. */
    public double tonsShortAtLast() {
        return tons.missing(ladder().last());
    }

    /** Tons of hay that all groups take until grass when all steps are taken. */
    public double tonsTakenAtLast() {
        return tons.taken(ladder().last());
    }

    /** What is fed in place of hay that the ranch does not list, at a usual price, as far as a step takes it. */
    public List<PricedFeed> assumed() {
        var taken = ladder().last().eaten().stream()
                .flatMap(eaten -> eaten.feeds().keySet().stream())
                .map(feed -> feed.feed().id())
                .collect(Collectors.toSet());
        return eaters.assumed().stream()
                .filter(feed -> taken.contains(feed.feed().id()))
                .toList();
    }

    /** Hay and silage of the ranch that is counted. */
    public List<PricedFeed> lots() {
        return tons.hay().stream().filter(PricedFeed::own).toList();
    }

    /** Hay and silage of the ranch that no group may have yet, such as an untested lot. */
    public List<PricedFeed> leftOut() {
        return eaters.leftOut();
    }

    /** Of these what only a test of its nitrate keeps out. */
    public List<PricedFeed> untested() {
        return eaters.untested();
    }

    /** Tons of hay that {@link #untested} comes to, if it is found safe. */
    public double tonsUntested() {
        return tons.tons(HayTons.dry(untested().stream()));
    }

    /** What of the hay that is listed for sale a step buys; empty where none is. */
    public List<ToBuy> buys() {
        var bought = isShort() ? ladder().bought() : Map.<String, Double>of();
        return eaters.feeds().stream()
                .filter(feed -> bought.containsKey(feed.feed().id()))
                .map(feed -> new ToBuy(
                        feed, Unit.TON.fromBase(bought.getOrDefault(feed.feed().id(), 0.0))))
                .toList();
    }

    /** What every group gets if all steps are taken. */
    public List<LeastHarm> leastHarm() {
        var rows = new HayRows(rations, eaters, ladder().plan(), ladder().last());
        var heads = new HayHeads(yard, dates, ladder().plan());
        return yard.ranch().groups().values().stream()
                .filter(group -> heads.stay(group) > 0)
                .map(group -> new LeastHarm(
                        group,
                        heads.stay(group),
                        rows.of(group),
                        rows.unmet(group),
                        ScoreAtCalving.lostInMilk(yard, group, eaters.with(ladder().plan()), ladder().last()),
                        eaters.questions().stops(group),
                        eaters.questions().vainWishes(group)))
                .toList();
    }

    /** What the rows of all groups come to, feed by feed: hay first, the most first. */
    public List<Used> used() {
        var tons = new LinkedHashMap<String, Double>();
        var feeds = new LinkedHashMap<String, PricedFeed>();
        leastHarm().stream()
                .flatMap(least -> least.rows().stream())
                .forEach(row -> row.feeds().keySet().forEach(feed -> {
                    feeds.putIfAbsent(feed.feed().id(), feed);
                    tons.merge(feed.feed().id(), row.tons(feed), Double::sum);
                }));
        return tons.entrySet().stream()
                .sorted(Comparator.comparing((Map.Entry<String, Double> e) ->
                                !Objects.requireNonNull(feeds.get(e.getKey())).isHayOrSilage())
                        .thenComparing(
                                Map.Entry.<String, Double>comparingByValue().reversed()))
                .map(e -> new Used(
                        Objects.requireNonNull(feeds.get(e.getKey())),
                        e.getValue(),
                        yard.feeds().stream()
                                .filter(feed -> feed.feed().id().equals(e.getKey()))
                                .mapToDouble(feed -> Unit.TON.fromBase(feed.kgAtHand()))
                                .findFirst()
                                .orElse(Double.POSITIVE_INFINITY)))
                .toList();
    }

    /** The first day of a row of limited hay; empty where no row has any. */
    public Optional<LocalDate> limitedFrom() {
        return leastHarm().stream()
                .flatMap(least -> least.rows().stream())
                .filter(HayRow::isLimited)
                .map(HayRow::from)
                .min(LocalDate::compareTo);
    }

    /** Whether hay is limited in no step since the strong cows would eat the others’ grain. */
    public boolean isBunkTooShort() {
        return BunkTurns.isBunkTooShort(yard);
    }

    /** The first step that changes what is fed, so that the rows hold from its day; empty where none does. */
    public Optional<HayStep> firstThatFeeds() {
        return steps().stream()
                .filter(step -> step.saves() > 0 && step.what().isFeeding())
                .min(Comparator.comparing(HayStep::by));
    }

    /** Whether some group is taken to be fed free choice, which has to end where hay is limited. */
    public boolean isFreeChoice() {
        return yard.ranch().wishes().values().stream().anyMatch(wish -> wish.way() == WayOfFeeding.FREE_CHOICE);
    }

    /**
     * The cheapest hay that is for sale, as much as is as good as what is short beyond all that can be had; empty where none
     * is for sale, or nothing is short beyond that.
     */
    public Optional<ToBuy> toBuy() {
        double rest = tonsShort() - canBeHad;
        return rest < HayTons.NOTHING
                ? Optional.empty()
                : yard.feeds().stream()
                        .filter(feed -> !feed.own() && feed.feed().feedClass().isHay())
                        .min(Comparator.comparingDouble(feed -> feed.pricePerKgAsFed() / feed.dryMatterPercent()))
                        .map(feed -> new ToBuy(
                                feed, rest * tons.dryMatter() / (feed.dryMatterPercent() / 100) / savedByATon(feed)));
    }

    /** Whether thin cattle are fed to calve at a better score. */
    public boolean isRegaining() {
        return yard.ranch().groups().values().stream()
                .anyMatch(group -> Regain.of(rations.planned(group), day()).isPresent());
    }

    /** Tons of hay that a ton bought of a feed saves, both as dry matter: as its step came out, else one for one. */
    private double savedByATon(PricedFeed feed) {
        double saved = steps().stream()
                .filter(step -> step.what() == HayStep.What.BUY_LISTED)
                .mapToDouble(HayStep::saves)
                .sum();
        boolean isIt = buys().stream().anyMatch(buy -> buy.feed().feed().equals(feed.feed()));
        return isIt && saved > 0 && saved < tonsBought() ? saved / tonsBought() : 1;
    }

    /** From when all that is done tells. */
    public LocalDate allTold() {
        return day().plusDays(dates.allTold(ladder().plan()));
    }
}
