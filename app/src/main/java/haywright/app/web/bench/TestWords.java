package haywright.app.web.bench;

import haywright.app.words.Show;
import haywright.feeding.Offers;
import haywright.feeding.worth.WorthOfASample;
import haywright.ranch.Lot;
import haywright.workings.Refused;
import java.util.List;

/** What a test of a lot would buy, in words. */
public final class TestWords {
    private TestWords() {}

    /** One a lot that is worth looking at; never empty. */
    public static List<String> lines(Offers offers) {
        var lots = offers.testable();
        return lots.isEmpty()
                ? List.of("No test would change this ration much.")
                : lots.stream().map(lot -> line(offers, lot)).toList();
    }

    private static String line(Offers offers, Lot lot) {
        boolean tested = !offers.yard().ranch().reportsOn(lot.id()).isEmpty();
        var what = "Test %s%s".formatted(lot.name(), tested ? " again" : "");
        try {
            var worth = offers.worth(lot);
            return worth.worthUsd() > 0 ? pays(what, worth) : doesNot(what, worth, tested);
        } catch (Refused refused) {
            return what + ": " + refused.problems().get(0).fix();
        }
    }

    private static String pays(String what, WorthOfASample worth) {
        return "%s: %s. It would likely save about %s by turnout over all groups, after paying for the test (%s to %s)."
                .formatted(
                        what,
                        dollars(worth.priceUsd()),
                        MixWords.about(worth.worthUsd()),
                        MixWords.about(Math.max(0, worth.lowUsd())),
                        MixWords.about(worth.highUsd()));
    }

    private static String doesNot(String what, WorthOfASample worth, boolean tested) {
        return "%s: %s. Not worth testing%s.".formatted(what, dollars(worth.priceUsd()), tested ? " again" : "");
    }

    private static String dollars(double dollars) {
        return "$" + Show.number(dollars, 0);
    }
}
