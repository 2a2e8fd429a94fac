package haywright.app.web.lots;

import haywright.app.web.Page;
import haywright.app.words.Show;
import haywright.feeding.worth.WorthOfASample;
import haywright.quantity.Unit;
import haywright.ranch.Lot;
import haywright.workings.Problem;
import haywright.workings.Refused;
import java.util.List;

/**
 * What one more sample of a lot is worth, in words.
 *
 * @param costs of the sample
 * @param saves of feed and of falling short until turnout, the price not taken off
 * @param pays whether it saves more than it costs
 * @param problems why it cannot be said; empty where it is said
 */
public record WorthView(Lot lot, String costs, String saves, boolean pays, List<Problem> problems) {
    /** Dollars below which a saving is none to speak of: less than the ink (judgment). */
    private static final double NOTHING = 5;

    static WorthView of(Page page, Lot lot) {
        try {
            var worth = WorthOfASample.of(page.rations(), lot);
            double saves = worth.worthUsd() + worth.priceUsd();
            return new WorthView(
                    lot,
                    "$" + Show.number(worth.priceUsd(), 0),
                    saves < NOTHING
                            ? ""
                            : Show.about(
                                    saves,
                                    worth.lowUsd() + worth.priceUsd(),
                                    worth.highUsd() + worth.priceUsd(),
                                    Unit.DOLLAR),
                    worth.worthUsd() > 0,
                    List.of());
        } catch (Refused refused) {
            return new WorthView(lot, "", "", false, refused.problems());
        }
    }
}
