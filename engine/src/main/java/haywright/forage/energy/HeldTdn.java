package haywright.forage.energy;

import haywright.quantity.Unit;
import haywright.workings.Input;
import haywright.workings.Line;
import haywright.workings.Source;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * TDN from a line, where the laboratory that measured the fiber prints less: held to what the line may be off above the
 * laboratory's own, with half of what is then left between the two as a doubt of its own beside the line's.
 * <pre>
 * TDNh = min(TDN, TDNp + s)        sd = sqrt(s² + ((TDNh − TDNp)/2)²)        points; s of the line
 * </pre>
 * Nobody knows which of the two is right: of two published figures the careful one is taken, as far as they part by more
 * than the line itself may be off. More of a good thing on the sheet never makes it less.
 *
 * @param printed by the laboratory, below the line's
 */
public record HeldTdn(AdfTdn line, StatedTdn printed) implements Tdn {
    private static final Source CAREFUL = Source.judgment(
            "where a line and the laboratory part by more than the line may be off, no more than that over the laboratory's");

    private double most() {
        return printed.percent() + AdfTdn.RESIDUAL.sd();
    }

    @Override
    public double percent() {
        return Math.min(line.percent(), most());
    }

    /** Whether the line itself says more. */
    public boolean isHeld() {
        return line.percent() > most();
    }

    @Override
    public Optional<Residual> residual() {
        double apart = Math.max(0, percent() - printed.percent()) / 2;
        return Optional.of(new Residual(Math.hypot(AdfTdn.RESIDUAL.sd(), apart), CAREFUL));
    }

    @Override
    public List<Line> lines() {
        var lines = new ArrayList<>(line.lines());
        lines.add(Line.of(
                "TDNh",
                "min(TDN, TDNp + s)",
                percent(),
                Unit.PERCENT,
                CAREFUL,
                new Input("TDNp", printed.percent(), Unit.PERCENT, printed.origin()),
                Input.published("s", AdfTdn.RESIDUAL.sd(), Unit.PERCENT, AdfTdn.RESIDUAL.source())));
        return lines;
    }
}
