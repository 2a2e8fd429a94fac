package haywright.forage.energy;

import haywright.forage.Analyte;
import haywright.forage.Say;
import haywright.quantity.Unit;
import haywright.workings.Line;
import haywright.workings.Source;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * TDN of hay as it was sampled, less what its weathered layer has lost since.
 *
 * @param sampled before the weathering
 */
public record WeatheredTdn(Tdn sampled, Weathered weathered) implements Tdn {
    /** No feed has less. */
    private static final double LEAST = Analyte.TDN.possible().low();

    @Override
    public double percent() {
        return Math.max(LEAST, sampled.percent() - weathered.tdnLost());
    }

    @Override
    public Optional<Residual> residual() {
        return sampled.residual();
    }

    @Override
    public List<Line> lines() {
        var lines = new ArrayList<>(sampled.lines());
        lines.addAll(weathered.lines());
        lines.add(Line.of(
                "TDNw",
                "max(%s, TDN − loss)".formatted(Say.number(LEAST)),
                percent(),
                Unit.PERCENT,
                Source.ARITHMETIC));
        return lines;
    }
}
