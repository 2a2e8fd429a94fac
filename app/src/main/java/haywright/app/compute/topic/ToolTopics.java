package haywright.app.compute.topic;

import haywright.app.compute.shape.Key;
import haywright.forage.NutrientPrice;
import haywright.forage.Substitution;
import haywright.forage.WasteCost;
import haywright.quantity.Unit;
import haywright.workings.Problem;
import haywright.workings.Refused;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;

/** Small questions of the trade: what waste costs, what hay is worth beside grain, how much grain takes the place of hay. */
final class ToolTopics {
    private ToolTopics() {}

    static final List<Topic<?, ?>> ALL = List.of(
            new Topic<>(
                    "waste-cost",
                    "What waste makes of the price of hay.",
                    WasteIn.class,
                    WasteOut.class,
                    """
                    {"price_usd":75,"bale_lb":1200,"loss_pct":25,"bales":180}""",
                    ToolTopics::waste),
            new Topic<>(
                    "break-even-hay",
                    "The price of hay at which its TDN costs what it does in a grain.",
                    BreakEvenIn.class,
                    BreakEvenOut.class,
                    """
                    {"grain_usd_per_ton":135.4167,"grain_dm_pct":88.5,"grain_tdn_pct_dm":83.1,"hay_dm_pct":87.4,"hay_tdn_pct_dm":57.6}""",
                    ToolTopics::breakEven),
            new Topic<>(
                    "substitution",
                    "How much hay a pound of another feed takes the place of, by TDN.",
                    SubstitutionIn.class,
                    SubstitutionOut.class,
                    """
                    {"feed_dm_pct":88,"feed_tdn_pct_dm":88,"hay_dm_pct":88,"hay_tdn_pct_dm":52}""",
                    ToolTopics::substitute));

    record WasteIn(
            @Key(name = "price_usd", words = "Of one bale.") double price,

            @Key(name = "bale_lb", words = "Weight of one bale.")
            double bale,

            @Key(value = Unit.PERCENT, name = "loss", words = "Of what is put out.")
            double loss,

            @Key(words = "How many are fed.") double bales) {
        WasteIn {
            var problems = new ArrayList<Problem>();
            Sent.aboveNothing(problems, "bale", bale, "a bale weighs more than 0");
            if (!(bales >= 0)) {
                problems.add(new Problem("bales", String.valueOf(bales), "bales are 0 or more", "How many are fed?"));
            }
            Refused.unlessEmpty(problems);
        }
    }

    record WasteOut(
            @Key(name = "lost_lb_per_bale") double lostPounds,
            @Key(name = "lost_usd_per_bale") double lostDollars,
            @Key(name = "lost_usd") double lost,
            @Key(name = "eaten_lb_per_bale") double eatenPounds,
            @Key(name = "usd_per_lb_eaten") double poundEaten,
            @Key(name = "usd_per_ton_eaten") double tonEaten) {}

    private static Answer<WasteOut> waste(WasteIn in) {
        double kg = Unit.POUND.toBase(in.bale);
        var cost = new WasteCost(in.price / kg, in.loss);
        double lost = cost.lost() * kg;
        return Answer.of(
                new WasteOut(
                        in.bale * in.loss / 100,
                        lost,
                        lost * in.bales,
                        in.bale * (1 - in.loss / 100),
                        Unit.DOLLAR_PER_KG.to(Unit.DOLLAR_PER_LB, cost.eaten()),
                        Unit.DOLLAR_PER_KG.to(Unit.DOLLAR_PER_TON, cost.eaten())),
                cost);
    }

    record BreakEvenIn(
            @Key(name = "grain_usd_per_ton", words = "As fed, delivered.")
            double grainPrice,

            @Key(value = Unit.PERCENT, name = "grain_dm") double grainDryMatter,

            @Key(value = Unit.PERCENT, name = "grain_tdn", of = "dm")
            double grainTdn,

            @Key(value = Unit.PERCENT, name = "hay_dm") double hayDryMatter,

            @Key(value = Unit.PERCENT, name = "hay_tdn", of = "dm")
            double hayTdn) {}

    record BreakEvenOut(
            @Key(name = "usd_per_lb_tdn") double poundOfTdn,
            @Key(name = "hay_usd_per_ton") double hayPrice) {}

    private static Answer<BreakEvenOut> breakEven(BreakEvenIn in) {
        var grain = Sent.as(
                Map.of("price", "grainPrice", "dryMatter", "grainDryMatter", "share", "grainTdn"),
                () -> new NutrientPrice(
                        Unit.DOLLAR_PER_TON.to(Unit.DOLLAR_PER_KG, in.grainPrice), in.grainDryMatter, in.grainTdn));
        double hay = grain.nutrient() * in.hayDryMatter / 100 * in.hayTdn / 100;
        return Answer.of(
                new BreakEvenOut(
                        Unit.DOLLAR_PER_KG.to(Unit.DOLLAR_PER_LB, grain.nutrient()),
                        Unit.DOLLAR_PER_KG.to(Unit.DOLLAR_PER_TON, hay)),
                grain,
                Sent.as(
                        Map.of(
                                "dryMatter", "hayDryMatter",
                                "tdn", "hayTdn",
                                "otherDryMatter", "grainDryMatter",
                                "otherTdn", "grainTdn"),
                        () -> new Substitution(in.hayDryMatter, in.hayTdn, in.grainDryMatter, in.grainTdn)));
    }

    record SubstitutionIn(
            @Key(value = Unit.PERCENT, name = "feed_dm") double dryMatter,

            @Key(value = Unit.PERCENT, name = "feed_tdn", of = "dm")
            double tdn,

            @Key(value = Unit.PERCENT, name = "hay_dm") double hayDryMatter,

            @Key(value = Unit.PERCENT, name = "hay_tdn", of = "dm")
            double hayTdn) {}

    record SubstitutionOut(@Key(name = "lb_hay_per_lb") double replaces) {}

    private static Answer<SubstitutionOut> substitute(SubstitutionIn in) {
        var by = Sent.as(
                Map.of("otherDryMatter", "hayDryMatter", "otherTdn", "hayTdn"),
                () -> new Substitution(in.dryMatter, in.tdn, in.hayDryMatter, in.hayTdn));
        return Answer.of(new SubstitutionOut(by.replaces()), by);
    }
}
