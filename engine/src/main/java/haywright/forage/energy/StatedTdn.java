package haywright.forage.energy;

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
    /** A laboratory seldom says which equation it took; the published ones part by as much as each is wrong. */
    static final Residual OF_A_LABORATORY = new Residual(
            4,
            Source.judgment(
                    "a laboratory's own TDN, its equation not known: 3 points of the equation and 3 of which one"));

    public StatedTdn {
        NetEnergy.refuseTdn(percent);
    }

    @Override
    public Optional<Residual> residual() {
        return origin instanceof Origin.Typed ? Optional.of(OF_A_LABORATORY) : Optional.empty();
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
