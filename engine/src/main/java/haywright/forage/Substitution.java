package haywright.forage;

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
 * How much of one feed takes the place of another by its TDN, as fed.
 * <pre>
 * replaces = (DM·TDN of the one) / (DM·TDN of the other)        kg of the other for a kg of the one
 * </pre>
 * By energy alone: protein, fill and how grain slows the digestion of hay are a ration's matter.
 *
 * @param dryMatter of the one that is fed, % as fed
 * @param tdn of it, % of dry matter
 * @param otherDryMatter of the one that it replaces, % as fed
 * @param otherTdn of it, % of dry matter
 * @see "How much corn can I feed, eXtension beef: a pound of corn for 1.5 lb of alfalfa or good hay, 1.9 of poor hay"
 * @see "Short supply of hay, NDSU (Dhuyvetter) 2009: 1.7 lb of average mixed hay for a pound of corn, 1.6 for barley"
 */
public record Substitution(double dryMatter, double tdn, double otherDryMatter, double otherTdn) implements Worked {
    private static final Source SOURCE =
            Source.read("Short supply of hay, NDSU (Dhuyvetter) 2009: grain for hay by its energy");

    public Substitution {
        var problems = new ArrayList<Problem>();
        Percent.check(problems, "dryMatter", "Dry matter", dryMatter);
        Percent.check(problems, "tdn", "TDN", tdn);
        Percent.check(problems, "otherDryMatter", "Dry matter", otherDryMatter);
        Percent.check(problems, "otherTdn", "TDN", otherTdn);
        if (problems.isEmpty() && !(dryMatter > 0 && tdn > 0 && otherDryMatter > 0 && otherTdn > 0)) {
            problems.add(new Problem(
                    "tdn", "0 %", "a feed without dry matter or TDN replaces nothing", "Enter what the report says."));
        }
        Refused.unlessEmpty(problems);
    }

    /** Kg of the other that a kg of the one replaces, as fed. */
    public double replaces() {
        return dryMatter * tdn / (otherDryMatter * otherTdn);
    }

    @Override
    public List<Line> lines() {
        return List.of(Line.of(
                "replaces",
                "DM1·TDN1 / (DM2·TDN2)",
                replaces(),
                Unit.NONE,
                SOURCE,
                Input.typed("DM1", dryMatter, Unit.PERCENT),
                Input.typed("TDN1", tdn, Unit.PERCENT),
                Input.typed("DM2", otherDryMatter, Unit.PERCENT),
                Input.typed("TDN2", otherTdn, Unit.PERCENT)));
    }
}
