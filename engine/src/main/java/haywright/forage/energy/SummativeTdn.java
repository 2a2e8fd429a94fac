package haywright.forage.energy;

import haywright.forage.Percent;
import haywright.forage.Say;
import haywright.quantity.Unit;
import haywright.workings.Input;
import haywright.workings.Line;
import haywright.workings.Refused;
import haywright.workings.Source;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * TDN at maintenance as the sum of what is digested of each fraction (NRC 2001).
 *
 * <pre>
 * NDFn  = NDF − NDICP
 * tdNFC = 0.98·(100 − (NDFn + CP + EE + ash))·PAF
 * tdCP  = CP·exp(−1.2·ADICP / CP)  forage          CP·(1 − 0.4·ADICP / CP)  concentrate
 * tdFA  = EE − 1, never under 0
 * tdNDF = 0.75·(NDFn − L)·(1 − (L / NDFn)^0.667), or NDFn·NDFD / 100 where that was measured and is given
 * TDN   = tdNFC + tdCP + 2.25·tdFA + tdNDF − 7     % of dry matter
 * </pre>
 *
 * Not for animal proteins or fats, which have other rules. From memory: it reproduces six rows of the same book's Table
 * 15-1 that are themselves from memory, which supports it but does not prove it.
 *
 * @param fractions percent of dry matter
 * @param processing the processing adjustment, 1.00 unless the source says otherwise: cracked corn 0.95, rolled barley
 *     1.04, normal corn silage 0.94
 * @param ndfd digested in 48 hours, percent of NDF; empty where lignin is to say it
 * @see "NRC, Nutrient Requirements of Dairy Cattle, 7th revised edition 2001, chapter 2"
 */
public record SummativeTdn(Fractions fractions, Kind kind, double processing, OptionalDouble ndfd) implements Tdn {
    static final Source SOURCE =
            Source.memory("NRC, Nutrient Requirements of Dairy Cattle, 7th revised edition 2001, chapter 2");

    /** Decides how bound protein counts. */
    public enum Kind {
        FORAGE,
        CONCENTRATE
    }

    public SummativeTdn {
        if (!(processing >= 0.5 && processing <= 1.5)) {
            throw new Refused(
                    "processing",
                    Say.number(processing),
                    "the processing adjustment lies near 1: published ones go from 0.87 to 1.04",
                    "Leave it at 1 if the feed is not in the source's list.");
        }
        ndfd.ifPresent(share -> Percent.refuseOutside("ndfd48", "NDF digested in 48 hours", share));
    }

    public SummativeTdn(Fractions fractions, Kind kind, double processing) {
        this(fractions, kind, processing, OptionalDouble.empty());
    }

    public double nonFiberCarbohydrate() {
        return 0.98 * fractions.nonFiber() * processing;
    }

    public double protein() {
        double cp = fractions.cp();
        if (cp == 0) {
            return 0;
        }
        double bound = fractions.adicp() / cp;
        return kind == Kind.FORAGE ? cp * Math.exp(-1.2 * bound) : cp * (1 - 0.4 * bound);
    }

    public double fattyAcids() {
        return fractions.fattyAcids();
    }

    public double fiber() {
        return ndfd.isPresent() ? fractions.ndfn() * ndfd.getAsDouble() / 100 : fractions.digestedFiber();
    }

    @Override
    public double percent() {
        return nonFiberCarbohydrate() + protein() + 2.25 * fattyAcids() + fiber() - 7;
    }

    @Override
    public Optional<Residual> residual() {
        return Optional.of(WeissTdn.RESIDUAL);
    }

    @Override
    public List<Line> lines() {
        var lines = new ArrayList<Line>();
        lines.add(fractions.ndfnLine(SOURCE));
        lines.add(Line.of(
                "tdNFC",
                "0.98·(100 − (NDFn + CP + EE + ash))·PAF",
                nonFiberCarbohydrate(),
                Unit.PERCENT,
                SOURCE,
                fractions.input("CP", fractions.cp()),
                fractions.input("EE", fractions.fat()),
                fractions.input("ash", fractions.ash()),
                Input.typed("PAF", processing, Unit.NONE)));
        lines.add(fractions.proteinLine(kind, SOURCE));
        lines.add(fractions.fattyAcidLine(SOURCE));
        lines.add(
                ndfd.isPresent()
                        ? Line.of(
                                "tdNDF",
                                "NDFn·NDFD / 100",
                                fiber(),
                                Unit.PERCENT,
                                SOURCE,
                                Input.typed("NDFD", ndfd.getAsDouble(), Unit.PERCENT))
                        : fractions.fiberLine(SOURCE));
        lines.add(Line.of("TDN", "tdNFC + tdCP + 2.25·tdFA + tdNDF − 7", percent(), Unit.PERCENT, SOURCE));
        return lines;
    }
}
