package haywright.feeding;

import haywright.cattle.herd.Group;
import haywright.outlook.Yard;
import haywright.ration.HandMix;
import haywright.ration.Portion;
import haywright.ration.PricedFeed;
import java.time.LocalDate;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;

/**
 * Until when each feed lasts if all groups are fed on alike.
 * <pre>
 * gone = today + kg at hand / Σ head·kg put out a day
 * </pre>
 */
final class Lasting {
    private Lasting() {}

    /** With one group fed so, and the others by their rations; in the order of the portions. */
    static Map<PricedFeed, LocalDate> with(Rations rations, Group group, List<Portion> portions) {
        return of(rations, other -> other.id().equals(group.id()) ? portions : rations.toFeed(other), portions);
    }

    /** As everybody is fed now; a group of which nobody said it by its ration. */
    static Map<PricedFeed, LocalDate> asNow(Rations rations, List<Portion> portions) {
        return of(
                rations,
                group -> rations.fedNow(group).map(HandMix::portions).orElseGet(() -> rations.toFeed(group)),
                portions);
    }

    private static Map<PricedFeed, LocalDate> of(
            Rations rations, Function<Group, List<Portion>> fed, List<Portion> portions) {
        var aDay = new HashMap<String, Double>();
        for (var group : rations.ranch().groups().values()) {
            fed.apply(group).forEach(p -> aDay.merge(p.feed().feed().id(), group.head() * p.kgPutOut(), Double::sum));
        }
        var gone = new LinkedHashMap<PricedFeed, LocalDate>();
        for (var portion : portions) {
            var feed = portion.feed();
            until(rations, feed, aDay.getOrDefault(feed.feed().id(), 0.0)).ifPresent(day -> gone.put(feed, day));
        }
        return gone;
    }

    /** The day before which a feed is used up by so much a day; empty where it reaches to grass or has no end. */
    static Optional<LocalDate> until(Rations rations, PricedFeed feed, double kgADay) {
        double days = feed.kgAtHand() / kgADay;
        if (!(days < Yard.LONGEST_WINTER)) {
            return Optional.empty();
        }
        var last = rations.day().plusDays((long) days);
        var turnout = rations.ranch().turnout();
        return turnout == null || last.isBefore(turnout) ? Optional.of(last) : Optional.empty();
    }
}
