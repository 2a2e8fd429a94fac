package haywright.forage;

import haywright.quantity.Unit;
import haywright.workings.Input;
import haywright.workings.Line;
import haywright.workings.Origin;
import haywright.workings.Source;
import java.util.List;
import java.util.Optional;

/**
 * TDN as somebody else states it: a laboratory whose equation is not known, or a row of the feed book.
 *
 * @param origin who states it
 */
public record StatedTdn(double percent, Origin origin) implements Tdn {
    public StatedTdn {
        NetEnergy.refuseTdn(percent);
    }

    @Override
    public Optional<Residual> residual() {
        return Optional.empty();
    }

    @Override
    public List<Line> lines() {
        return List.of(Line.of(
                "TDN",
                "stated",
                percent,
                Unit.PERCENT,
                new Source("as stated", Source.Known.ARITHMETIC),
                new Input("stated", percent, Unit.PERCENT, origin)));
    }
}
