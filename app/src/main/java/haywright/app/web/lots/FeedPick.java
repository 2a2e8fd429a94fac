package haywright.app.web.lots;

import haywright.app.web.Ask;
import haywright.app.web.Form;
import haywright.app.web.Option;
import haywright.forage.Analyte;
import haywright.forage.FeedClass;
import haywright.forage.book.FeedBook;
import haywright.quantity.Unit;
import haywright.workings.Refused;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.regex.Pattern;

/**
 * Which feed of the book stands in for what no report or tag says: typed by its name, with the names of all feeds to
 * pick from, and for hay and pasture how ripe it was. Rows and their codes stay in the document.
 */
public final class FeedPick {
    public static final Ask FEED = new Ask(
            "bookRow",
            "Feed in the book",
            Unit.NONE,
            "Type its name: alfalfa hay, barley, corn stalks. Its published values fill in what was not tested."
                    + " Empty: the usual feed of its kind.",
            30);
    public static final Ask STAGE = Ask.choice(
            "stage",
            "Stage of the alfalfa, or kind of pasture",
            "Alfalfa: leave it if not known; the range is wider. Pasture: choose one.");

    /** Legume hay from young to ripe, then pasture, by the rows that print them. */
    private static final List<Option> STAGES = List.of(
            new Option("C139", "Alfalfa cut before bloom"),
            new Option("C153", "Alfalfa cut at early bloom"),
            new Option("C154", "Alfalfa cut at midbloom"),
            new Option("C155", "Alfalfa cut at full bloom"),
            new Option("C156", "Alfalfa cut past bloom, stemmy"),
            new Option("C182", "Pasture: green, leafy cool-season grass"),
            new Option("C160", "Pasture: headed out and drying"),
            new Option("C183", "Pasture: dormant winter range"));

    private static final FeedBook BOOK = FeedBook.published();

    /** Words by which sellers name what is not dry; the trade's own, no source. */
    private static final Pattern WET = Pattern.compile(
            "\\b(wet|modified|wdgs?|mwdgs?|high[- ]moisture|liquid|syrup|pressed)\\b", Pattern.CASE_INSENSITIVE);
    /** % dry matter from which a feed of the book counts as dry: judgment. */
    private static final double DRY = 80;

    private FeedPick() {}

    /** Whether a concentrate is called wet of which the book has only a dry one. @param words that were typed of it */
    static boolean isWetOfDry(String words, String bookRow, FeedClass feedClass) {
        return !feedClass.isForage() && WET.matcher(words).find() && dryMatter(bookRow, feedClass) >= DRY;
    }

    public static List<Option> stages() {
        return STAGES;
    }

    public static List<FeedBook.Feed> feeds() {
        return BOOK.feeds();
    }

    /** What a lot or a feed to buy names, as the form shows it. */
    static void show(Map<String, String> known, String bookRow, FeedClass feedClass) {
        boolean isStage = isStage(bookRow);
        known.put(STAGE.name(), isStage ? bookRow : "");
        known.put(FEED.name(), isStage ? "" : bookRow.isEmpty() ? anyRipeness(feedClass) : name(bookRow));
    }

    /** A document names alfalfa hay of any ripeness by nothing at all; whoever typed it finds it again. */
    private static String anyRipeness(FeedClass feedClass) {
        return BOOK.usual(feedClass)
                .map(BOOK::feed)
                .filter(feed -> BOOK.idOf(feed).isEmpty())
                .map(FeedBook.Feed::name)
                .orElse("");
    }

    private static boolean isStage(String bookRow) {
        return STAGES.stream().anyMatch(o -> o.value().equals(bookRow));
    }

    /** "Barley grain"; empty for the usual one. */
    private static String name(String bookRow) {
        return BOOK.row(bookRow)
                .map(row -> BOOK.feed(row).lead().equals(row) ? BOOK.feed(row).name() : row.feed())
                .orElse(bookRow);
    }

    /** What a lot or a feed to buy names, in words; empty for the usual feed of its kind. */
    static String words(String bookRow) {
        return isStage(bookRow) ? stageWords(bookRow) : name(bookRow);
    }

    /** % of a feed as it is bought, by the book. */
    static double dryMatter(String bookRow, FeedClass feedClass) {
        return BOOK.row(bookRow)
                .or(() -> BOOK.usual(feedClass))
                .map(row -> row.composition().value(Analyte.DM))
                .filter(OptionalDouble::isPresent)
                .map(OptionalDouble::getAsDouble)
                .or(() -> BOOK.dryMatterRow(feedClass)
                        .map(row -> row.composition().value(Analyte.DM).orElseThrow()))
                .orElse(feedClass.usualDryMatterPercent());
    }

    /**
     * The row that is meant, as a document names it.
     *
     * @param before what was named before; null for something new
     */
    static String read(Form form, FeedClass feedClass, Optional<String> before) {
        var typed = form.text(FEED);
        var stage = form.text(STAGE);
        if (!stage.isEmpty()) {
            return stage(form, feedClass, stage, typed);
        }
        if (typed.isEmpty()) {
            if (feedClass == FeedClass.PASTURE) {
                form.refuse(
                        STAGE.name(),
                        "",
                        "green pasture has three times the protein of winter range",
                        "Choose which pasture it is, or type its name above.");
            }
            return "";
        }
        if (before.filter(b -> !isStage(b) && typed.equals(name(b))).isPresent()) {
            return before.get(); // one of several rows of its name: what was picked stays picked
        }
        try {
            var row = BOOK.named(FEED.name(), typed, feedClass);
            if (row.feedClass() != feedClass) {
                form.doubt(
                        FEED,
                        "feed-of-another-kind",
                        "%s is %s in the feed book, and the kind chosen above is %s."
                                .formatted(
                                        BOOK.feed(row).name(), row.feedClass().words(), feedClass.words()));
                return row.id();
            }
            boolean isByCode = typed.equalsIgnoreCase(row.id());
            return !isByCode && BOOK.feed(row).lead().equals(row) ? BOOK.idOf(BOOK.feed(row)) : row.id();
        } catch (Refused e) {
            var problem = e.problems().get(0);
            form.refuse(FEED.name(), typed, problem.rule(), problem.fix());
            return "";
        }
    }

    private static String stage(Form form, FeedClass feedClass, String stage, String typed) {
        var row = isStage(stage) ? BOOK.row(stage) : Optional.<FeedBook.Row>empty();
        if (row.isEmpty()) {
            form.refuse(STAGE.name(), stage, "not one of the choices", "Choose one from the list.");
            return "";
        }
        if (row.get().feedClass() != feedClass) {
            form.refuse(
                    STAGE.name(),
                    stageWords(stage),
                    "this is %s, and the kind chosen above is %s"
                            .formatted(row.get().feedClass().words(), feedClass.words()),
                    "Change the kind, or leave this empty.");
        } else if (!typed.isEmpty()
                && !BOOK.feed(row.get()).name().toLowerCase(Locale.ROOT).contains(typed.toLowerCase(Locale.ROOT))) {
            form.refuse(
                    STAGE.name(), stageWords(stage), "two feeds are entered, this and " + typed, "Clear one of them.");
        }
        return stage;
    }

    private static String stageWords(String stage) {
        return STAGES.stream()
                .filter(o -> o.value().equals(stage))
                .map(Option::words)
                .findFirst()
                .orElse(stage);
    }
}
