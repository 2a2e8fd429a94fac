package haywright.forage;

import haywright.quantity.Unit;
import haywright.workings.Input;
import haywright.workings.Line;
import haywright.workings.Problem;
import haywright.workings.Refused;
import haywright.workings.Source;
import haywright.workings.Worked;
import java.util.ArrayList;
import java.util.List;

/**
 * What a kilogram of a nutrient costs in a feed.
 *
 * <pre>
 * dry      = price·100 / DM         dollars a kg of dry matter
 * nutrient = dry·100 / share        dollars a kg of it
 * </pre>
 *
 * Of one nutrient alone: a feed brings several, and only a ration weighs them against each other.
 *
 * @param price dollars a kg as fed, above 0
 * @param dryMatter percent
 * @param share of the nutrient, percent of dry matter, above 0
 * @see "Alabama Cooperative Extension, By-product Feeds Quick Reference Guide: dollars a pound of nutrient"
 */
public record NutrientPrice(double price, double dryMatter, double share) implements Worked {
    private static final Source SOURCE = Source.read(
            "Alabama Cooperative Extension, By-product Feeds Quick Reference Guide: dollars a pound of nutrient");

    public NutrientPrice {
        var problems = new ArrayList<Problem>();
        if (!(price > 0 && Double.isFinite(price))) {
            problems.add(new Problem("price", "$" + price, "a price is above 0", "What would it cost, delivered?"));
        }
        Percent.check(problems, "dryMatter", "Dry matter", dryMatter);
        Percent.check(problems, "share", "The nutrient", share);
        if (problems.isEmpty() && !(dryMatter > 0 && share > 0)) {
            problems.add(new Problem(
                    "share",
                    "%s %% of %s %% dry matter".formatted(Say.number(share), Say.number(dryMatter)),
                    "a feed without it has no price for it",
                    "Choose another nutrient."));
        }
        Refused.unlessEmpty(problems);
    }

    /** Dollars a kg of dry matter. */
    public double dry() {
        return price * 100 / dryMatter;
    }

    /** Dollars a kg of the nutrient. */
    public double nutrient() {
        return dry() * 100 / share;
    }

    /** Kilograms of the nutrient in a weight as fed. */
    public double in(double kilograms) {
        return kilograms * dryMatter / 100 * share / 100;
    }

    /** The price as fed at which this feed brings the nutrient at what it costs in another, dollars a kg. */
    public double worthBeside(NutrientPrice other) {
        return other.nutrient() * in(1);
    }

    @Override
    public List<Line> lines() {
        return List.of(
                Line.of(
                        "dry",
                        "price·100 / DM",
                        dry(),
                        Unit.DOLLAR_PER_KG,
                        SOURCE,
                        Input.typed("price", price, Unit.DOLLAR_PER_KG),
                        Input.typed("DM", dryMatter, Unit.PERCENT)),
                Line.of(
                        "nutrient",
                        "dry·100 / share",
                        nutrient(),
                        Unit.DOLLAR_PER_KG,
                        SOURCE,
                        Input.typed("share", share, Unit.PERCENT)));
    }
}
