package haywright.app.words;

import haywright.cattle.need.Need;
import haywright.cattle.need.RuleOfThumb;
import haywright.forage.Analyte;
import haywright.quantity.Unit;
import haywright.ration.Ration;
import java.util.ArrayList;
import java.util.List;

/** A ration beside what cattle usually eat and what the trade says without a computer. */
public final class RuleWords {
    /** Above this share of the expected intake the cattle may leave part of it. */
    private static final double MUCH = 1.10;

    private RuleWords() {}

    /** One sentence each. */
    public static List<String> beside(Need need, Ration ration) {
        var sentences = new ArrayList<String>();
        double expected = need.intake(ration.dietNem()).kilograms();
        sentences.add("They would eat about %s of dry matter of this mix if some were always left; it gives them %s.%s"
                .formatted(
                        pounds(expected),
                        pounds(ration.kg()),
                        ration.kg() > MUCH * expected
                                ? " That is more than cattle usually eat: watch what they leave."
                                : ""));
        RuleOfThumb.tdn(need).ifPresent(rule -> sentences.add(rule("TDN", rule, ration.mean(Analyte.TDN))));
        RuleOfThumb.protein(need).ifPresent(rule -> sentences.add(rule("protein", rule, ration.mean(Analyte.CP))));
        ration.cautions().forEach(caution -> sentences.add(caution.words()));
        return sentences;
    }

    private static String rule(String what, RuleOfThumb rule, double has) {
        return "Rule of thumb for a %s: %s to %s %% %s. This mix has %s %%."
                .formatted(
                        rule.about(),
                        Show.significant(rule.low(), 3),
                        Show.significant(rule.high(), 3),
                        what,
                        Show.number(has, 1));
    }

    private static String pounds(double kg) {
        return Show.number(Unit.POUND.fromBase(kg), 0) + " lb";
    }
}
