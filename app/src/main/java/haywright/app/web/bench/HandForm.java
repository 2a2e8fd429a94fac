package haywright.app.web.bench;

import haywright.app.web.Ask;
import haywright.app.web.Form;
import haywright.cattle.herd.Group;
import haywright.quantity.Quantity;
import haywright.quantity.Unit;
import haywright.ranch.Ranch;
import haywright.sampling.stock.Stock;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;

/** Amounts of every feed, as fed a head and day. */
public final class HandForm {
    private HandForm() {}

    /** One box a feed that can be carried to cattle, in the ranch's order. */
    static List<Ask> asks(Ranch ranch) {
        return feeds(ranch).entrySet().stream()
                .map(e -> Ask.amount(name(e.getKey()), e.getValue(), Unit.POUND_A_DAY, ""))
                .toList();
    }

    static Map<UUID, String> feeds(Ranch ranch) {
        var feeds = new LinkedHashMap<UUID, String>();
        ranch.lots().forEach((id, lot) -> {
            if (!(lot.stock() instanceof Stock.Standing)) {
                feeds.put(id, lot.name());
            }
        });
        ranch.feedsForSale().forEach((id, feed) -> feeds.put(id, feed.name()));
        return feeds;
    }

    static String name(UUID feed) {
        return "feed-" + feed;
    }

    static Map<String, String> known(Ranch ranch, Group group) {
        var known = new LinkedHashMap<String, String>();
        var now = ranch.fedNow().get(group.id());
        if (now != null) {
            now.amounts()
                    .forEach((feed, amount) -> known.put(
                            name(feed),
                            Ask.amount(name(feed), "", Unit.POUND_A_DAY, "").typed(amount)));
        }
        return known;
    }

    static Optional<Map<UUID, Quantity>> read(Form form, Ranch ranch) {
        var amounts = new LinkedHashMap<UUID, Quantity>();
        feeds(ranch).forEach((feed, label) -> {
            var ask = Ask.amount(name(feed), label, Unit.POUND_A_DAY, "");
            var amount = form.maybeQuantity(ask);
            if (amount != null && amount.value() < 0) {
                form.refuse(ask.name(), form.value(ask), "nothing is fed less than none", "Leave it empty for none.");
            } else if (amount != null && amount.base() > 60) {
                form.doubt(ask, ask.name() + "-much", "That is over 130 lb per head per day.");
            }
            if (amount != null && amount.value() != 0) {
                amounts.put(feed, amount);
            }
        });
        return form.build(() -> amounts);
    }
}
