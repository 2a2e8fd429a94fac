package haywright.forage.hazard;

import haywright.forage.Percent;
import haywright.forage.Say;
import haywright.quantity.Unit;
import haywright.workings.Input;
import haywright.workings.Line;
import haywright.workings.Problem;
import haywright.workings.Refused;
import haywright.workings.Source;
import haywright.workings.Worked;
import java.util.ArrayList;
import java.util.List;

/**
 * Crude protein less what heat has bound in the fiber. Two rules are in use and laboratories seldom say which.
 *
 * <pre>
 * r = 100·ADICP / CP                                   bound protein, % of crude protein
 * A: ACP = CP                       for r ≤ 14
 *    ACP = CP·(100 − (r − 7)) / 100 for 14 &lt; r ≤ 20
 *    ACP = CP − ADICP               for r &gt; 20
 * B: ACP = CP                       for r ≤ 10
 *    ACP = CP − ADICP + 0.10·CP     for r &gt; 10
 * </pre>
 *
 * For forages. Distillers grains are bound high and partly digested all the same: neither rule is for them.
 *
 * @param cp crude protein, percent of dry matter, above 0
 * @param adicp protein in the ADF residue, percent of dry matter
 */
public record AvailableProtein(double cp, double adicp, Rule rule) implements Worked {
    /** Which laboratories' rule. */
    public enum Rule {
        A(Source.memory("rule of the forage testing laboratories, stepped at 14 and 20 % of crude protein")),
        B(Source.memory("rule that takes off only what is above 10 % of crude protein"));

        private final Source source;

        Rule(Source source) {
            this.source = source;
        }

        public Source source() {
            return source;
        }
    }

    public AvailableProtein {
        var problems = new ArrayList<Problem>();
        Percent.check(problems, "cp", "CP", cp);
        Percent.check(problems, "adicp", "ADICP", adicp);
        if (problems.isEmpty() && !(cp > 0 && adicp <= cp)) {
            problems.add(new Problem(
                    "adicp",
                    "ADICP %s %% beside CP %s %%".formatted(Say.number(adicp), Say.number(cp)),
                    "bound protein is part of crude protein, and crude protein is above 0",
                    "Check whether ADICP is printed as a share of protein, not dry matter."));
        }
        Refused.unlessEmpty(problems);
    }

    /** Bound protein, percent of crude protein. */
    public double boundShare() {
        return 100 * adicp / cp;
    }

    /** Percent of dry matter. */
    public double percent() {
        double r = boundShare();
        if (rule == Rule.B) {
            return r <= 10 ? cp : cp - adicp + 0.10 * cp;
        }
        return r <= 14 ? cp : r <= 20 ? cp * (100 - (r - 7)) / 100 : cp - adicp;
    }

    private String formula() {
        double r = boundShare();
        if (rule == Rule.B) {
            return r <= 10 ? "CP" : "CP − ADICP + 0.10·CP";
        }
        return r <= 14 ? "CP" : r <= 20 ? "CP·(100 − (r − 7)) / 100" : "CP − ADICP";
    }

    @Override
    public List<Line> lines() {
        var crude = Input.typed("CP", cp, Unit.PERCENT);
        var bound = Input.typed("ADICP", adicp, Unit.PERCENT);
        return List.of(
                Line.of("r", "100·ADICP / CP", boundShare(), Unit.PERCENT, rule.source, crude, bound),
                Line.of("ACP", formula(), percent(), Unit.PERCENT, rule.source, crude, bound));
    }
}
