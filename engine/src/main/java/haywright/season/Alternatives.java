package haywright.season;

import haywright.outlook.Yard;
import haywright.season.given.Facts;
import haywright.season.given.Season;
import haywright.season.play.Played;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.IntToDoubleFunction;
import java.util.stream.IntStream;

/**
 * What could be done, each priced by the same winters with the same draws as the plan without it: dollars that it brings, all
 * told, and how many winters of 20 feed lasts with it. Then the two best together; any other two when they are asked for.
 */
final class Alternatives {
    private static final double NINE_IN_TEN = 1.645;
    private static final int TEN = 10;

    private final Yard yard;
    private final Crew crew;
    private final List<Steps.Step> steps;
    private final int[] chosen;
    private final List<Crew.Case> cases;
    private final WinterBook.Choice policy;
    private final List<Double> hardness;

    Alternatives(Yard yard, Crew crew, List<Crew.Case> all, WinterBook.Choice policy) {
        this.yard = yard;
        this.crew = crew;
        this.policy = policy;
        steps = new Steps(yard, crew.season()).all();
        chosen = chosen(all.size(), steps.size());
        cases = Arrays.stream(chosen).mapToObj(all::get).toList();
        // what is compared is planned by one winter, so that pricing takes no longer than playing
        this.hardness = List.of(policy.middle());
    }

    /** Which winters are played with each: all where there are few things to do, evenly spread ones where there are many. */
    private static int[] chosen(int all, int steps) {
        int count = Math.min(all, (int) Math.max(TEN, Facts.value("alternative_plays") / Math.max(1, steps)));
        return IntStream.range(0, count).map(i -> i * all / count).toArray();
    }

    /** The best first. @param without the same winters, played by the policy without any of it */
    List<WinterBook.Alternative> all(List<Played> without) {
        var base = policy.hardness().size() == 1
                ? Arrays.stream(chosen).mapToObj(without::get).toList()
                : base();
        var priced = new ArrayList<WinterBook.Alternative>();
        for (var step : steps) {
            price(step, base).ifPresent(priced::add);
        }
        priced.sort(Comparator.comparingDouble(WinterBook.Alternative::net).reversed());
        if (priced.size() >= 2 && priced.get(1).net() > 0) {
            var first = named(steps, priced.get(0).id());
            var second = named(steps, priced.get(1).id());
            price(first.with(second), base).ifPresent(priced::add);
        }
        return priced;
    }

    /** Two of them, in the order in which they are listed; empty where one is none of this ranch, or there was no time. */
    Optional<WinterBook.Alternative> together(String one, String other) {
        var both = steps.stream()
                .filter(step -> step.id().equals(one) || step.id().equals(other))
                .toList();
        return both.size() == 2 ? price(both.get(0).with(both.get(1)), base()) : Optional.empty();
    }

    private static Steps.Step named(List<Steps.Step> steps, String id) {
        return steps.stream().filter(step -> step.id().equals(id)).findFirst().orElseThrow();
    }

    private List<Played> base() {
        return crew.replanned(cases, hardness, crew.programs(hardness), (i, p) -> {});
    }

    private Optional<WinterBook.Alternative> price(Steps.Step step, List<Played> base) {
        if (crew.isEnough()) {
            return Optional.empty();
        }
        var season = Season.of(
                new Yard(step.ranch().apply(yard.ranch()), yard.day()),
                new Season.Changes(
                        step.cleared(),
                        step.away(),
                        crew.season().changes().firstWeek(),
                        OptionalDouble.of(crew.season().emergencyPrice())));
        var other = crew.of(season);
        var played = other.replanned(cases, hardness, other.programs(hardness), (i, p) -> {});
        int n = Math.min(played.size(), base.size());
        if (n < 2) {
            return Optional.empty();
        }
        double beside = step.beside().applyAsDouble(yard.ranch());
        var all = saved(n, i -> base.get(i).cost() - played.get(i).cost() + beside);
        var money = saved(
                n, i -> Counting.spent(crew.season(), base.get(i)) - Counting.spent(season, played.get(i)) + beside);
        var counted = new Counting(season, other).beside(step.what(), played);
        return Optional.of(new WinterBook.Alternative(
                step.id(),
                step.what(),
                step.decideBy(),
                all.mean(),
                all.low(),
                all.high(),
                beside,
                counted.lasts(),
                counted.tonsShort(),
                money,
                step.ask(),
                step.cleared().isEmpty() ? null : needed(season, other)));
    }

    /** What today's plan buys where a test comes back safe: that is needed whatever it says. */
    private List<WinterBook.Needed> needed(Season season, Crew other) {
        var plan = WinterPlan.plan(season, other.forecast(-1), other.growing(), policy.hardness());
        var kg = new LinkedHashMap<String, Double>();
        Orders.of(plan, season).buys().forEach(buy -> kg.merge(buy.feed().id(), buy.askedKg(), Double::sum));
        return kg.entrySet().stream()
                .map(one -> new WinterBook.Needed(one.getKey(), one.getValue()))
                .toList();
    }

    private static WinterBook.Money saved(int n, IntToDoubleFunction saves) {
        var apart = IntStream.range(0, n).mapToDouble(saves).toArray();
        double mean = Arrays.stream(apart).average().orElseThrow();
        double squares =
                Arrays.stream(apart).map(one -> (one - mean) * (one - mean)).sum();
        double error = NINE_IN_TEN * Math.sqrt(squares / (n - 1) / n);
        return new WinterBook.Money(mean, mean - error, mean + error);
    }
}
