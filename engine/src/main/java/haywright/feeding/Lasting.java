package haywright.feeding;

import haywright.cattle.herd.Group;
import haywright.diet.Feed;
import haywright.outlook.Yard;
import haywright.ration.HandMix;
import haywright.ration.Portion;
import haywright.ration.PricedFeed;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Collectors;

/**
 * Until when each feed lasts if all groups are fed on alike. What is gone is made up by what lies there: a group that ate it
 * goes on with the hay and silage of its mix, kilogram of dry matter for kilogram, or where it has no other with the most
 * that the ranch has and it may have. So no lot is said to last on feed that will be gone.
 * <pre>
 * next = min over feeds: kg left / Σ head·kg put out a day
 * </pre>
 */
final class Lasting {
    /** Days by which 24 tons at 640 lb a day may miss 75. */
    private static final double HAIR = 1e-6;

    private final Rations rations;
    /** By id: the same lot weighs differently in each group's question. */
    private final Map<String, PricedFeed> feeds = new LinkedHashMap<>();
    /** Dry matter eaten a day, kg of all head, by group and feed id. */
    private final Map<Group, Map<String, Double>> eaten = new LinkedHashMap<>();
    /** Kilograms as fed, by feed id. */
    private final Map<String, Double> left = new LinkedHashMap<>();

    private final Map<String, LocalDate> gone = new LinkedHashMap<>();

    private Lasting(Rations rations, Function<Group, List<Portion>> fed) {
        this.rations = rations;
        for (var group : rations.ranch().groups().values()) {
            var mix = new LinkedHashMap<String, Double>();
            for (var portion : fed.apply(group)) {
                var id = portion.feed().feed().id();
                feeds.putIfAbsent(id, portion.feed());
                mix.merge(id, group.head() * feed(id).eaten(portion.kgPutOut()), Double::sum);
            }
            eaten.put(group, mix);
        }
        for (var feed : rations.yard().feeds()) {
            feeds.putIfAbsent(feed.feed().id(), feed);
            left.put(feed.feed().id(), feed(feed.feed().id()).kgAtHand());
        }
    }

    private PricedFeed feed(String id) {
        return Objects.requireNonNull(feeds.get(id));
    }

    /** With one group fed so, and the others by their rations; in the order of the portions. */
    static Map<PricedFeed, LocalDate> with(Rations rations, Group group, List<Portion> portions) {
        return of(portions, gone(rations, other -> other.id().equals(group.id()) ? portions : rations.toFeed(other)));
    }

    /** As everybody is fed now; a group of which nobody said it by its ration. */
    static Map<PricedFeed, LocalDate> asNow(Rations rations, List<Portion> portions) {
        return of(
                portions,
                gone(
                        rations,
                        group -> rations.fedNow(group).map(HandMix::portions).orElseGet(() -> rations.toFeed(group))));
    }

    /** The day before which each feed is used up, by feed id; a feed that reaches to grass or has no end is not in it. */
    static Map<String, LocalDate> gone(Rations rations, Function<Group, List<Portion>> fed) {
        var lasting = new Lasting(rations, fed);
        lasting.run();
        return lasting.gone;
    }

    private static Map<PricedFeed, LocalDate> of(List<Portion> portions, Map<String, LocalDate> gone) {
        var ofThese = new LinkedHashMap<PricedFeed, LocalDate>();
        for (var portion : portions) {
            var day = gone.get(portion.feed().feed().id());
            if (day != null) {
                ofThese.put(portion.feed(), day);
            }
        }
        return ofThese;
    }

    private void run() {
        var turnout = rations.ranch().turnout();
        double end = turnout == null
                ? Yard.LONGEST_WINTER
                : Math.min(Yard.LONGEST_WINTER, ChronoUnit.DAYS.between(rations.day(), turnout));
        double now = 0;
        for (var next = next(); next.isPresent(); next = next()) {
            var out = next.get();
            double days = days(out);
            now += days;
            if (!(now < end)) {
                return;
            }
            left.replaceAll((feed, kg) -> kg - days * aDay(feed));
            left.put(out, 0.0);
            gone.put(out, rations.day().plusDays((long) (now + HAIR)));
            eaten.forEach((group, mix) -> makeUp(group, mix, out));
        }
    }

    private Optional<String> next() {
        return left.keySet().stream()
                .filter(feed -> aDay(feed) > 0)
                .min(Comparator.comparingDouble(this::days).thenComparing(Comparator.naturalOrder()));
    }

    private double days(String feed) {
        return left(feed) / aDay(feed);
    }

    private double left(String feed) {
        return left.getOrDefault(feed, 0.0);
    }

    /** As fed, of all groups. */
    private double aDay(String feed) {
        return feed(feed)
                .putOut(eaten.values().stream()
                        .mapToDouble(mix -> mix.getOrDefault(feed, 0.0))
                        .sum());
    }

    private void makeUp(Group group, Map<String, Double> mix, String out) {
        double lost = Optional.ofNullable(mix.remove(out)).orElse(0.0);
        if (lost == 0 || !feed(out).isHayOrSilage()) {
            return; // straw and grain are no hay: what takes their place is another ration
        }
        var rest = new ArrayList<>(mix.keySet());
        rest.removeIf(feed -> !feed(feed).isHayOrSilage() || left(feed) == 0);
        double all = rest.stream().mapToDouble(mix::get).sum();
        if (all > 0) {
            rest.forEach(feed -> mix.compute(feed, (same, kg) -> kg * (1 + lost / all)));
            return;
        }
        var may = rations.question(group).diet().feeds().stream().map(Feed::id).collect(Collectors.toSet());
        left.keySet().stream()
                .filter(feed -> feed(feed).own() && feed(feed).isHayOrSilage() && left(feed) > 0 && may.contains(feed))
                .max(Comparator.comparingDouble((String feed) -> feed(feed).eaten(left(feed)))
                        .thenComparing(Comparator.naturalOrder()))
                .ifPresent(feed -> mix.merge(feed, lost, Double::sum));
    }
}
