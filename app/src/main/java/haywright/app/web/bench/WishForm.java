package haywright.app.web.bench;

import haywright.app.web.Ask;
import haywright.app.web.Form;
import haywright.app.web.Option;
import haywright.app.words.Show;
import haywright.cattle.herd.Group;
import haywright.diet.DietRow.Sense;
import haywright.diet.WayOfFeeding;
import haywright.quantity.Quantity;
import haywright.quantity.Unit;
import haywright.ranch.Ranch;
import haywright.ranch.Wishes;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/** What the ranch wants of a group's ration: at least and at most of each feed, and practice limits switched off. */
public final class WishForm {
    /** The limits that a ranch may switch off, and what that means. Dangers are not among them. */
    static final List<Ask> LIMITS = List.of(
            off("straw", "No limit on straw"),
            off("grain", "No limit on grain in one feeding"),
            off("forage", "No least share of forage"),
            off("fat", "No limit on fat"),
            off("distillers", "No limit on distillers grains"),
            off("ca_p", "No limits on calcium to phosphorus"),
            off("grain_careful", "Grain beyond a quarter percent of body weight"),
            off("forage_floor", "No least hay, silage or straw to keep them full"),
            off("mp", "Crude protein alone, not metabolizable"),
            off("fast_starch", "No limit on wheat, rye and triticale"),
            off("nem_two_feedings", "Full energy of grain in two feedings"),
            off("mineral", "No least mineral"));

    static final Ask WAY = Ask.choice("way", "How they are fed", "It decides what is a choice at all.");

    static final Ask SURENESS = Ask.number(
            "sureness",
            "Meet every need in how many ways of 100 that these feeds may be made",
            "Empty: energy 75, protein and minerals 90. 50 counts on the middle.");

    private WishForm() {}

    static String words(WayOfFeeding way) {
        return switch (way) {
            case FREE_CHOICE -> "Free choice: rings, bale grazing, off the stack";
            case PUT_OUT_DAILY -> "Put out daily and eaten up";
            case BUNK -> "Measured in a bunk, room for all at once";
            case LIMIT_FED -> "Limit-fed: less than they would eat, of richer feed";
        };
    }

    private static Ask off(String row, String label) {
        return Ask.choice("off-" + row, label, "");
    }

    public record View(Group group, Form form, List<Row> rows) {
        public List<Ask> limits() {
            return LIMITS;
        }

        public Ask way() {
            return WAY;
        }

        public List<Option> ways() {
            return Option.of(WayOfFeeding.class, WishForm::words);
        }

        public Ask sureness() {
            return SURENESS;
        }
    }

    public record Row(String feed, Ask least, Ask most) {}

    static List<Row> rows(Ranch ranch) {
        var rows = new ArrayList<Row>();
        HandForm.feeds(ranch).forEach((id, name) -> rows.add(new Row(name, least(id, name), most(id, name))));
        return rows;
    }

    private static Ask least(UUID feed, String name) {
        return Ask.amount("least-" + feed, name + ", at least", Unit.POUND_A_DAY, "");
    }

    private static Ask most(UUID feed, String name) {
        return Ask.amount("most-" + feed, name + ", at most", Unit.POUND_A_DAY, "");
    }

    static Map<String, String> known(Ranch ranch, Group group) {
        var known = new LinkedHashMap<String, String>();
        var wanted = ranch.wishes().get(group.id());
        if (wanted != null) {
            for (var wish : wanted.feeds()) {
                var ask = wish.sense() == Sense.AT_LEAST ? least(wish.feed(), "") : most(wish.feed(), "");
                known.put(ask.name(), ask.typed(wish.amount()));
            }
            wanted.limitsOff().forEach(row -> known.put("off-" + row, "yes"));
            if (wanted.way() != null) {
                known.put(WAY.name(), Form.id(wanted.way()));
            }
            if (wanted.surenessPercent() != null) {
                known.put(
                        SURENESS.name(),
                        Show.number(wanted.surenessPercent(), 1).replaceAll("\\.0$", ""));
            }
        }
        return known;
    }

    static Optional<Wishes> read(Form form, Ranch ranch, Group group) {
        var wishes = new ArrayList<Wishes.Wish>();
        HandForm.feeds(ranch).forEach((id, name) -> {
            var least = amount(form, least(id, name));
            var most = amount(form, most(id, name));
            if (least != null) {
                wishes.add(new Wishes.Wish(id, Sense.AT_LEAST, least));
            }
            if (most != null) {
                wishes.add(new Wishes.Wish(id, Sense.AT_MOST, most));
            }
            if (least != null && most != null && least.base() > most.base()) {
                form.refuse(
                        least(id, name).name(),
                        form.value(least(id, name)),
                        "at least is more than at most",
                        "Are the two swapped?");
            }
        });
        var off = LIMITS.stream()
                .filter(form::isTicked)
                .map(ask -> ask.name().substring("off-".length()))
                .toList();
        var way = form.isEmpty(WAY) ? null : form.choice(WAY, WayOfFeeding.class, "Choose one of the list.");
        var sureness = form.maybeNumber(SURENESS);
        return form.build(() -> new Wishes(group.id(), wishes, off, way, sureness));
    }

    private static @Nullable Quantity amount(Form form, Ask ask) {
        var amount = form.maybeQuantity(ask);
        if (amount != null && amount.value() < 0) {
            form.refuse(ask.name(), form.value(ask), "nothing is fed less than none", "Leave it empty for no limit.");
            return null;
        }
        return amount;
    }
}
