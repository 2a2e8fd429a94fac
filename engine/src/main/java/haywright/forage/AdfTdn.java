package haywright.forage;

import haywright.quantity.Unit;
import haywright.workings.Input;
import haywright.workings.Line;
import java.math.BigDecimal;
import java.util.List;

/**
 * TDN by a published line from ADF alone. Ash and fat are unseen: the same bermudagrass bale gave 49 by the summative
 * equation and 63 from ADF (hayandforage.com, print article 3360). Holds from about 20 to 50 % ADF.
 *
 * @param adf per cent of dry matter
 */
public record AdfTdn(AdfEquation equation, double adf) implements Tdn {
    public AdfTdn {
        Percent.refuseOutside("adf", "ADF", adf);
    }

    @Override
    public double percent() {
        var step = equation.step();
        double x = step == null ? adf : step.intercept() + step.slope() * adf;
        return equation.intercept() + equation.slope() * x;
    }

    /** Whether ADF lies where such lines were fitted. */
    public boolean inRange() {
        return adf >= 20 && adf <= 50;
    }

    @Override
    public List<Line> lines() {
        var source = equation.source();
        var input = Input.typed("ADF", adf, Unit.PERCENT);
        var step = equation.step();
        if (step == null) {
            return List.of(Line.of(
                    "TDN",
                    line(equation.intercept(), equation.slope(), "ADF"),
                    percent(),
                    Unit.PERCENT,
                    source,
                    input));
        }
        return List.of(
                Line.of(
                        "NEl",
                        line(step.intercept(), step.slope(), "ADF"),
                        step.intercept() + step.slope() * adf,
                        Unit.MCAL_PER_LB,
                        source,
                        input),
                Line.of("TDN", line(equation.intercept(), equation.slope(), "NEl"), percent(), Unit.PERCENT, source));
    }

    private static String line(double intercept, double slope, String symbol) {
        return "%s %s %s·%s".formatted(plain(intercept), slope < 0 ? "−" : "+", plain(Math.abs(slope)), symbol);
    }

    private static String plain(double coefficient) {
        return BigDecimal.valueOf(coefficient).stripTrailingZeros().toPlainString();
    }
}
