package haywright.forage.energy;

import haywright.quantity.Unit;
import haywright.workings.Line;
import haywright.workings.Source;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * TDN of a forage as the sum of what is digested of each fraction (Weiss, Conrad and St-Pierre 1992). The skeleton that
 * NRC 2001 took over, without its processing adjustment; laboratories call it the Ohio or OARDC equation.
 *
 * <pre>
 * tdNFC = 0.98·(100 − (NDFn + CP + EE + ash)),   NDFn = NDF − NDICP
 * tdCP  = CP·exp(−0.012·ADIN),                   ADIN = 100·ADICP / CP, % of nitrogen
 * tdFA  = EE − 1, never under 0
 * tdNDF = 0.75·(NDFn − L)·(1 − (L / NDFn)^0.667)
 * TDN   = tdNFC + tdCP + 2.25·tdFA + tdNDF − 7   % of dry matter
 * </pre>
 *
 * Tested by its authors on 248 feeds: error 6.1 points of TDN.
 *
 * @see "Weiss, Conrad and St-Pierre, Animal Feed Science and Technology 39:95-110, 1992: what it is made of and its error
 *     were read; the coefficients are from memory"
 */
public record WeissTdn(Fractions fractions) implements Tdn {
    private static final Source SOURCE =
            Source.memory("Weiss, Conrad and St-Pierre, Animal Feed Science and Technology 39:95-110, 1992");

    /** Of its authors' 248 feeds; the edition of NRC that took its skeleton over prints none of its own. */
    static final Residual RESIDUAL = new Residual(
            6.1,
            Source.read(
                    "Weiss, Conrad and St-Pierre, Animal Feed Science and Technology 39:95-110, 1992, summary: 61 g TDN per kg"));

    public double nonFiberCarbohydrate() {
        return 0.98 * fractions.nonFiber();
    }

    public double protein() {
        double cp = fractions.cp();
        return cp == 0 ? 0 : cp * Math.exp(-0.012 * (100 * fractions.adicp() / cp));
    }

    @Override
    public double percent() {
        return nonFiberCarbohydrate() + protein() + 2.25 * fractions.fattyAcids() + fractions.digestedFiber() - 7;
    }

    @Override
    public Optional<Residual> residual() {
        return Optional.of(RESIDUAL);
    }

    @Override
    public List<Line> lines() {
        var lines = new ArrayList<Line>();
        lines.add(fractions.ndfnLine(SOURCE));
        lines.add(Line.of(
                "tdNFC",
                "0.98·(100 − (NDFn + CP + EE + ash))",
                nonFiberCarbohydrate(),
                Unit.PERCENT,
                SOURCE,
                fractions.input("CP", fractions.cp()),
                fractions.input("EE", fractions.fat()),
                fractions.input("ash", fractions.ash())));
        if (fractions.cp() == 0) {
            lines.add(Line.of("tdCP", "0·CP", 0, Unit.PERCENT, SOURCE, fractions.input("CP", 0)));
        } else {
            lines.add(Line.of(
                    "ADIN",
                    "100·ADICP / CP",
                    100 * fractions.adicp() / fractions.cp(),
                    Unit.PERCENT,
                    SOURCE,
                    fractions.input("ADICP", fractions.adicp()),
                    fractions.input("CP", fractions.cp())));
            lines.add(Line.of(
                    "tdCP",
                    "CP·exp(−0.012·ADIN)",
                    protein(),
                    Unit.PERCENT,
                    SOURCE,
                    fractions.input("CP", fractions.cp())));
        }
        lines.add(fractions.fattyAcidLine(SOURCE));
        lines.add(fractions.fiberLine(SOURCE));
        lines.add(Line.of("TDN", "tdNFC + tdCP + 2.25·tdFA + tdNDF − 7", percent(), Unit.PERCENT, SOURCE));
        return lines;
    }
}
