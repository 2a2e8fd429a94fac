package haywright.season;

import haywright.cattle.AnimalClass;
import haywright.cattle.herd.Group;
import haywright.forage.FeedClass;
import haywright.outlook.HayFacts;
import haywright.outlook.UsualPrices;
import haywright.outlook.Yard;
import haywright.quantity.Quantity;
import haywright.quantity.Unit;
import haywright.ranch.FeedForSale;
import haywright.ranch.Ranch;
import haywright.season.given.Facts;
import haywright.season.given.Season;
import java.nio.charset.StandardCharsets;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import java.util.function.ToDoubleFunction;
import java.util.function.UnaryOperator;

/** What a ranch could do on a day, each with the last day for it and what it costs or brings beside feed. */
final class Steps {
    private static final int TEN = 10;
    /** Cows are moved and checked no later than this before the first calves (judgment). */
    private static final int NEAR_CALVING = 60;

    private static final int JULY = 7;
    /** From mid-November to mid-March. */
    private static final double LOW_TO_HIGH = 120;

    private static final double CALF_POUNDS = 500;
    /** Calves younger than this are not weaned (judgment). */
    private static final int YOUNGEST = 100;

    private static final int USUAL_WEANING = 205;
    private static final int FEWEST_WEEKS = 3;
    private static final Set<FeedClass> BY_PRODUCTS =
            Set.of(FeedClass.DISTILLERS_GRAINS, FeedClass.BYPRODUCT_PROTEIN, FeedClass.BYPRODUCT_ENERGY);

    private final Yard yard;
    private final Season season;

    /**
     * Something that could be done.
     *
     * @param ranch what it makes of the ranch
     * @param beside dollars of it that are not feed, by the ranch that it is done on
     * @param ask what is not counted
     */
    record Step(
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

    Steps(Yard yard, Season season) {
        this.yard = yard;
        this.season = season;
    }

    List<Step> all() {
        var steps = new ArrayList<Step>();
        test().ifPresent(steps::add);
        buy(steps);
        feeders().ifPresent(steps::add);
        windbreak().ifPresent(steps::add);
        sell().ifPresent(steps::add);
        open().ifPresent(steps::add);
        calves().ifPresent(steps::add);
        wean().ifPresent(steps::add);
        byProduct().ifPresent(steps::add);
        stalks().ifPresent(steps::add);
        custom().ifPresent(steps::add);
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
                r -> r.with(forSale("hay now", FeedClass.GRASS_HAY, tons, price)),
                0,
                "If it can be had at that price."));
        var february = LocalDate.of(yard.day().getYear(), 2, 1);
        var later = yard.day().isBefore(february) ? february : february.plusYears(1);
        if (later.isBefore(season.begins(season.weeks()))) {
            steps.add(of(
                    "buy-later",
                    "Buy up to %.0f tons of hay in February at $%.0f".formatted(tons, late),
                    later,
                    r -> r.with(forSale("hay later", FeedClass.GRASS_HAY, tons, late)),
                    0,
                    "If there is any left for sale by then."));
        }
    }

    private static FeedForSale forSale(String name, FeedClass kind, double tons, double price) {
        return new FeedForSale(
                UUID.nameUUIDFromBytes(name.getBytes(StandardCharsets.UTF_8)),
                name,
                kind,
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
                    "They bring $%,.0f each, and next year’s calf goes with them. We figure a bred cow you keep is worth $%,.0f. Taxes: ask your accountant."
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
                            "Put the mature cows on cornstalks or a standing meadow for the next %d weeks, if you can find one"
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

    /** Those that are open: said so, or as many as usual where all are down to calve and nobody may have checked. */
    private Optional<Step> open() {
        return cows().filter(group -> group.firstCalving()
                        .map(first -> yard.day().plusDays(NEAR_CALVING).isBefore(first))
                        .orElse(false))
                .flatMap(group -> {
                    int due = group.calving().stream()
                            .mapToInt(Group.CalvingWeek::head)
                            .sum();
                    boolean isSaid = due < group.head();
                    int open = isSaid
                            ? group.head() - due
                            : (int) Math.round(group.head() * Facts.value("open_share") / 100);
                    double now = openUsd(yard.day());
                    double spring = Facts.value("open_spring_usd");
                    return open == 0 || open == group.head()
                            ? Optional.empty()
                            : Optional.of(of(
                                    "open",
                                    isSaid
                                            ? "Sell the %d open cows of %s".formatted(open, group.name())
                                            : "Pregnancy check %s and sell the open ones: %d if %.0f in 100 are"
                                                    .formatted(group.name(), open, Facts.value("open_share")),
                                    soon("soon_days"),
                                    r -> r.with(isSaid ? group.counting(due, group.calving()) : without(group, open)),
                                    open * (now - spring) - (isSaid ? 0 : group.head() * Facts.value("preg_check_usd")),
                                    "They bring about $%,.0f each now and $%,.0f in mid-March, with no calf either way. %sTaxes: ask your accountant."
                                            .formatted(
                                                    now, spring, isSaid ? "" : "Leave it out if all were checked. ")));
                });
    }

    /** From the low of mid-November to mid-March, evenly. */
    private static double openUsd(LocalDate day) {
        var low = LocalDate.of(day.getMonthValue() < JULY ? day.getYear() - 1 : day.getYear(), 11, 15);
        double share = Math.max(0, Math.min(1, ChronoUnit.DAYS.between(low, day) / LOW_TO_HIGH));
        return Facts.value("open_fall_usd") + share * (Facts.value("open_spring_usd") - Facts.value("open_fall_usd"));
    }

    /** The calves now, instead of in spring at what they weigh then. */
    private Optional<Step> calves() {
        return yard.ranch().groups().values().stream()
                .filter(group -> group.animals() == AnimalClass.GROWING)
                .filter(group -> yard.ranch().groups().size() > 1)
                .max(Comparator.comparingInt(Group::head))
                .map(group -> {
                    long days = Math.max(
                            0,
                            ChronoUnit.DAYS.between(
                                    yard.day(), Objects.requireNonNullElse(group.turnout(), season.grass())));
                    double pounds = group.weight().in(Unit.POUND);
                    double later = pounds + days * group.gain().in(Unit.POUND_A_DAY);
                    double beside =
                            group.head() * (calfUsd(pounds) - calfUsd(later) + days * Facts.value("calf_cost_usd"));
                    return of(
                            "sell-calves",
                            "Sell the %d head of %s now instead of feeding them to turnout"
                                    .formatted(group.head(), group.name()),
                            soon("soon_days"),
                            r -> r.withoutGroup(group.id()),
                            beside,
                            "They bring about $%,.0f each now at %,.0f lb, and $%,.0f at turnout at %,.0f lb. Not for heifers you mean to keep. Ask for the price of the day; taxes: ask your accountant."
                                    .formatted(calfUsd(pounds), pounds, calfUsd(later), later));
                });
    }

    /** Dollars a head. */
    static double calfUsd(double pounds) {
        double aPound = Facts.value("calf_usd") - Facts.value("calf_slide") * (pounds - CALF_POUNDS) / 100;
        return pounds * Math.max(1, aPound);
    }

    /** In August and September alone, and only where calves still suck. */
    private Optional<Step> wean() {
        var by = LocalDate.of(yard.day().getYear(), 9, 30);
        var first = LocalDate.of(yard.day().getYear(), 8, 1);
        if (yard.day().isBefore(first) || yard.day().isAfter(by)) {
            return Optional.empty();
        }
        return yard.ranch().groups().values().stream()
                .filter(group -> group.animals().calves())
                .filter(group -> group.firstCalving()
                        .map(date -> date.isBefore(yard.day().minusDays(YOUNGEST)))
                        .orElse(false))
                .filter(group -> group.weaning() == null || group.weaning().isAfter(by))
                .max(Comparator.comparingInt(Group::head))
                .map(group -> {
                    var usual = group.weaning() == null
                            ? group.firstCalving().orElseThrow().plusDays(USUAL_WEANING)
                            : group.weaning();
                    var early = soonest(yard.day().plusDays(7), by);
                    long days = Math.max(0, ChronoUnit.DAYS.between(early, usual));
                    return of(
                            "wean",
                            "Wean the calves of %s early, by the end of September".formatted(group.name()),
                            by,
                            r -> r.with(group.dated(group.calving(), early, group.turnout())),
                            -group.head() * days * Facts.value("early_pounds") * Facts.value("early_usd"),
                            "The calves are counted as gaining %.1f lb a day less until %s, at $%.2f a pound. Good feed makes that up; ask your veterinarian about shots first."
                                    .formatted(Facts.value("early_pounds"), usual, Facts.value("early_usd")));
                });
    }

    private static LocalDate soonest(LocalDate one, LocalDate other) {
        return one.isBefore(other) ? one : other;
    }

    /** Where none is listed for sale. */
    private Optional<Step> byProduct() {
        boolean isListed =
                yard.ranch().feedsForSale().values().stream().anyMatch(sale -> BY_PRODUCTS.contains(sale.feedClass()));
        double tons = Facts.value("buy_tons");
        double price = UsualPrices.of(FeedClass.DISTILLERS_GRAINS).value();
        return isListed
                ? Optional.empty()
                : Optional.of(of(
                        "by-product",
                        "Contract up to %.0f tons of dried distillers grains at $%.0f".formatted(tons, price),
                        soon("soon_days"),
                        r -> r.with(forSale("by-product", FeedClass.DISTILLERS_GRAINS, tons, price)),
                        0,
                        "At a usual price: ask for a quote. Have sulfur tested where the water is high in it."));
    }

    /** Dry mature cows on feed at another place. */
    private Optional<Step> custom() {
        return cows().flatMap(group -> {
            var first = group.firstCalving();
            long most = first.map(date -> ChronoUnit.DAYS.between(yard.day(), date.minusDays(NEAR_CALVING)) / 7)
                    .orElse(0L);
            int weeks = (int) Math.min(most, (long) Facts.value("custom_weeks"));
            return weeks < FEWEST_WEEKS
                    ? Optional.empty()
                    : Optional.of(new Step(
                            "custom",
                            "Send the mature cows out to be fed for the next %d weeks".formatted(weeks),
                            soon("soon_days"),
                            r -> r,
                            Set.of(),
                            weeks,
                            r -> -matureCows(r) * (weeks * 7.0 * Facts.value("custom_usd") + Facts.value("haul_usd")),
                            "At $%.2f per head per day and $%.0f a head for the haul. Ask who pays for death loss and who answers for condition."
                                    .formatted(Facts.value("custom_usd"), Facts.value("haul_usd"))));
        });
    }

    private static int matureCows(Ranch ranch) {
        return ranch.groups().values().stream()
                .filter(g -> g.animals() == AnimalClass.MATURE_COW)
                .mapToInt(Group::head)
                .sum();
    }
}
