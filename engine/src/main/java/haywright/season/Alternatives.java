package haywright.season;

import haywright.cattle.AnimalClass;
import haywright.cattle.herd.Group;
import haywright.forage.FeedClass;
import haywright.outlook.HayFacts;
import haywright.outlook.Yard;
import haywright.quantity.Quantity;
import haywright.quantity.Unit;
import haywright.ranch.FeedForSale;
import haywright.ranch.Ranch;
import haywright.season.given.Facts;
import haywright.season.given.Season;
import haywright.season.play.Played;
import java.nio.charset.StandardCharsets;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.UUID;
import java.util.function.ToDoubleFunction;
import java.util.function.UnaryOperator;

/**
 * What could be done, each priced by the same winters with the same draws as the plan without it: dollars that it brings, all
 * told, and how many winters of 20 feed lasts with it. Then the two best together; any other two when they are asked for.
 */
final class Alternatives {
    private static final double NINE_IN_TEN = 1.645;
    private static final int TEN = 10;

    private final Yard yard;
    private final Crew crew;
    private final List<Crew.Case> cases;
    private final WinterBook.Choice policy;
    private final List<Double> hardness;

    /**
     * Something that could be done.
     *
     * @param ranch what it makes of the ranch
     * @param beside dollars of it that are not feed, by the ranch that it is done on
     * @param ask what is not counted
     */
    private record Step(
            String id,
            String what,
            LocalDate decideBy,
            UnaryOperator<Ranch> ranch,
            Set<String> cleared,
            int away,
            ToDoubleFunction<Ranch> beside,
            String ask) {
        Step with(Step other) {
            var both = new HashSet<>(cleared);
            both.addAll(other.cleared);
            return new Step(
                    id + "+" + other.id,
                    what + "; and " + Character.toLowerCase(other.what.charAt(0)) + other.what.substring(1),
                    decideBy.isBefore(other.decideBy) ? decideBy : other.decideBy,
                    r -> other.ranch.apply(ranch.apply(r)),
                    both,
                    Math.max(away, other.away),
                    r -> beside.applyAsDouble(r) + other.beside.applyAsDouble(ranch.apply(r)),
                    ask.equals(other.ask) ? ask : (ask + " " + other.ask).strip());
        }
    }

    Alternatives(Yard yard, Crew crew, List<Crew.Case> cases, WinterBook.Choice policy) {
        this.yard = yard;
        this.crew = crew;
        this.cases = cases;
        this.policy = policy;
        // what is compared is planned by one winter, so that pricing takes no longer than playing
        this.hardness = List.of(policy.middle());
    }

    /** The best first. @param without the same winters, played by the policy without any of it */
    List<WinterBook.Alternative> all(List<Played> without) {
        var base = policy.hardness().size() == 1 ? without : base();
        var steps = steps();
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
        var both = steps().stream()
                .filter(step -> step.id.equals(one) || step.id.equals(other))
                .toList();
        return both.size() == 2 ? price(both.get(0).with(both.get(1)), base()) : Optional.empty();
    }

    private static Step named(List<Step> steps, String id) {
        return steps.stream().filter(step -> step.id.equals(id)).findFirst().orElseThrow();
    }

    private List<Played> base() {
        return crew.replanned(cases, hardness, crew.programs(hardness), (i, p) -> {});
    }

    private Optional<WinterBook.Alternative> price(Step step, List<Played> base) {
        if (crew.isEnough()) {
            return Optional.empty();
        }
        var season = Season.of(
                new Yard(step.ranch.apply(yard.ranch()), yard.day()),
                new Season.Changes(
                        step.cleared,
                        step.away,
                        crew.season().changes().firstWeek(),
                        OptionalDouble.of(crew.season().emergencyPrice())));
        var other = crew.of(season);
        var played = other.replanned(cases, hardness, other.programs(hardness), (i, p) -> {});
        int n = Math.min(played.size(), base.size());
        if (n < 2) {
            return Optional.empty();
        }
        double beside = step.beside.applyAsDouble(yard.ranch());
        var apart = new double[n];
        double mean = 0;
        for (int i = 0; i < n; i++) {
            apart[i] = base.get(i).cost() - played.get(i).cost() + beside;
            mean += apart[i] / n;
        }
        double squares = 0;
        for (double one : apart) {
            squares += (one - mean) * (one - mean);
        }
        double error = Math.sqrt(squares / (n - 1) / n);
        var counted = new Counting(season, other).beside(step.what, played);
        return Optional.of(new WinterBook.Alternative(
                step.id,
                step.what,
                step.decideBy,
                mean,
                mean - NINE_IN_TEN * error,
                mean + NINE_IN_TEN * error,
                beside,
                counted.lasts(),
                counted.tonsShort(),
                step.ask));
    }

    private List<Step> steps() {
        var steps = new ArrayList<Step>();
        test().ifPresent(steps::add);
        buy(steps);
        feeders().ifPresent(steps::add);
        windbreak().ifPresent(steps::add);
        sell().ifPresent(steps::add);
        stalks().ifPresent(steps::add);
        return steps;
    }

    private LocalDate soon(String fact) {
        return yard.day().plusDays((long) Facts.value(fact));
    }

    private static Step of(
            String id, String what, LocalDate by, UnaryOperator<Ranch> ranch, double beside, String ask) {
        return new Step(id, what, by, ranch, Set.of(), 0, r -> beside, ask);
    }

    /** Lots that nobody may have until they are tested. */
    private Optional<Step> test() {
        var season = crew.season();
        var out = new ArrayList<String>();
        var names = new ArrayList<String>();
        for (int f = 0; f < season.feeds().size(); f++) {
            var feed = season.feeds().get(f);
            if (!season.mayBeFed(f)
                    && feed.priced().own()
                    && feed.priced().feed().nitrateDanger()) {
                out.add(feed.id());
                names.add(feed.name());
            }
        }
        return out.isEmpty()
                ? Optional.empty()
                : Optional.of(
                        new Step(
                                "test",
                                "Test %s for nitrate, if they come back safe".formatted(String.join(" and ", names)),
                                soon("soon_days"),
                                r -> r,
                                Set.copyOf(out),
                                0,
                                r -> -out.size() * Facts.value("nitrate_test_usd"),
                                "Feed none before the laboratory’s figure is in; ask your veterinarian about limits where you are."));
    }

    /** Hay at the price that the ranch's own would cost to replace. */
    private void buy(List<Step> steps) {
        var hay = yard.feeds().stream()
                .filter(feed -> feed.feed().feedClass().isHay())
                .max(Comparator.comparingDouble(
                        feed -> feed.kgAtHand() < Double.POSITIVE_INFINITY ? feed.kgAtHand() : 0));
        if (hay.isEmpty()) {
            return;
        }
        double tons = Facts.value("buy_tons");
        double price = Unit.DOLLAR_PER_KG.to(Unit.DOLLAR_PER_TON, hay.get().pricePerKgAsFed());
        double late = price * (1 + Facts.value("late_premium") / 100);
        steps.add(of(
                "buy-now",
                "Buy up to %.0f tons of hay now at $%.0f".formatted(tons, price),
                soon("soon_days"),
                r -> r.with(forSale("hay now", tons, price)),
                0,
                "If it can be had at that price."));
        var february = LocalDate.of(yard.day().getYear(), 2, 1);
        var later = yard.day().isBefore(february) ? february : february.plusYears(1);
        if (later.isBefore(crew.season().begins(crew.season().weeks()))) {
            steps.add(of(
                    "buy-later",
                    "Buy up to %.0f tons of hay in February at $%.0f".formatted(tons, late),
                    later,
                    r -> r.with(forSale("hay later", tons, late)),
                    0,
                    "If there is any left for sale by then."));
        }
    }

    private static FeedForSale forSale(String name, double tons, double price) {
        return new FeedForSale(
                UUID.nameUUIDFromBytes(name.getBytes(StandardCharsets.UTF_8)),
                name,
                FeedClass.GRASS_HAY,
                "",
                List.of(),
                Quantity.of(price, Unit.DOLLAR_PER_TON),
                Quantity.of(tons, Unit.TON),
                "");
    }

    private Optional<Step> feeders() {
        double rings = HayFacts.value("ring_loss");
        var settings = yard.ranch().settings();
        if (settings.hayLossPercent() <= rings + 1) {
            return Optional.empty();
        }
        double count = Math.ceil(yard.ranch().head() / HayFacts.value("ring_head"));
        double cost = count * HayFacts.value("ring_price") / Facts.value("ring_years");
        return Optional.of(of(
                "rings",
                "Feed hay in %.0f ring feeders instead of on the ground".formatted(count),
                soon("soon_days"),
                r -> r.with(r.settings().withFeedingLoss(rings).withHerdFactor(null)),
                -cost,
                "A fifth of what the feeders cost is counted; enter your own price. Room for all at once needs more."));
    }

    private Optional<Step> windbreak() {
        var weather = yard.ranch().settings().weather();
        if (weather == null || weather.isSheltered()) {
            return Optional.empty();
        }
        return Optional.of(of(
                "windbreak",
                "Put up a windbreak for all",
                soon("soon_days"),
                r -> r.with(r.settings().with(weather.sheltered())),
                0,
                "What it costs is not counted: panels, posts and labor are yours to price."));
    }

    private Optional<Group> cows() {
        return yard.ranch().groups().values().stream()
                .filter(group -> group.animals() == AnimalClass.MATURE_COW)
                .max(Comparator.comparingInt(Group::head));
    }

    private Optional<Step> sell() {
        return cows().filter(group -> group.head() >= TEN).map(group -> {
            int sold = group.head() / TEN;
            double each = Facts.value("bred_cow_usd") - Facts.value("bred_cow_kept_usd");
            return of(
                    "sell",
                    "Sell %d bred cows of %s".formatted(sold, group.name()),
                    soon("sell_days"),
                    r -> r.with(without(group, sold)),
                    sold * each,
                    "They bring $%,.0f each and next year’s calf goes with them: $%,.0f each is what a bred cow kept is taken to be worth. Taxes: ask your accountant."
                            .formatted(Facts.value("bred_cow_usd"), Facts.value("bred_cow_kept_usd")));
        });
    }

    private static Group without(Group g, int sold) {
        var calving = new ArrayList<Group.CalvingWeek>();
        double share = 1 - (double) sold / g.head();
        int left = g.head() - sold;
        for (var week : g.calving()) {
            int head = Math.min(left, (int) Math.round(week.head() * share));
            left -= head;
            calving.add(new Group.CalvingWeek(week.begins(), head));
        }
        return g.counting(g.head() - sold, calving);
    }

    /** Dry mature cows elsewhere, until two months before the first is due. */
    private Optional<Step> stalks() {
        return cows().flatMap(group -> {
            int weeks = (int) Facts.value("stalk_weeks");
            boolean fits = group.firstCalving()
                    .map(first -> yard.day().plusWeeks(weeks).plusDays(60).isBefore(first))
                    .orElse(false);
            return fits
                    ? Optional.of(new Step(
                            "stalks",
                            "Graze cornstalks or a standing meadow, if any can be had, with the mature cows for %d weeks from now"
                                    .formatted(weeks),
                            soon("soon_days"),
                            r -> r,
                            Set.of(),
                            weeks,
                            r -> -matureCows(r) * weeks * 7.0 * Facts.value("stalk_usd"),
                            "At $%.2f per head per day, hauling and fence not counted; they hold condition there only while snow lets them."
                                    .formatted(Facts.value("stalk_usd"))))
                    : Optional.empty();
        });
    }

    private static int matureCows(Ranch ranch) {
        return ranch.groups().values().stream()
                .filter(g -> g.animals() == AnimalClass.MATURE_COW)
                .mapToInt(Group::head)
                .sum();
    }
}
