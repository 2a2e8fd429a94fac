package haywright.match;

import haywright.cattle.herd.Group;
import haywright.outlook.HerdWeather;
import haywright.outlook.Yard;
import haywright.ration.JointChance;
import haywright.ration.Portion;
import haywright.ration.PricedFeed;
import haywright.ration.Ration;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * The one feed, of those on hand and for sale, that makes a lot enough for a group with the least money, and as little of it
 * as will do. By expected figures, in usual weather, like the chart.
 *
 * @param added that feed, put out a head and day
 * @param surePercent in which all needs are met with it, over the ways that both may be made
 */
public record SmallestFix(Portion added, double surePercent) {
    /** Dollars a kg beyond its price, so that as little of it is taken as can be. */
    private static final double DEAR = 1000;

    private static final double NOTHING = 1e-6;

    /** Empty where the group has no such stage ahead, where the lot may not be fed, or where no single feed is enough. */
    public static Optional<SmallestFix> of(Yard yard, Group group, CarryChart.Stage stage, String lot) {
        var day = CarryChart.day(group, stage, yard);
        var own = yard.feeds().stream()
                .filter(feed -> feed.feed().id().equals(lot))
                .findFirst();
        if (day.isEmpty() || own.isEmpty()) {
            return Optional.empty();
        }
        var need = new HerdWeather(yard.ranch().settings()).need(group, day.get());
        var mineral = yard.feeds().stream()
                .filter(feed -> feed.feed().isLooseMineral())
                .toList();
        return yard.feeds().stream()
                .filter(feed -> !feed.feed().id().equals(lot) && !feed.feed().isLooseMineral() && feed.kgAtHand() > 0)
                .flatMap(feed -> {
                    var offered = new ArrayList<PricedFeed>(List.of(own.get()));
                    offered.addAll(mineral);
                    offered.add(feed.shared(DEAR, Double.POSITIVE_INFINITY));
                    return CarryChart.alone(yard, group, offered, need).solve() instanceof Ration ration
                            ? with(group, ration, lot, feed.feed().id()).stream()
                            : Stream.<SmallestFix>empty();
                })
                .min(Comparator.comparingDouble(fix -> fix.added().cost()));
    }

    /** Of a ration that still has the lot in it. */
    private static Optional<SmallestFix> with(Group group, Ration ration, String lot, String feed) {
        boolean hasLot = ration.portions().stream()
                .anyMatch(portion -> portion.feed().feed().id().equals(lot) && portion.kg() > NOTHING);
        return ration.portions().stream()
                .filter(portion -> hasLot && portion.feed().feed().id().equals(feed))
                .findFirst()
                .map(portion -> new SmallestFix(
                        portion, JointChance.of(Map.of(group.name(), ration)).percent()));
    }
}
