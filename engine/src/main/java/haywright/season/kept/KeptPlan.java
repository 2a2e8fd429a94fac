package haywright.season.kept;

import haywright.season.Orders;
import haywright.season.given.Season;
import haywright.season.given.SeasonFeed;
import haywright.season.play.Plan;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;

/**
 * Today's plan: what to buy, what to feed this week, and who eats which lot until grass. All kg are as fed.
 *
 * @param lasts whether nothing has to be found beyond what is on hand and for sale
 * @param sells this week, of what is over
 * @param spoils off open silage faces until grass, because these cattle do not eat it fast enough
 * @param emergencyKg of hay beyond that
 * @param rations this week, in the order of the ranch
 * @param stretches from the first day to grass
 * @param lots what is on hand and may be fed
 * @param waiting lots that no group may be fed until they are tested
 * @param findPerKg dollars a kg as fed that hay beyond all that is counted at; null in a book of an earlier build
 * @param findEntered dollars a kg as fed that the ranch entered for it; null where it entered none
 */
public record KeptPlan(
        boolean lasts,
        List<Buy> buys,
        List<Sale> sells,
        List<Spoils> spoils,
        double emergencyKg,
        List<Ration> rations,
        List<Stretch> stretches,
        List<LotEnds> lots,
        List<Lot> waiting,
        List<Plan.Unmet> unmet,
        @Nullable Double findPerKg,
        @Nullable Double findEntered) {
    private static final double THOUSAND = 1000;

    public KeptPlan {
        buys = List.copyOf(buys);
        sells = List.copyOf(sells);
        spoils = List.copyOf(spoils);
        rations = List.copyOf(rations);
        stretches = List.copyOf(stretches);
        lots = List.copyOf(lots);
        waiting = List.copyOf(waiting);
        unmet = List.copyOf(unmet);
    }

    /**
     * @param by the day from which the plan counts on it
     * @param isNow whether that is this week
     * @param kg that are ordered. @param askedKg that the plan asks for. @param loads 0 where it comes by the pound
     * @param dollarsPerKg in the yard
     * @param isWaitingSaid whether the ranch said what it costs later and in a hard winter
     */
    public record Buy(
            String feed,
            String name,
            LocalDate by,
            boolean isNow,
            double kg,
            double askedKg,
            int loads,
            double dollarsPerKg,
            boolean isWaitingSaid) {}

    /** @param dollarsPerKg as it is in the yard. @param leftKg on hand after that */
    public record Sale(String feed, String name, double kg, double dollarsPerKg, double leftKg) {}

    /** @param aDayKg least that comes off its face. @param isFaceSaid whether the ranch said so */
    public record Spoils(String feed, String name, double kg, double aDayKg, boolean isFaceSaid) {}

    /** @param group its id */
    public record Ration(UUID group, String name, int head, List<Portion> portions) {}

    /** @param kg put out, per head per day */
    public record Portion(String feed, String name, double kg) {}

    /** @param to the day after the last */
    public record Stretch(LocalDate from, LocalDate to, List<Eats> eats) {}

    /** @param kg put out in all days of the stretch for the whole group */
    public record Eats(UUID group, String groupName, String feed, String name, boolean isForage, double kg) {}

    public record Lot(String feed, String name, double kg) {}

    /** @param usedUp the day after which none is left; null where it lasts */
    public record LotEnds(
            String feed,
            String name,
            double kg,
            boolean isForage,
            @Nullable LocalDate usedUp) {}

    /** @param season of the same ranch and day */
    public static KeptPlan of(Plan plan, Season season) {
        var orders = Orders.of(plan, season);
        return new KeptPlan(
                plan.lasts(),
                orders.buys().stream()
                        .map(buy -> new Buy(
                                buy.feed().id(),
                                buy.feed().name(),
                                buy.by(),
                                buy.isNow(),
                                kg(buy.kg()),
                                kg(buy.askedKg()),
                                buy.loads(),
                                buy.dollarsPerKg(),
                                buy.feed().supply().isWaitingSaid()
                                        || !buy.feed().isTracked()))
                        .toList(),
                orders.sells().stream()
                        .map(sale -> new Sale(
                                sale.feed().id(),
                                sale.feed().name(),
                                kg(sale.kg()),
                                sale.feed().meant().sells(),
                                kg(Math.max(0, sale.feed().kg() - sale.kg()))))
                        .toList(),
                season.feeds().stream()
                        .filter(feed -> plan.spoils().containsKey(feed.id()))
                        .map(feed -> new Spoils(
                                feed.id(),
                                feed.name(),
                                kg(plan.spoils().getOrDefault(feed.id(), 0.0)),
                                kg(feed.meant().faceADay()),
                                feed.meant().isFaceSaid()))
                        .toList(),
                kg(plan.emergencyKg()),
                rations(orders, season),
                plan.stretches().stream()
                        .map(stretch -> stretch(stretch, season))
                        .filter(stretch -> !stretch.eats.isEmpty())
                        .toList(),
                IntStream.range(0, season.feeds().size())
                        .filter(f -> season.feeds().get(f).kg() > 0 && season.mayBeFed(f))
                        .mapToObj(season.feeds()::get)
                        .map(feed -> new LotEnds(
                                feed.id(),
                                feed.name(),
                                kg(feed.kg()),
                                feed.isForage(),
                                plan.runsOut().get(feed.id())))
                        .toList(),
                IntStream.range(0, season.feeds().size())
                        // straw waits for its nitrate as hay does, and is in what a test is worth
                        .filter(f -> (season.feeds().get(f).isForage()
                                        || season.feeds().get(f).priced().feed().nitrateDanger())
                                && season.feeds().get(f).kg() > 0
                                && !season.mayBeFed(f))
                        .mapToObj(season.feeds()::get)
                        .map(feed -> new Lot(feed.id(), feed.name(), kg(feed.kg())))
                        .toList(),
                plan.unmet(),
                season.emergencyPrice(),
                season.emergencyEntered());
    }

    private static List<Ration> rations(Orders orders, Season season) {
        var all = new ArrayList<Ration>();
        for (int e = 0; e < season.eaters().size(); e++) {
            var group = season.eaters().get(e).group();
            all.add(new Ration(
                    group.id(),
                    group.name(),
                    group.head(),
                    orders.groups().get(e).feeds().stream()
                            .filter(fed -> fed.kg() > 0)
                            .map(fed -> new Portion(fed.feed().id(), fed.feed().name(), thousandth(fed.kg())))
                            .toList()));
        }
        return all;
    }

    private static Stretch stretch(Plan.Stretch stretch, Season season) {
        var eats = new ArrayList<Eats>();
        for (int e = 0; e < season.eaters().size(); e++) {
            var group = season.eaters().get(e).group();
            for (int f = 0; f < season.feeds().size(); f++) {
                var feed = season.feeds().get(f);
                double put = feed.priced().putOut(stretch.decision().eaten()[e][f]);
                if (put >= 1) {
                    eats.add(new Eats(group.id(), group.name(), feed.id(), feed.name(), isHay(feed), kg(put)));
                }
            }
        }
        return new Stretch(stretch.from(), stretch.to(), eats);
    }

    private static boolean isHay(SeasonFeed feed) {
        return feed.isForage() && !feed.isEmergency();
    }

    /** The day a lot is used up by the plan; empty where it lasts or is none of these. */
    public Optional<LocalDate> usedUp(String lot) {
        return lots.stream()
                .filter(one -> one.feed.equals(lot) && one.usedUp != null)
                .findFirst()
                .map(LotEnds::usedUp);
    }

    /** kg put out a day by this week's rations for all head together, by feed. */
    public Map<String, Double> aDay() {
        var all = new LinkedHashMap<String, Double>();
        rations.forEach(ration -> ration.portions()
                .forEach(portion -> all.merge(portion.feed(), ration.head() * portion.kg(), Double::sum)));
        return all;
    }

    /** To a tenth: what is kept is read again to the same digits. */
    static double kg(double kg) {
        return Math.round(kg * 10) / 10.0;
    }

    private static double thousandth(double kg) {
        return Math.round(kg * THOUSAND) / THOUSAND;
    }
}
