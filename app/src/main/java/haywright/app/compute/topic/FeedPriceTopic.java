package haywright.app.compute.topic;

import haywright.app.compute.shape.Key;
import haywright.forage.NutrientPrice;
import haywright.forage.energy.NetEnergy;
import haywright.quantity.Unit;
import haywright.workings.Caution;
import haywright.workings.Refused;
import haywright.workings.Source;
import haywright.workings.Worked;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.function.Function;
import java.util.function.ToDoubleFunction;
import org.jspecify.annotations.Nullable;

/** What a feed's dry matter, protein and energy cost, and what it is worth beside another. */
final class FeedPriceTopic {
    private FeedPriceTopic() {}

    static final Topic<In, Out> TOPIC = new Topic<>(
            "feed-price",
            "What dry matter, protein and energy cost in a feed, and its price as good as another's.",
            In.class,
            Out.class,
            """
            {"price_usd":180,"per":"ton","dm_pct":90,"cp_pct_dm":12,"tdn_pct_dm":75}""",
            FeedPriceTopic::price);

    enum Per {
        TON,
        CWT,
        LB,
        BUSHEL
    }

    record Feed(
            @Key(name = "price_usd", words = "As fed, delivered.")
            double price,

            Per per,

            @Key(name = "lb_per_bushel", words = "For a price per bushel: corn 56, barley 48.")
            OptionalDouble bushel,

            @Key(value = Unit.PERCENT, name = "dm") double dryMatter,
            @Key(value = Unit.PERCENT, of = "dm") OptionalDouble cp,
            @Key(value = Unit.PERCENT, of = "dm") OptionalDouble tdn) {
        Feed {
            if (per == Per.BUSHEL && !(bushel.orElse(0) > 0)) {
                throw new Refused(
                        "lb_per_bushel",
                        bushel.isPresent() ? String.valueOf(bushel.getAsDouble()) : "nothing",
                        "a price per bushel needs the weight of one",
                        "Corn has 56 lb, barley 48, oats 32.");
            }
        }

        /** In one of what the price is for, as fed. */
        private double kilograms() {
            return Unit.POUND.toBase(
                    switch (per) {
                        case TON -> 2000;
                        case CWT -> 100;
                        case LB -> 1;
                        case BUSHEL -> bushel.orElseThrow();
                    });
        }

        /** @param share of dry matter, percent; the component nutrient of the request */
        private NutrientPrice of(String nutrient, double share) {
            return Sent.as(Map.of("share", nutrient), () -> new NutrientPrice(price / kilograms(), dryMatter, share));
        }
    }

    record In(
            @Key(inline = true) Feed feed,

            @Key(words = "Another feed: what would this one have to cost to be as good a buy?") @Nullable
            Feed beside) {}

    record Out(
            @Key(name = "usd_per_ton_dm") double tonOfDryMatter,
            @Key(name = "usd_per_lb_dm") double poundOfDryMatter,
            @Key(name = "usd_per_kg_dm") double kilogramOfDryMatter,
            @Key(name = "usd_per_lb_cp") OptionalDouble poundOfProtein,
            @Key(name = "usd_per_kg_cp") OptionalDouble kilogramOfProtein,
            @Key(name = "usd_per_lb_tdn") OptionalDouble poundOfTdn,
            @Key(name = "usd_per_kg_tdn") OptionalDouble kilogramOfTdn,
            @Key(name = "usd_per_mcal_nem") OptionalDouble mcalForMaintenance,

            @Key(name = "break_even_usd_by_cp", words = "For as much as its price is for.")
            OptionalDouble asGoodByProtein,

            @Key(name = "break_even_usd_by_tdn", words = "For as much as its price is for.")
            OptionalDouble asGoodByTdn) {}

    private static Answer<Out> price(In in) {
        var feed = in.feed;
        var workings = new ArrayList<Worked>();
        var dry = feed.of("dryMatter", 100);
        var protein = priced(feed, "cp", feed.cp, workings);
        var energy = priced(feed, "tdn", feed.tdn, workings);
        if (workings.isEmpty()) {
            workings.add(dry);
        }
        var out = new Out(
                Unit.DOLLAR_PER_KG.to(Unit.DOLLAR_PER_TON, dry.dry()),
                perPound(dry.dry()),
                dry.dry(),
                map(protein, p -> perPound(p.nutrient())),
                map(protein, NutrientPrice::nutrient),
                map(energy, p -> perPound(p.nutrient())),
                map(energy, NutrientPrice::nutrient),
                feed.tdn.isEmpty() ? OptionalDouble.empty() : netEnergy(dry, feed.tdn.getAsDouble(), workings),
                asGood(feed, in.beside, "cp", Feed::cp),
                asGood(feed, in.beside, "tdn", Feed::tdn));
        return new Answer<>(
                out,
                true,
                workings,
                List.of(new Caution(
                        "One nutrient at a time: a feed brings several, and only a ration weighs them against each other.",
                        Source.ARITHMETIC)));
    }

    private static @Nullable NutrientPrice priced(
            Feed feed, String nutrient, OptionalDouble share, List<Worked> workings) {
        if (share.isEmpty()) {
            return null;
        }
        var price = feed.of(nutrient, share.getAsDouble());
        workings.add(price);
        return price;
    }

    private static OptionalDouble map(@Nullable NutrientPrice price, ToDoubleFunction<NutrientPrice> figure) {
        return price == null ? OptionalDouble.empty() : OptionalDouble.of(figure.applyAsDouble(price));
    }

    private static double perPound(double dollarsPerKg) {
        return Unit.DOLLAR_PER_KG.to(Unit.DOLLAR_PER_LB, dollarsPerKg);
    }

    private static OptionalDouble netEnergy(NutrientPrice dry, double tdn, List<Worked> workings) {
        var energy = new NetEnergy(tdn);
        workings.add(energy);
        return energy.nem() > 0 ? OptionalDouble.of(dry.dry() / energy.nem()) : OptionalDouble.empty();
    }

    private static OptionalDouble asGood(
            Feed feed, @Nullable Feed other, String name, Function<Feed, OptionalDouble> nutrient) {
        if (other == null) {
            return OptionalDouble.empty();
        }
        var share = nutrient.apply(feed);
        var otherShare = nutrient.apply(other);
        return share.isEmpty() || otherShare.isEmpty()
                ? OptionalDouble.empty()
                : OptionalDouble.of(feed.of(name, share.getAsDouble())
                                .worthBeside(Sent.in("beside", () -> other.of(name, otherShare.getAsDouble())))
                        * feed.kilograms());
    }
}
