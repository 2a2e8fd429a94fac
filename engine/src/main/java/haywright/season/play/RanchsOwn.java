package haywright.season.play;

import haywright.quantity.Unit;
import haywright.season.given.Forecast;
import haywright.season.given.Season;
import java.util.HashMap;
import java.util.Map;

/**
 * What the ranch feeds now, every week the same; when a lot ends the next of its kind goes on. A group of which nobody said
 * what it is fed gets the lots in order.
 */
public final class RanchsOwn implements Policy {
    private final Season season;
    private final InOrder inOrder;
    /** kg of dry matter a head and day, by group and feed. */
    private final Map<Integer, double[]> now = new HashMap<>();

    public RanchsOwn(Season season, Forecast forecast) {
        this.season = season;
        inOrder = new InOrder(season, forecast);
        for (int e = 0; e < season.eaters().size(); e++) {
            var said =
                    season.ranch().fedNow().get(season.eaters().get(e).group().id());
            if (said != null && !said.amounts().isEmpty()) {
                var kg = new double[season.feeds().size()];
                for (int f = 0; f < kg.length; f++) {
                    var feed = season.feeds().get(f);
                    for (var amount : said.amounts().entrySet()) {
                        if (amount.getKey().toString().equals(feed.id())) {
                            kg[f] = feed.priced().eaten(amount.getValue().in(Unit.KILOGRAM_A_DAY));
                        }
                    }
                }
                now.put(e, kg);
            }
        }
    }

    /** Whether the ranch said what every group is fed. */
    public boolean isSaid() {
        return now.size() == season.eaters().size();
    }

    @Override
    public Decision next(Known known) {
        var decision = inOrder.next(known);
        now.forEach((e, kg) -> {
            for (int f = 0; f < kg.length; f++) {
                decision.eaten()[e][f] = kg[f] * season.eaters().get(e).head() * known.days()[e];
            }
        });
        return decision;
    }

    @Override
    public void close() {}
}
