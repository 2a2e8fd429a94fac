package haywright.app.words.ration;

import haywright.app.words.HerdWords;
import haywright.app.words.Show;
import haywright.cattle.AnimalClass;
import haywright.cattle.herd.Group;
import haywright.cattle.need.Need;
import haywright.cattle.need.RuleOfThumb;
import haywright.forage.Analyte;
import haywright.outlook.HayFacts;
import haywright.quantity.Unit;
import haywright.ration.Ration;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** A ration beside what cattle usually eat and what the trade says without a computer. */
public final class RuleWords {
    /** As the published rule has them; how near is judgment. */
    private static final double CALF_POUNDS = 500;

    private static final double CALF_GAIN = 1.5;
    private static final double CALF_NEAR_POUNDS = 75;
    private static final double CALF_NEAR_GAIN = 0.5;

    /** Of what they would eat, below which they may stand hungry: beyond the doubt of the equation (judgment). */
    private static final double WELL_BELOW = 0.9;

    private RuleWords() {}

    /** One sentence each. */
    public static List<String> beside(Need need, Ration ration) {
        var sentences = new ArrayList<String>();
        double expected = need.intake(ration.dietNem()).kilograms();
        sentences.add("Free choice they would eat %s of dry matter of this mix; it gives them %s.%s"
                .formatted(HerdWords.eats(expected), pounds(ration.kg()), more(ration.kg(), expected)));
        RuleOfThumb.tdn(need)
                .filter(rule -> isLike(need))
                .ifPresent(rule -> sentences.add(rule("TDN", need, rule, ration.mean(Analyte.TDN))));
        RuleOfThumb.protein(need)
                .ifPresent(rule -> sentences.add(rule("protein", need, rule, ration.mean(Analyte.CP))));
        ration.cautions().forEach(caution -> sentences.add(caution.words()));
        return sentences;
    }

    /** As the rounded pounds beside it say. */
    private static String more(double given, double expected) {
        if (HerdWords.isMoreThanEaten(given, expected)) {
            return " That is more than they can be expected to eat: look for a mix with less in it.";
        }
        return Math.round(Unit.POUND.fromBase(given)) > Math.round(Unit.POUND.fromBase(expected))
                ? " That is more than the middle of it: watch what they leave."
                : isHeldBack(given, expected)
                        ? " It is richer than hay alone, so less of it meets what they need. Thin cows, heifers and calves should not stand hungry: put out more hay for them."
                        : "";
    }

    /** Whether they would eat well more than they are given: beyond the doubt of what they eat. */
    private static boolean isHeldBack(double given, double expected) {
        return given < WELL_BELOW * expected;
    }

    /** For the bench, of those who should not stand hungry; empty where they get about what they would eat, or are in flesh. */
    public static Optional<String> heldBack(Group group, Ration ration) {
        double expected = ration.diet().need().intake(ration.dietNem()).kilograms();
        boolean isFleshy = group.animals().isGrown() && group.conditionScore() >= HayFacts.value("thin");
        return isFleshy || !isHeldBack(ration.kg(), expected)
                ? Optional.empty()
                : Optional.of(
                        "They are held below their fill: this gives %s of dry matter, free choice they would eat %s. It is richer than hay alone and meets their need for less. Where they stand hungry, put out more hay."
                                .formatted(pounds(ration.kg()), HerdWords.eats(expected)));
    }

    /** The one rule for growing cattle is that of calves of 500 lb that gain 1.5 lb: it says nothing of others. */
    private static boolean isLike(Need need) {
        return need.animals() != AnimalClass.GROWING
                || Math.abs(Unit.POUND.fromBase(need.bodyWeight()) - CALF_POUNDS) <= CALF_NEAR_POUNDS
                        && Math.abs(Unit.POUND.fromBase(need.gain()) - CALF_GAIN) <= CALF_NEAR_GAIN;
    }

    private static String about(Need need, RuleOfThumb rule) {
        return need.animals() == AnimalClass.GROWING ? "calf near 500 lb that gains 1.5 lb a day" : rule.about();
    }

    private static String rule(String what, Need need, RuleOfThumb rule, double has) {
        return "Rule of thumb for a %s: %s to %s %% %s. This mix has %s %%."
                .formatted(
                        about(need, rule),
                        Show.significant(rule.low(), 3),
                        Show.significant(rule.high(), 3),
                        what,
                        Show.number(has, 1));
    }

    private static String pounds(double kg) {
        return Show.number(Unit.POUND.fromBase(kg), 0) + " lb";
    }
}
