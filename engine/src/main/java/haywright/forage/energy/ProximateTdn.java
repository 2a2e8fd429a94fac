package haywright.forage.energy;

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

/**
 * TDN from the old proximate analysis: what is digested of each of its fractions, by one set of coefficients.
 *
 * <pre>
 * NFE = 100 − (CP + EE + CF + ash)
 * TDN = 0.75·CP + 0.50·CF + 0.90·NFE + 2.25·0.90·EE      % of dry matter
 * </pre>
 *
 * A teaching equation: its coefficients are those of no feed in particular, and its source prints neither range nor error.
 * Never taken for a lot; asked for by name only.
 *
 * @param cp crude protein, percent of dry matter, as the rest
 * @param cf crude fiber
 * @param fat ether extract
 * @see "Feed sampling and analysis, teaching slides read at slidetodoc.com: NFE and TDN from proximate analysis"
 */
public record ProximateTdn(double cp, double cf, double fat, double ash) implements Tdn {
    private static final Source SOURCE =
            Source.read("Feed sampling and analysis, teaching slides: NFE and TDN from proximate analysis");

    public ProximateTdn {
        var problems = new ArrayList<Problem>();
        Percent.check(problems, "cp", "CP", cp);
        Percent.check(problems, "cf", "Crude fiber", cf);
        Percent.check(problems, "fat", "Fat", fat);
        Percent.check(problems, "ash", "Ash", ash);
        if (problems.isEmpty() && cp + cf + fat + ash > 100) {
            problems.add(new Problem(
                    "cf",
                    "together %s %%".formatted(Say.number(cp + cf + fat + ash)),
                    "protein, crude fiber, fat and ash are parts of the dry matter",
                    "Is one of them NDF, or as received?"));
        }
        Refused.unlessEmpty(problems);
    }

    public double nitrogenFreeExtract() {
        return 100 - (cp + fat + cf + ash);
    }

    @Override
    public double percent() {
        return 0.75 * cp + 0.50 * cf + 0.90 * nitrogenFreeExtract() + 2.25 * 0.90 * fat;
    }

    @Override
    public Optional<Residual> residual() {
        return Optional.empty();
    }

    @Override
    public List<Line> lines() {
        var protein = Input.typed("CP", cp, Unit.PERCENT);
        var fiber = Input.typed("CF", cf, Unit.PERCENT);
        var ether = Input.typed("EE", fat, Unit.PERCENT);
        return List.of(
                Line.of(
                        "NFE",
                        "100 − (CP + EE + CF + ash)",
                        nitrogenFreeExtract(),
                        Unit.PERCENT,
                        SOURCE,
                        protein,
                        ether,
                        fiber,
                        Input.typed("ash", ash, Unit.PERCENT)),
                Line.of(
                        "TDN",
                        "0.75·CP + 0.50·CF + 0.90·NFE + 2.25·0.90·EE",
                        percent(),
                        Unit.PERCENT,
                        SOURCE,
                        protein,
                        fiber,
                        ether));
    }
}
