package haywright.app.web.bench;

import haywright.app.web.Ask;
import haywright.app.web.Form;
import haywright.app.web.Option;
import haywright.app.words.Show;
import haywright.cattle.herd.Group;
import haywright.diet.DietRow.Sense;
import haywright.diet.WayOfFeeding;
import haywright.quantity.Kind;
import haywright.quantity.Quantity;
import haywright.quantity.Unit;
import haywright.ranch.Ranch;
import haywright.ranch.Wishes;
import haywright.ranch.Wishes.Wish;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.IntStream;

/** What the ranch wants of a group's ration: a sentence for each limit on a feed, and practice limits switched off. */
public final class WishForm {
    /** The limits that a ranch may switch off, and what that means. Dangers are not among them. */
    static final List<Ask> LIMITS = List.of(
            off("straw", "No limit on straw"),
            off("straw_for", "Straw for bulls, thin cows and heifers too"),
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

    static final Ask WAY = Ask.choice("way", "How they are fed", "Decides which feeds can be used.");

    static final Ask SURENESS = Ask.number(
            "sureness",
            "How sure to be of each need, times in 100",
            "Empty: energy 75, protein and minerals 90. 50 goes by averages.");

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

    /** Sentences that can be added at a time. */
    private static final int NEW = 2;

    /** How a sentence begins. */
    enum How {
        AT_LEAST("at least"),
        AT_MOST("at most"),
        NONE("none");

        private final String words;

        How(String words) {
            this.words = words;
        }

        private String words() {
            return words;
        }
    }

    /**
     * @param kept a sentence for each limit there is, ticked
     * @param added one sentence each to fill in
     */
    public record View(Group group, Form form, List<Ask> kept, List<Sentence> added, List<Option> feeds) {
        public List<Ask> limits() {
            return LIMITS;
        }

        public Ask way() {
            return WAY;
        }

        public List<Option> ways() {
            return Option.of(WayOfFeeding.class, WishForm::words);
        }

        public List<Option> hows() {
            return Option.of(How.class, How::words);
        }

        public Ask sureness() {
            return SURENESS;
        }
    }

    /** {@code Feed at least 8 lb of Oat hay}. */
    public record Sentence(Ask how, Ask amount, Ask feed) {
        static Sentence of(int number) {
            return new Sentence(
                    Ask.choice("how-" + number, "Feed", ""),
                    Ask.amount("amount-" + number, "Per head per day", Unit.POUND_A_DAY, ""),
                    Ask.choice("feed-" + number, "of", ""));
        }
    }

    static View view(Ranch ranch, Group group, Form form) {
        var kept = wishes(ranch, group).stream().map(wish -> keep(ranch, wish)).toList();
        var feeds = HandForm.feeds(ranch).entrySet().stream()
                .map(e -> new Option(e.getKey().toString(), e.getValue()))
                .toList();
        return new View(group, form, kept, sentences(), feeds);
    }

    private static List<Sentence> sentences() {
        return IntStream.rangeClosed(1, NEW).mapToObj(Sentence::of).toList();
    }

    private static List<Wish> wishes(Ranch ranch, Group group) {
        var wanted = ranch.wishes().get(group.id());
        return wanted == null ? List.of() : wanted.feeds();
    }

    private static Ask keep(Ranch ranch, Wish wish) {
        return Ask.choice("keep-%s-%s".formatted(Form.id(wish.sense()), wish.feed()), sentence(ranch, wish), "");
    }

    /** {@code Feed at least 8 lb of Oat hay}, {@code Feed no Oat hay}. */
    static String sentence(Ranch ranch, Wish wish) {
        var name = HandForm.feeds(ranch).getOrDefault(wish.feed(), "a feed that is gone");
        var amount = wish.amount();
        if (wish.sense() == Sense.AT_MOST && amount.base() == 0) {
            return "Feed no " + name;
        }
        return "Feed %s %s of %s"
                .formatted(
                        wish.sense() == Sense.AT_LEAST ? "at least" : "at most",
                        amount.unit().kind() == Kind.SHARE
                                ? Show.quantity(amount) + " of the dry matter"
                                : Show.significant(amount.in(Unit.POUND_A_DAY), 4) + " lb",
                        name);
    }

    static Map<String, String> known(Ranch ranch, Group group) {
        var known = new LinkedHashMap<String, String>();
        var wanted = ranch.wishes().get(group.id());
        if (wanted != null) {
            wanted.feeds().forEach(wish -> known.put(keep(ranch, wish).name(), "yes"));
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
        var wishes = new ArrayList<Wish>();
        wishes(ranch, group).stream()
                .filter(wish -> form.isTicked(keep(ranch, wish)))
                .forEach(wishes::add);
        for (var sentence : sentences()) {
            added(form, ranch, sentence).ifPresent(wish -> {
                wishes.removeIf(old -> old.feed().equals(wish.feed()) && old.sense() == wish.sense());
                against(form, ranch, sentence, wishes, wish);
                wishes.add(wish);
            });
        }
        var off = LIMITS.stream()
                .filter(form::isTicked)
                .map(ask -> ask.name().substring("off-".length()))
                .toList();
        var way = form.isEmpty(WAY) ? null : form.choice(WAY, WayOfFeeding.class, "Choose one of the list.");
        var sureness = form.maybeNumber(SURENESS);
        return form.build(() -> new Wishes(group.id(), wishes, off, way, sureness));
    }

    /** Empty where nothing of it is filled in, or something cannot be. */
    private static Optional<Wish> added(Form form, Ranch ranch, Sentence sentence) {
        if (form.isEmpty(sentence.how()) && form.isEmpty(sentence.amount()) && form.isEmpty(sentence.feed())) {
            return Optional.empty();
        }
        var how = form.isEmpty(sentence.how())
                ? How.AT_LEAST
                : form.choice(sentence.how(), How.class, "Choose at least, at most or none.");
        var feed = HandForm.feeds(ranch).keySet().stream()
                .filter(id -> id.toString().equals(form.value(sentence.feed())))
                .findFirst();
        if (feed.isEmpty()) {
            form.refuse(
                    sentence.feed().name(),
                    form.value(sentence.feed()),
                    "the sentence says no feed",
                    "Choose the feed.");
        }
        var amount = how == How.NONE ? Quantity.of(0, Unit.POUND_A_DAY) : form.maybeQuantity(sentence.amount());
        if (amount == null) {
            if (form.isEmpty(sentence.amount())) {
                form.refuse(sentence.amount().name(), "nothing", "the sentence says no amount", "Enter pounds.");
            }
            return Optional.empty();
        }
        if (amount.value() < 0) {
            form.refuse(
                    sentence.amount().name(),
                    form.value(sentence.amount()),
                    "nothing is fed less than none",
                    "Enter 0 or more.");
            return Optional.empty();
        }
        var sense = how == How.AT_LEAST ? Sense.AT_LEAST : Sense.AT_MOST;
        return feed.map(id -> new Wish(id, sense, amount));
    }

    private static void against(Form form, Ranch ranch, Sentence sentence, List<Wish> others, Wish wish) {
        others.stream()
                .filter(other -> other.feed().equals(wish.feed())
                        && other.amount().unit().kind() == wish.amount().unit().kind())
                .filter(other -> wish.sense() == Sense.AT_LEAST
                        ? wish.amount().base() > other.amount().base()
                        : wish.amount().base() < other.amount().base())
                .findFirst()
                .ifPresent(other -> form.refuse(
                        sentence.amount().name(),
                        form.value(sentence.amount()),
                        "it cannot hold beside “%s”".formatted(sentence(ranch, other)),
                        "Untick that one, or change the amount."));
    }
}
