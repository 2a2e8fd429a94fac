package haywright.season;

import haywright.cattle.herd.Group;
import haywright.outlook.Yard;
import haywright.season.given.Forecast;
import haywright.season.given.Season;
import haywright.season.play.Blocks;
import haywright.season.play.Judge;
import haywright.season.play.Plan;
import haywright.season.play.Planner;
import haywright.season.play.Replanned;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.stream.IntStream;

/**
 * The plan of a ranch from one day to grass, for a winter somewhat harder than usual, and what it makes every feed worth. The
 * ration of every group is weighed by it, so that no group eats today what another will want more.
 */
public record WinterPlan(Season season, Plan plan) {
    /** kg of dry matter that a whole group eats in a stretch below which it is none. */
    private static final double LEAST_KG = 1;

    /** Empty where there are no cattle, no feed, or no day of grass. */
    public static Optional<WinterPlan> of(Yard yard) {
        return Season.lacking(yard).isEmpty() ? Optional.of(of(Season.of(yard))) : Optional.empty();
    }

    /** The plan of a yard with hay that has to be found at the price of this one, so that both can be compared. */
    public WinterPlan beside(Yard yard) {
        return of(
                Season.of(yard, new Season.Changes(Set.of(), 0, Map.of(), OptionalDouble.of(season.emergencyPrice()))));
    }

    /** The same with a lot counted as tested and free of nitrate. */
    public WinterPlan cleared(Yard yard, String lot) {
        return of(Season.of(yard, new Season.Changes(Set.of(lot), 0, Map.of())));
    }

    /** The plan that a book of this season begins with. */
    public static WinterPlan of(Season season) {
        return new WinterPlan(season, plan(season, new Forecast(season, -1), Blocks.FEW, BookMaker.UNCHOSEN));
    }

    /**
     * From what is known on the first day.
     *
     * @param growing weeks of its stretches
     * @param hardness of each winter it is made for
     */
    static Plan plan(Season season, Forecast forecast, List<Integer> growing, List<Double> hardness) {
        var programs = new Planner.Programs(season, growing, hardness.size());
        try (var policy = new Replanned(season, forecast, hardness, new Planner(programs))) {
            return policy.plan(Judge.start(season));
        }
    }

    /**
     * Dollars that one more kilogram of a feed, as fed and in the yard today, would save all groups until grass. For a feed
     * that is bought it is the price below which it is worth buying. Empty for what has no end, which is worth its price.
     */
    public OptionalDouble worth(String feed) {
        var worth = plan.worth().get(feed);
        return worth == null ? OptionalDouble.empty() : OptionalDouble.of(worth);
    }

    /** Whether it has a group eat of a feed in its first week. */
    public boolean feeds(Group group, String feed) {
        for (int e = 0; e < season.eaters().size(); e++) {
            for (int f = 0; f < season.feeds().size(); f++) {
                if (season.eaters().get(e).group().id().equals(group.id())
                        && season.feeds().get(f).id().equals(feed)) {
                    return plan.first().eaten()[e][f] > 0;
                }
            }
        }
        return false;
    }

    /** Whether a danger keeps a lot from every group until it is tested. */
    public boolean isKeptOut(String lot) {
        return IntStream.range(0, season.feeds().size())
                .anyMatch(f -> season.feeds().get(f).id().equals(lot)
                        && season.feeds().get(f).kg() > 0
                        && !season.mayBeFed(f));
    }

    /**
     * A feed that nobody is fed of in the first week, and some later.
     *
     * @param groups that it is begun with
     * @param from the first day on which it is fed
     */
    public record Kept(List<String> groups, LocalDate from) {}

    /** For whom it keeps a feed; empty for one that is fed from the first week on, or never. */
    public Optional<Kept> kept(String feed) {
        for (var stretch : plan.stretches()) {
            var groups = IntStream.range(0, season.eaters().size())
                    .filter(e -> eaten(stretch, e, feed) >= LEAST_KG)
                    .mapToObj(season::name)
                    .toList();
            if (!groups.isEmpty()) {
                return stretch.from().isAfter(season.today())
                        ? Optional.of(new Kept(groups, stretch.from()))
                        : Optional.empty();
            }
        }
        return Optional.empty();
    }

    private double eaten(Plan.Stretch stretch, int eater, String feed) {
        return IntStream.range(0, season.feeds().size())
                .filter(f -> season.feeds().get(f).id().equals(feed))
                .mapToDouble(f -> stretch.decision().eaten()[eater][f])
                .sum();
    }

    /** Kilograms as fed of a feed that it buys until grass, of one without a limit too: as the winter page lists it. */
    public double buys(String feed) {
        return Orders.of(plan, season).buys().stream()
                .filter(buy -> buy.feed().id().equals(feed))
                .mapToDouble(Orders.Buy::kg)
                .sum();
    }
}
