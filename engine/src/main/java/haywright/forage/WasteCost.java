package haywright.forage;

import static haywright.quantity.Unit.DOLLAR_PER_KG;

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
 * What waste makes of a price: what is lost costs as much as what is eaten.
 * <pre>
 * eaten = price / (1 − w/100)        dollars a kg that is eaten
 * lost  = price·w/100                dollars lost of each kg put out
 * </pre>
 *
 * @param price dollars a kg as fed, above 0
 * @param lossPercent w, of what is put out, 0 to under 100
 * @see "Schmitz (University of Missouri) in Wyoming Livestock Roundup 2023: price over what is eaten"
 * @see "Wells and Lalman (Oklahoma State), Noble Ag News and Views, October 2011: dollars lost a bale by feeder"
 */
public record WasteCost(double price, double lossPercent) implements Worked {
    private static final Source SOURCE =
            Source.read("Schmitz (University of Missouri) in Wyoming Livestock Roundup 2023: price over what is eaten");

    public WasteCost {
        var problems = new ArrayList<Problem>();
        if (!(price > 0 && Double.isFinite(price))) {
            problems.add(new Problem("price", "$" + price, "a price is above 0", "What would it cost, delivered?"));
        }
        if (!(lossPercent >= 0 && lossPercent < 100)) {
            problems.add(new Problem(
                    "loss",
                    lossPercent + " %",
                    "what is wasted is 0 or more and less than all of it",
                    "In a ring about 6 %, on the ground 20 to 30 %."));
        }
        Refused.unlessEmpty(problems);
    }

    /** Dollars a kg that is eaten. */
    public double eaten() {
        return price / (1 - lossPercent / 100);
    }

    /** Dollars lost of each kg put out. */
    public double lost() {
        return price * lossPercent / 100;
    }

    @Override
    public List<Line> lines() {
        return List.of(
                Line.of(
                        "eaten",
                        "price / (1 − w/100)",
                        eaten(),
                        DOLLAR_PER_KG,
                        SOURCE,
                        Input.typed("price", price, DOLLAR_PER_KG),
                        Input.typed("w", lossPercent, Unit.PERCENT)),
                Line.of(
                        "lost",
                        "price·w/100",
                        lost(),
                        DOLLAR_PER_KG,
                        SOURCE,
                        Input.typed("price", price, DOLLAR_PER_KG),
                        Input.typed("w", lossPercent, Unit.PERCENT)));
    }
}
