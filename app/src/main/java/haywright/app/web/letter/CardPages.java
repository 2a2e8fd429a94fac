package haywright.app.web.letter;

import haywright.app.report.WagonCard;
import haywright.app.web.Page;
import haywright.app.web.Routes;
import haywright.workings.Refused;

/** The wagon card of a group, on the screen and in print. */
final class CardPages {
    private CardPages() {}

    static void routes(Routes on) {
        on.get("letter/{group}/card", CardPages::show);
        on.get("letter/{group}/card/{size}", CardPages::print);
    }

    private static WagonCard card(Page page) {
        return new WagonCard(page.offers(page.find(page.ranch().groups(), "group")));
    }

    private static void show(Page page) {
        var card = card(page);
        try {
            card.isEmpty(); // worked out before anything is shown
            page.show("haywright/app/web/letter/card.jte", card);
        } catch (Refused refused) {
            page.show(
                    "haywright/app/web/letter/cannot.jte",
                    new LetterPages.Cannot(card.offers().group(), refused.problems()));
        }
    }

    private static void print(Page page) {
        var card = card(page);
        var size = LetterPages.size(page.http().pathParam("size"));
        page.http()
                .contentType("application/pdf")
                .header("Content-Disposition", "inline; filename=\"%s\"".formatted(card.fileName(size)))
                .result(card.paper(size).pdf());
    }
}
