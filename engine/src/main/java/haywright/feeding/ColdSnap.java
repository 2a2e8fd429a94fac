package haywright.feeding;

import haywright.cattle.cold.Hide;
import haywright.cattle.herd.Group;
import haywright.diet.Diet;
import haywright.diet.DietRow;
import haywright.diet.Feed;
import haywright.forage.Analyte;
import haywright.forage.FeedClass;
import haywright.forage.hazard.NitrateClass;
import haywright.outlook.ColdDay;
import haywright.outlook.FeedingDangers;
import haywright.outlook.HerdWeather;
import haywright.outlook.OwnRule;
import haywright.outlook.Yard;
import haywright.quantity.Unit;
import haywright.ration.HandMix;
import haywright.ration.LimitAnswer;
import haywright.ration.Portion;
import haywright.ration.PricedFeed;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Predicate;
import java.util.stream.Collectors;

/**
 * More hay for days colder than the time of the year, one head: never straw, and never a hay that is high in nitrate or a
 * toxin, or not tested for one it may have. Cattle come hungry out of a storm, and hungry cattle are the ones it kills.
 * <pre>
 * kg as fed = more Mcal NEm / (NEm · dry matter · (1 − loss)),   at most what still fits in
 * </pre>
 *
 * @see "Feeding high-nitrate hay, Nebraska Extension (Anderson): far less after a storm or a day off feed"
 * @param hay what is added: the richest clean hay or silage of the ration, else of the ranch, one of
 *     which a bale may be above the line only where there is no other; empty where none is known to be clean
 * @param inRation whether they get it already
 * @param below °C, mean of the day: from there down more is fed; coats as they usually are
 * @param perDegree kg as fed for each °C below that
 * @param steps at round tens of °F below it
 * @param wetBelow the same with wet coats
 * @param wet kg as fed at freezing with wet coats
 * @param most kg as fed that still fits in; infinite where nothing limits it
 * @param grain kg as fed more of a grain that they get already, under the limits of grain that their ration is held to; 0
 *     where they get none: it may carry them no further than that
 */
public record ColdSnap(
        Optional<PricedFeed> hay,
        boolean inRation,
        double below,
        double perDegree,
        List<Step> steps,
        double wetBelow,
        double wet,
        double most,
        double grain) {
    private static final double WARMEST = 60;
    private static final double COLDEST = -40;
    private static final int STEPS = 4;
    private static final double FREEZING = 32;

    /** Mcal of NEm a day that are worth going out for: half a pound of hay. */
    private static final double WORTH_IT = 0.25;

    /** Times the nitrate of the lot's composite. */
    private static final double A_BALE_MAY_HOLD = 2;

    /** Rows that hold grain down. */
    private static final Set<String> OF_GRAIN = Set.of("grain", "grain_careful", "fast_starch");

    /** Of a row, below which a feed is at its limit and no higher. */
    private static final double HAIR = 1e-9;

    public ColdSnap {
        steps = List.copyOf(steps);
    }

    /** @param kg as fed a head and day, on top of the ration */
    public record Step(double celsius, double kg) {}

    /** Of a mix that is fed today. */
    static Optional<ColdSnap> of(Yard yard, Group group, HandMix mix) {
        return of(yard, group, mix, yard.day());
    }

    /** @param day in whose usual cold they are fed the mix */
    public static Optional<ColdSnap> of(Yard yard, Group group, HandMix mix, LocalDate day) {
        var diet = yard.alone(group).diet();
        var clean = yard.feeds().stream()
                .filter(feed -> feed.isHayOrSilage() && nem(feed) > 0 && isClean(yard, diet, feed.feed()))
                .toList();
        var fed = mix.portions().stream()
                .map(portion -> portion.feed().feed().id())
                .collect(Collectors.toSet());
        // of a kind that gathers nitrate a bale may hold twice what the report says, and a storm leaves them hungry
        var safest = clean.stream().filter(feed -> !gathersNitrate(feed)).toList();
        Predicate<PricedFeed> inRation = feed -> fed.contains(feed.feed().id());
        Predicate<PricedFeed> onHand = feed -> feed.own() && feed.kgAtHand() > 0;
        var hay = richest(safest, inRation)
                .or(() -> richest(safest, onHand))
                .or(() -> richest(clean, inRation))
                .or(() -> richest(clean, onHand));
        return Optional.of(hay.map(found -> of(yard, group, mix, asPutOut(found, mix), inRation.test(found), day))
                .orElseGet(() -> none(hay, false, Double.POSITIVE_INFINITY)));
    }

    /** With the loss that it has in the mix. */
    private static PricedFeed asPutOut(PricedFeed feed, HandMix mix) {
        return mix.portions().stream()
                .map(Portion::feed)
                .filter(one -> one.feed().equals(feed.feed()))
                .findFirst()
                .orElse(feed);
    }

    /** Whether a bale of a lot of the ranch may be over the line of the most careful, its report below it. */
    public static boolean gathersNitrate(PricedFeed feed) {
        return feed.own()
                && feed.feed().nitrateDanger()
                && A_BALE_MAY_HOLD
                                * feed.feed().composition().value(Analyte.NO3N).orElse(0)
                        > NitrateClass.safeForPregnant().safeUpTo();
    }

    private static Optional<PricedFeed> richest(List<PricedFeed> feeds, Predicate<PricedFeed> of) {
        return feeds.stream().filter(of).max(Comparator.comparingDouble(ColdSnap::nem));
    }

    /** Whether more of it brings no danger any nearer, whatever else they eat. */
    private static boolean isClean(Yard yard, Diet diet, Feed feed) {
        return diet.leftOut().stream().noneMatch(out -> out.feed().equals(feed))
                && diet.rows().stream()
                        .filter(row -> row.kind() == DietRow.Kind.DANGER)
                        .allMatch(row -> row.law().perKg(feed, feed.composition(), row.limit()) <= HAIR)
                // whoever they are, out of a storm they are hungry: the line of the most careful for all
                && feed.composition().value(Analyte.NO3N).orElse(0)
                        <= NitrateClass.safeForPregnant().safeUpTo()
                && !FeedingDangers.mayHide(yard, diet, feed);
    }

    /** Where no cold asks for more, or nothing may be added. */
    private static ColdSnap none(Optional<PricedFeed> hay, boolean inRation, double most) {
        return new ColdSnap(hay, inRation, celsius(COLDEST), 0, List.of(), celsius(COLDEST), 0, most, 0);
    }

    private static ColdSnap of(Yard yard, Group group, HandMix mix, PricedFeed hay, boolean inRation, LocalDate day) {
        var settings = yard.ranch().settings();
        double most = room(mix, hay);
        var own = settings.weather() == null ? Optional.<OwnRule>empty() : OwnRule.of(settings, group, day);
        if (own.isEmpty() || !(own.get().perDegree() > 0)) {
            return none(Optional.of(hay), inRation, most);
        }
        // what the usual cold of the time costs they get already
        double usual = new HerdWeather(settings).need(group, day).nemCold();
        double below =
                Unit.FAHRENHEIT.fromBase(own.get().begins() - usual / own.get().perDegree());
        var steps = new ArrayList<Step>();
        double first = 10 * Math.ceil(below / 10 - 1);
        for (int i = 0; i < STEPS && first - 10 * i >= COLDEST; i++) {
            double celsius = celsius(first - 10 * i);
            steps.add(new Step(celsius, Math.min(most, kg(hay, more(yard, group, day, celsius, coats(yard))))));
        }
        return new ColdSnap(
                Optional.of(hay),
                inRation,
                celsius(below),
                kg(hay, own.get().perDegree()),
                steps,
                celsius(wet(yard, group, day)),
                Math.min(most, kg(hay, more(yard, group, day, celsius(FREEZING), Hide.WET))),
                most,
                grain(mix));
    }

    private static double nem(PricedFeed hay) {
        return hay.feed().composition().value(Analyte.NEM).orElse(0);
    }

    private static double kg(PricedFeed hay, double mcal) {
        return hay.putOut(mcal / nem(hay));
    }

    private static double more(Yard yard, Group group, LocalDate day, double celsius, Hide hide) {
        return ColdDay.of(yard.ranch().settings(), group, day, celsius, hide).more();
    }

    /** As the rule's slope has them. */
    private static Hide coats(Yard yard) {
        var weather = yard.ranch().settings().weather();
        return weather == null ? Hide.DRY : weather.coats();
    }

    private static double celsius(double fahrenheit) {
        return Unit.FAHRENHEIT.toBase(fahrenheit);
    }

    /** °F, whole: the warmest day that asks for more where coats are wet through. */
    private static double wet(Yard yard, Group group, LocalDate day) {
        double cold = COLDEST;
        double warm = WARMEST;
        while (warm - cold > 1) {
            double middle = Math.rint((cold + warm) / 2);
            if (more(yard, group, day, celsius(middle), Hide.WET) >= WORTH_IT) {
                cold = middle;
            } else {
                warm = middle;
            }
        }
        return cold;
    }

    /** kg as fed until they can hold no more. */
    private static double room(HandMix mix, PricedFeed hay) {
        return mix.limits().stream()
                .filter(limit -> limit.row().id().equals("fill"))
                .mapToDouble(limit -> hay.putOut(left(limit, hay)))
                .findFirst()
                .orElse(Double.POSITIVE_INFINITY);
    }

    private static double grain(HandMix mix) {
        return mix.portions().stream()
                .map(Portion::feed)
                .filter(feed -> feed.feed().feedClass() == FeedClass.GRAIN)
                .mapToDouble(feed -> mix.limits().stream()
                        .filter(limit -> OF_GRAIN.contains(limit.row().id()))
                        .filter(limit -> limit.row()
                                        .law()
                                        .perKg(
                                                feed.feed(),
                                                feed.feed().composition(),
                                                limit.row().limit())
                                > 0)
                        .mapToDouble(limit -> feed.putOut(left(limit, feed)))
                        .min()
                        .orElse(Double.POSITIVE_INFINITY))
                .min()
                .orElse(0);
    }

    private static double left(LimitAnswer fill, PricedFeed hay) {
        double perKg = fill.row()
                .law()
                .perKg(hay.feed(), hay.feed().composition(), fill.row().limit());
        return perKg > 0 ? Math.max(0, (fill.row().limit() - fill.supplied()) / perKg) : 0;
    }

    /** Whether the coldest step already fills them. */
    public boolean fills() {
        return !steps.isEmpty() && steps.get(steps.size() - 1).kg() >= most;
    }
}
