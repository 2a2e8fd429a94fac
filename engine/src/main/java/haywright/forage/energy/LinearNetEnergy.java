package haywright.forage.energy;

import haywright.forage.Analyte;
import haywright.forage.Percent;
import haywright.forage.Say;
import haywright.quantity.Unit;
import haywright.workings.Input;
import haywright.workings.Line;
import haywright.workings.Worked;
import java.util.List;

/**
 * Net energy by a straight line, as some laboratories print it.
 *
 * @param x TDN or ADF as the line asks, percent of dry matter
 */
public record LinearNetEnergy(EnergyLine line, double x) implements Worked {
    public LinearNetEnergy {
        if (line.from() == Analyte.TDN) {
            NetEnergy.refuseTdn(x);
        } else {
            Percent.refuseOutside("adf", "ADF", x);
        }
    }

    /** In the unit the line was printed in. */
    public double asPrinted() {
        return line.intercept() + line.slope() * x;
    }

    public double mcalPerKg() {
        return line.unit().to(Unit.MCAL_PER_KG, asPrinted());
    }

    @Override
    public List<Line> lines() {
        var from = line.from().name();
        return List.of(Line.of(
                symbol(),
                Say.line(line.intercept(), line.slope(), from),
                asPrinted(),
                line.unit(),
                line.source(),
                Input.typed(from, x, Unit.PERCENT)));
    }

    private String symbol() {
        return switch (line.gives()) {
            case NEL -> "NEl";
            case NEM -> "NEm";
            default -> "NEg";
        };
    }
}
