package haywright.season;

import haywright.season.given.Season;
import haywright.season.given.SeasonFeed;
import haywright.season.play.Plan;
import java.util.ArrayList;
import java.util.List;

/**
 * What a plan asks for: what to buy, and what each group is fed in its first week.
 *
 * @param buys in the order of the ranch's feeds
 * @param groups in the order of the ranch
 */
public record Orders(List<Buy> buys, List<OfGroup> groups) {
    public Orders {
        buys = List.copyOf(buys);
        groups = List.copyOf(groups);
    }

    /** @param nowKg as fed, this week. @param laterKg until grass */
    public record Buy(SeasonFeed feed, double nowKg, double laterKg) {}

    /** @param feeds all there are, those it gets nothing of too */
    public record OfGroup(String name, List<Fed> feeds) {}

    /** @param kg as fed put out, a head and day */
    public record Fed(SeasonFeed feed, double kg) {}

    /** @param season that was planned */
    public static Orders of(Plan plan, Season season) {
        var buys = new ArrayList<Buy>();
        for (int f = 0; f < season.feeds().size(); f++) {
            var feed = season.feeds().get(f);
            double now = plan.first().buy()[f];
            buys.add(new Buy(feed, now, plan.buys().getOrDefault(feed.id(), 0.0) - now));
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
        return new Orders(buys, groups);
    }
}
