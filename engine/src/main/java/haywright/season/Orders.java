package haywright.season;

import haywright.season.given.Prices;
import haywright.season.given.Season;
import haywright.season.given.SeasonFeed;
import haywright.season.play.Plan;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;

/**
 * What a plan asks for: what to buy, and what each group is fed in its first week.
 *
 * @param buys in the order of the ranch's feeds
 * @param sells this week
 * @param groups in the order of the ranch
 */
public record Orders(List<Buy> buys, List<Sale> sells, List<OfGroup> groups) {
    /** As fed; less is nothing but rounding. */
    private static final double LEAST_KG = 1;

    public Orders {
        buys = List.copyOf(buys);
        sells = List.copyOf(sells);
        groups = List.copyOf(groups);
    }

    /**
     * @param by the day from which the plan counts on it, or on the first of it
     * @param isNow whether that is this week
     * @param kg as fed that are ordered: whole loads where it comes in loads
     * @param askedKg as fed that the plan asks for
     * @param loads 0 where it comes by the kilogram
     * @param dollarsPerKg as fed in the yard, on average of all of it
     */
    public record Buy(
            SeasonFeed feed, LocalDate by, boolean isNow, double kg, double askedKg, int loads, double dollarsPerKg) {}

    /** @param kg as fed that neither a hard winter nor the storm reserve needs */
    public record Sale(SeasonFeed feed, double kg) {}

    /** @param feeds all there are, those it gets nothing of too */
    public record OfGroup(String name, List<Fed> feeds) {}

    /** @param kg as fed put out, a head and day */
    public record Fed(SeasonFeed feed, double kg) {}

    /** @param season that was planned */
    public static Orders of(Plan plan, Season season) {
        var buys = new ArrayList<Buy>();
        var sells = new ArrayList<Sale>();
        for (int f = 0; f < season.feeds().size(); f++) {
            buys.addAll(buys(plan, season, f));
            if (plan.first().sell()[f] >= LEAST_KG) {
                sells.add(new Sale(season.feeds().get(f), plan.first().sell()[f]));
            }
        }
        var groups = new ArrayList<OfGroup>();
        for (int e = 0; e < plan.first().eaten().length; e++) {
            double headDays = (double) Season.DAYS_A_WEEK * season.head(e);
            var fed = new ArrayList<Fed>();
            for (int f = 0; f < season.feeds().size(); f++) {
                var feed = season.feeds().get(f);
                fed.add(new Fed(feed, feed.priced().putOut(plan.first().eaten()[e][f]) / headDays));
            }
            groups.add(new OfGroup(season.name(e), fed));
        }
        return new Orders(buys, sells, groups);
    }

    /** This week's, and all that is planned on for later. */
    private static List<Buy> buys(Plan plan, Season season, int f) {
        var feed = season.feeds().get(f);
        var supply = feed.supply();
        var prices = new Prices(season);
        var all = new ArrayList<Buy>();
        double asked = 0;
        int loads = 0;
        Buy later = null;
        for (int k = 0; k < plan.stretches().size(); k++) {
            var stretch = plan.stretches().get(k);
            double more = feed.isTracked() ? stretch.decision().buy()[f] : fed(stretch, feed, f);
            asked += more;
            int due = supply.isByLoad() ? supply.ordered(asked) - loads : 0;
            loads += due;
            double kg = supply.isByLoad() ? Math.min(due * supply.loadKg(), feed.canBuy()) : more;
            if (kg < LEAST_KG) {
                continue;
            }
            double week = ChronoUnit.DAYS.between(season.today(), stretch.from()) / (double) Season.DAYS_A_WEEK;
            var buy = new Buy(feed, stretch.from(), k == 0, kg, more, due, prices.buy(f, week, 0));
            if (k == 0) {
                all.add(buy);
            } else {
                later = later == null ? buy : both(later, buy);
            }
        }
        if (later != null) {
            all.add(later);
        }
        return all;
    }

    /** Kilograms put out in a stretch of what has no end, which is bought as it is fed; none of hay that has to be found. */
    private static double fed(Plan.Stretch stretch, SeasonFeed feed, int f) {
        double eaten = 0;
        for (var group : stretch.decision().eaten()) {
            eaten += group[f];
        }
        return feed.isEmergency() ? 0 : feed.priced().putOut(eaten);
    }

    private static Buy both(Buy first, Buy second) {
        double kg = first.kg + second.kg;
        return new Buy(
                first.feed,
                first.by,
                false,
                kg,
                first.askedKg + second.askedKg,
                first.loads + second.loads,
                (first.kg * first.dollarsPerKg + second.kg * second.dollarsPerKg) / kg);
    }
}
