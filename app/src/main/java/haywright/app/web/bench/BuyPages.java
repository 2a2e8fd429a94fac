package haywright.app.web.bench;

import haywright.app.web.Ask;
import haywright.app.web.Form;
import haywright.app.web.Option;
import haywright.app.web.Page;
import haywright.app.web.Routes;
import haywright.app.words.Measures;
import haywright.cattle.herd.Group;
import haywright.feeding.Purchase;
import haywright.quantity.Unit;
import haywright.ranch.FeedForSale;
import haywright.workings.Problem;
import haywright.workings.Refused;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Objects;
import org.jspecify.annotations.Nullable;

/** What if: so many tons of a feed at a price delivered. What is asked stays in the address; nothing is kept. */
public final class BuyPages {
    static final Ask FEED = Ask.choice("feed", "Feed", "");
    static final Ask TONS = Ask.amount("tons", "How much", Unit.TON, "");
    static final Ask PRICE = Ask.amount("price", "Price as fed, delivered", Unit.DOLLAR_PER_TON, "");

    private BuyPages() {}

    static void routes(Routes on) {
        on.get("bench/{group}/buy", BuyPages::show);
    }

    /** @param lines what it would change; empty until something is asked */
    public record View(
            Group group,
            Form form,
            List<Option> feeds,
            String say,
            List<String> lines,
            List<Card> cards,
            List<Problem> problems) {
        public Ask feed() {
            return FEED;
        }

        public List<Ask> asks() {
            return List.of(TONS, PRICE);
        }
    }

    private static void show(Page page) {
        var group = page.find(page.ranch().groups(), "group");
        var sales = page.ranch().feedsForSale();
        var typed = new LinkedHashMap<String, String>();
        for (var ask : List.of(FEED, TONS, PRICE)) {
            typed.put(ask.name(), Objects.requireNonNullElse(page.http().queryParam(ask.name()), ""));
        }
        var chosen = sales.values().stream()
                .filter(sale -> sale.id().toString().equals(typed.get(FEED.name())))
                .findFirst()
                .orElse(null);
        boolean asked = page.http().queryParam(TONS.name()) != null;
        if (!asked && chosen != null) {
            typed.put(PRICE.name(), PRICE.typed(chosen.price()));
            typed.put(TONS.name(), "25");
        }
        var form = Form.of("bench/buy", typed);
        var feeds = sales.values().stream()
                .map(sale -> new Option(sale.id().toString(), sale.name()))
                .toList();
        var view = new View(group, form, feeds, "", List.of(), List.of(), List.of());
        if (asked || chosen != null) {
            try {
                view = answered(page, view, chosen);
            } catch (Refused refused) {
                view = new View(group, form, feeds, "", List.of(), List.of(), refused.problems());
            }
        }
        page.http().status(form.hasProblems() ? 422 : 200);
        page.show("haywright/app/web/bench/buy.jte", view);
    }

    private static View answered(Page page, View view, @Nullable FeedForSale chosen) {
        var form = view.form();
        if (chosen == null) {
            form.refuse(FEED.name(), form.value(FEED), "no feed is chosen", "Choose the feed you would buy.");
        }
        var tons = form.maybeQuantity(TONS);
        var price = form.maybeQuantity(PRICE);
        if (tons == null || !(tons.value() > 0)) {
            form.refuse(
                    TONS.name(), form.value(TONS), "a purchase is more than nothing", Measures.say("Enter {tons}."));
        }
        if (price == null || !(price.value() > 0)) {
            form.refuse(
                    PRICE.name(),
                    form.value(PRICE),
                    "a feed that is bought has a price",
                    Measures.say("Enter dollars a {ton}."));
        }
        if (form.hasProblems()) {
            return view;
        }
        var offers = page.offers(view.group());
        var bought = Purchase.of(
                offers, Objects.requireNonNull(chosen), Objects.requireNonNull(tons), Objects.requireNonNull(price));
        var shown = new LinkedHashMap<String, haywright.feeding.Offer>();
        bought.before().ifPresent(offer -> shown.put("As things are", offer));
        if (bought.isFed()) {
            bought.after().ifPresent(offer -> shown.put("With it", offer));
        }
        return new View(
                view.group(),
                form,
                view.feeds(),
                BuyWords.say(bought),
                BuyWords.lines(offers, bought),
                Card.of(offers, shown),
                List.of());
    }
}
