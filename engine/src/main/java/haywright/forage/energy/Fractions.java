package haywright.forage.energy;

import haywright.forage.Analyte;
import haywright.forage.Percent;
import haywright.forage.Say;
import haywright.quantity.Unit;
import haywright.workings.Input;
import haywright.workings.Line;
import haywright.workings.Problem;
import haywright.workings.Refused;
import haywright.workings.Source;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Function;

/**
 * What the summative equations ask of a sample, percent of dry matter, with the lines that both editions share.
 *
 * @throws Refused if the parts cannot belong to one sample
 */
public record Fractions(double ndf, double ndicp, double lignin, double cp, double adicp, double fat, double ash) {
    private static final List<Analyte> PARTS =
            List.of(Analyte.NDF, Analyte.NDICP, Analyte.LIGNIN, Analyte.CP, Analyte.ADICP, Analyte.FAT, Analyte.ASH);

    public Fractions {
        var problems = new ArrayList<Problem>();
        Percent.check(problems, "ndf", "NDF", ndf);
        Percent.check(problems, "ndicp", "NDICP", ndicp);
        Percent.check(problems, "lignin", "lignin", lignin);
        Percent.check(problems, "cp", "CP", cp);
        Percent.check(problems, "adicp", "ADICP", adicp);
        Percent.check(problems, "fat", "fat", fat);
        Percent.check(problems, "ash", "ash", ash);
        if (problems.isEmpty()) {
            part(problems, "lignin", "lignin", lignin, "NDF without its protein", ndf - ndicp);
            part(problems, "ndicp", "NDICP", ndicp, "crude protein", cp);
            part(problems, "adicp", "ADICP", adicp, "crude protein", cp);
            if (ndf - ndicp + cp + fat + ash > 100) {
                problems.add(new Problem(
                        "ash",
                        "NDF without its protein, protein, fat and ash add up to "
                                + Say.number(ndf - ndicp + cp + fat + ash) + " %",
                        "they leave no room: together they are at most 100 % of dry matter",
                        "Is one of them as received, or in another unit?"));
            }
        }
        Refused.unlessEmpty(problems);
    }

    private static void part(
            List<Problem> problems, String field, String name, double value, String whole, double wholeValue) {
        if (value > wholeValue) {
            problems.add(new Problem(
                    field,
                    "%s %s %% beside %s %s %%".formatted(name, Say.number(value), whole, Say.number(wholeValue)),
                    "%s is part of %s and cannot be more".formatted(name, whole),
                    "Is it printed as a share of the part, not of dry matter?"));
        }
    }

    /**
     * @param measured percent of dry matter
     * @return empty where one is not known, or where they cannot belong to one sample
     */
    static Optional<Fractions> of(Function<Analyte, OptionalDouble> measured) {
        var parts = PARTS.stream()
                .flatMapToDouble(analyte -> measured.apply(analyte).stream())
                .toArray();
        if (parts.length < PARTS.size()) {
            return Optional.empty();
        }
        try {
            return Optional.of(new Fractions(parts[0], parts[1], parts[2], parts[3], parts[4], parts[5], parts[6]));
        } catch (Refused e) {
            return Optional.empty(); // a report is told so by its rules
        }
    }

    /** NDF less the protein bound in it. */
    double ndfn() {
        return ndf - ndicp;
    }

    double nonFiber() {
        return 100 - (ndfn() + cp + fat + ash);
    }

    double fattyAcids() {
        return Math.max(0, fat - 1);
    }

    double digestedFiber() {
        return ndfn() == 0 ? 0 : 0.75 * (ndfn() - lignin) * (1 - Math.pow(lignin / ndfn(), 0.667));
    }

    Input input(String symbol, double value) {
        return Input.typed(symbol, value, Unit.PERCENT);
    }

    Line ndfnLine(Source source) {
        return Line.of("NDFn", "NDF − NDICP", ndfn(), Unit.PERCENT, source, input("NDF", ndf), input("NDICP", ndicp));
    }

    Line proteinLine(SummativeTdn.Kind kind, Source source) {
        boolean forage = kind == SummativeTdn.Kind.FORAGE;
        if (cp == 0) {
            return Line.of("tdCP", "0·CP", 0, Unit.PERCENT, source, input("CP", cp));
        }
        return Line.of(
                "tdCP",
                forage ? "CP·exp(−1.2·ADICP / CP)" : "CP·(1 − 0.4·ADICP / CP)",
                forage ? cp * Math.exp(-1.2 * adicp / cp) : cp * (1 - 0.4 * adicp / cp),
                Unit.PERCENT,
                source,
                input("CP", cp),
                input("ADICP", adicp));
    }

    Line fattyAcidLine(Source source) {
        return Line.of("tdFA", "max(0, EE − 1)", fattyAcids(), Unit.PERCENT, source, input("EE", fat));
    }

    Line fiberLine(Source source) {
        return ndfn() == 0
                ? Line.of("tdNDF", "0·NDFn", 0, Unit.PERCENT, source)
                : Line.of(
                        "tdNDF",
                        "0.75·(NDFn − L)·(1 − (L / NDFn)^0.667)",
                        digestedFiber(),
                        Unit.PERCENT,
                        source,
                        input("L", lignin));
    }
}
