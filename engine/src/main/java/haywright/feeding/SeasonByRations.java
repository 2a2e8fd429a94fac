package haywright.feeding;

import haywright.season.given.Season;
import haywright.workings.Refused;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Set;
import java.util.UUID;

/**
 * The winter with its first week fed by the rations of the ranch: what the winter book shows, plays and goes on from. What
 * weighs those rations is the plan that is free in that week, so that neither waits for the other.
 */
public final class SeasonByRations {
    private SeasonByRations() {}

    /**
     * A group without a ration is fed as the plan has it.
     *
     * @throws Refused where there is nothing to plan
     */
    public static Season of(Rations rations) {
        Refused.unlessEmpty(Season.lacking(rations.yard()));
        var firstWeek = new LinkedHashMap<UUID, Map<String, Double>>();
        for (var group : rations.ranch().groups().values()) {
            var eaten = new LinkedHashMap<String, Double>();
            rations.toFeed(group)
                    .forEach(portion -> eaten.merge(portion.feed().feed().id(), portion.kg(), Double::sum));
            if (!eaten.isEmpty()) {
                firstWeek.put(group.id(), eaten);
            }
        }
        return Season.of(rations.yard(), new Season.Changes(Set.of(), 0, firstWeek));
    }
}
