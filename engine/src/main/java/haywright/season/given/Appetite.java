package haywright.season.given;

import haywright.diet.Diet;
import haywright.forage.Analyte;
import haywright.outlook.HerdWeather;
import haywright.outlook.Yard;
import haywright.ranch.FedWeek;
import haywright.ration.PricedFeed;
import java.util.Map;
import java.util.Objects;
import java.util.UUID;
import java.util.function.Function;
import java.util.stream.Collectors;

/**
 * What this herd eats where it has all it wants, over what the equation says. A week in which cattle left clearly more than is
 * wasted anyway is one in which they had all they wanted: what was put out less what they left is then what they eat.
 * <pre>
 * times = (1/s² + Σ seen/e²) / (1/s² + n/e²)      sd = 1/√(1/s² + n/e²)
 * </pre>
 *
 * @param times of what the equation says
 * @param sd of that
 * @param weeks that showed it
 */
public record Appetite(double times, double sd, int weeks) {
    /** Points left beyond what is wasted anyway, from which on they had all they wanted (judgment). */
    private static final double ENOUGH = 5;

    /** Of what was put out in a week, loads and leavings judged by eye (judgment). */
    private static final double SEEN_SD = 0.10;

    private static final double PERCENT = 100;

    /** As the weeks of a ranch show it. */
    public static Appetite of(Yard yard) {
        double known = 1 / Math.pow(Facts.value("appetite_sd") / PERCENT, 2);
        double sum = known;
        int weeks = 0;
        Map<UUID, PricedFeed> feeds = yard.ranch().weeks().isEmpty()
                ? Map.of()
                : yard.feeds().stream()
                        .collect(Collectors.toMap(
                                feed -> UUID.fromString(feed.feed().id()), Function.identity()));
        for (var week : yard.ranch().weeks().values()) {
            double seen = seen(yard, week, feeds);
            if (seen > 0) {
                sum += seen / (SEEN_SD * SEEN_SD);
                known += 1 / (SEEN_SD * SEEN_SD);
                weeks++;
            }
        }
        return new Appetite(sum / known, 1 / Math.sqrt(known), weeks);
    }

    /** 0 where a week does not show it. */
    private static double seen(Yard yard, FedWeek week, Map<UUID, PricedFeed> feeds) {
        double put = 0;
        double left = 0;
        double wasted = 0;
        double eaten = 0;
        double energy = 0;
        for (var fed : week.fed().entrySet()) {
            var feed = feeds.get(fed.getKey());
            if (feed == null) {
                return 0;
            }
            double dry = fed.getValue().base() * feed.dryMatterPercent() / PERCENT;
            double usual = feed.feedingLossPercent();
            double leaves = Objects.requireNonNullElse(week.left().get(fed.getKey()), usual);
            put += dry;
            left += dry * leaves / PERCENT;
            wasted += dry * yard.usualLossPercent(feed.feed().feedClass()) / PERCENT;
            eaten += dry * (1 - leaves / PERCENT);
            energy += dry
                    * (1 - leaves / PERCENT)
                    * Diet.value(feed.feed(), feed.feed().composition(), Analyte.NEM);
        }
        if (!(eaten > 0) || PERCENT * (left - wasted) / put < ENOUGH) {
            return 0;
        }
        double expected = 0;
        var weather = new HerdWeather(yard.ranch().settings());
        for (var group : yard.ranch().groups().values()) {
            expected += group.head()
                    * week.days()
                    * weather.need(group, week.to()).intake(energy / eaten).kilograms();
        }
        return eaten / expected;
    }
}
