package haywright.season;

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
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import java.util.function.ToDoubleFunction;
import java.util.function.UnaryOperator;

/** What a ranch could do on a day, each with the last day for it and what it costs or brings beside feed. */
final class Steps {
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
        steps.addAll(new HerdSteps(yard, season).all());
        byProduct().ifPresent(steps::add);
        return steps;
    }

    static LocalDate soon(LocalDate day, String fact) {
        return day.plusDays((long) Facts.value(fact));
    }

    static Step of(String id, String what, LocalDate by, UnaryOperator<Ranch> ranch, double beside, String ask) {
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
                                soon(yard.day(), "soon_days"),
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
                "Buy up to {tons:%.0f} of hay now at {usd_per_ton:%s}".formatted(tons, price),
                soon(yard.day(), "soon_days"),
                r -> r.with(forSale("hay now", FeedClass.GRASS_HAY, tons, price)),
                0,
                "If it can be had at that price."));
        var february = LocalDate.of(yard.day().getYear(), 2, 1);
        var later = yard.day().isBefore(february) ? february : february.plusYears(1);
        if (later.isBefore(season.begins(season.weeks()))) {
            steps.add(of(
                    "buy-later",
                    "Buy up to {tons:%.0f} of hay in February at {usd_per_ton:%s}".formatted(tons, late),
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
                soon(yard.day(), "soon_days"),
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
                soon(yard.day(), "soon_days"),
                r -> r.with(r.settings().with(weather.sheltered())),
                0,
                "What it costs is not counted: panels, posts and labor are yours to price."));
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
                        "Contract up to {tons:%.0f} of dried distillers grains at {usd_per_ton:%s}"
                                .formatted(tons, price),
                        soon(yard.day(), "soon_days"),
                        r -> r.with(forSale("by-product", FeedClass.DISTILLERS_GRAINS, tons, price)),
                        0,
                        "At a usual price: ask for a quote. Have sulfur tested where the water is high in it."));
    }
}
