package haywright.app.web.lab;

import haywright.app.words.Measures;
import haywright.app.words.Show;
import haywright.forage.Analyte;
import haywright.forage.Composition;
import haywright.forage.NutrientPrice;
import haywright.forage.hazard.MineralTies;
import haywright.quantity.Unit;
import haywright.ranch.Lot;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/** What a lot costs by what is in it, and how its minerals stand to each other, as numbers. */
public final class LotWorth {
    private LotWorth() {}

    /** @param value empty where it is not known */
    public record Number(String what, String value, String then) {}

    static List<Number> of(Lot lot, Composition made) {
        return of(lot, made, made);
    }

    /** @param minerals what the ratios are taken of: where the sheet's own are judged, the sheet's own */
    static List<Number> of(Lot lot, Composition made, Composition minerals) {
        var numbers = new ArrayList<Number>();
        var replaced = lot.replacementPrice();
        numbers.add(new Number(
                Measures.say("Price of a {ton} as fed"),
                replaced == null ? "" : Show.price(replaced),
                replaced == null
                        ? "not said yet"
                        : "delivered"
                                + dryMatter(made)
                                        .map(dm -> ", " + Show.dryMatter(dm))
                                        .orElse("")));
        if (replaced != null) {
            double price = replaced.in(Unit.DOLLAR_PER_KG);
            numbers.add(new Number(
                    Measures.say("A {ton} of dry matter"),
                    dry(price, made).map(Show::dollars).orElse(""),
                    ""));
            numbers.add(
                    new Number("A pound of protein", cents(price, made, Analyte.CP), "counting nothing else in it"));
            numbers.add(new Number("A pound of TDN", cents(price, made, Analyte.TDN), "counting nothing else in it"));
        }
        numbers.add(new Number(
                "Calcium to phosphorus (Ca:P)",
                MineralView.toOne(new MineralTies(minerals).calciumToPhosphorus()),
                "aim for 1.5 to 2 in the whole ration; cattle do well from 1 to 7"));
        numbers.add(new Number(
                "Tetany ratio, K/(Ca + Mg)",
                number(new MineralTies(minerals).tetanyRatio(), 2, ""),
                "in milliequivalents; above 2.2 is a risk of grass tetany"));
        return numbers;
    }

    private static Optional<Double> dry(double price, Composition made) {
        return dryMatter(made)
                .map(dm -> Unit.DOLLAR_PER_KG.to(Measures.price(), new NutrientPrice(price, dm, 100).dry()));
    }

    private static String cents(double price, Composition made, Analyte nutrient) {
        var share = made.value(nutrient);
        var dm = dryMatter(made);
        if (dm.isEmpty() || share.isEmpty() || !(share.getAsDouble() > 0)) {
            return "";
        }
        double kg = new NutrientPrice(price, dm.get(), Math.min(100, share.getAsDouble())).nutrient();
        return Show.number(100 * Unit.DOLLAR_PER_KG.to(Unit.DOLLAR_PER_LB, kg), 0) + "\u00a0¢";
    }

    private static Optional<Double> dryMatter(Composition made) {
        var dm = made.value(Analyte.DM);
        return dm.isPresent() && dm.getAsDouble() > 0 ? Optional.of(dm.getAsDouble()) : Optional.empty();
    }

    private static String number(OptionalDouble ratio, int decimals, String behind) {
        return ratio.isEmpty() ? "" : Show.number(ratio.getAsDouble(), decimals) + behind;
    }
}
