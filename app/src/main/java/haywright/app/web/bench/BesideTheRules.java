package haywright.app.web.bench;

import haywright.app.words.Show;
import haywright.cattle.Need;
import haywright.quantity.Unit;
import haywright.ration.Ration;

/** What they are expected to eat beside what the mix gives them: a sentence, and a warning where the two part. */
final class BesideTheRules {
    /** Above this share of the expected intake the cattle may leave part of it. */
    private static final double MUCH = 1.10;

    private BesideTheRules() {}

    static String of(Need need, Ration ration) {
        double expected = need.intake(ration.dietNem()).kilograms();
        var sentence =
                "They would eat about %s of dry matter of this mix if there were always some left; it gives them %s."
                        .formatted(pounds(expected), pounds(ration.kg()));
        return ration.kg() > MUCH * expected
                ? sentence + " That is more than cattle usually eat: watch what they leave."
                : sentence;
    }

    private static String pounds(double kg) {
        return Show.number(Unit.POUND.fromBase(kg), 0) + " lb";
    }
}
