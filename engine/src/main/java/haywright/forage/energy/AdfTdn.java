package haywright.forage.energy;

import haywright.forage.Percent;
import haywright.forage.Say;
import haywright.quantity.Unit;
import haywright.workings.Input;
import haywright.workings.Line;
import haywright.workings.Source;
import java.util.List;
import java.util.Optional;

/**
 * TDN by a published line from ADF alone. Ash and fat are unseen: the same bermudagrass bale gave 49 by the summative
 * equation and 63 from ADF (hayandforage.com, print article 3360). Holds from about 20 to 50 % ADF.
 *
 * @param adf percent of dry matter
 */
public record AdfTdn(AdfEquation equation, double adf) implements Tdn {
    /** No line prints its own. */
    public static final Residual RESIDUAL = new Residual(
            3,
            Source.judgment("TDN around a line from fiber: about 3 points; 6.1 was read for the summative equation"));

    public AdfTdn {
        Percent.refuseOutside("adf", "ADF", adf);
    }

    @Override
    public double percent() {
        var step = equation.step();
        double x = step == null ? adf : step.intercept() + step.slope() * adf;
        return equation.intercept() + equation.slope() * x;
    }

    @Override
    public Optional<Residual> residual() {
        return Optional.of(RESIDUAL);
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
                    Say.line(equation.intercept(), equation.slope(), "ADF"),
                    percent(),
                    Unit.PERCENT,
                    source,
                    input));
        }
        return List.of(
                Line.of(
                        "NEl",
                        Say.line(step.intercept(), step.slope(), "ADF"),
                        step.intercept() + step.slope() * adf,
                        Unit.MCAL_PER_LB,
                        source,
                        input),
                Line.of(
                        "TDN",
                        Say.line(equation.intercept(), equation.slope(), "NEl"),
                        percent(),
                        Unit.PERCENT,
                        source));
    }
}
