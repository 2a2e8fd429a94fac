package haywright.app.web.lots;

import haywright.app.web.Option;
import haywright.forage.FeedClass;
import haywright.forage.book.FeedBook;
import haywright.workings.Refused;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Pattern;

/**
 * What kind of feed somebody means who names one to buy: by the feed book where all that bears the name is of one kind,
 * otherwise by the words of the trade.
 */
final class FeedNames {
    private static final FeedBook BOOK = FeedBook.published();

    /** What says how a feed comes or how rich it is, and not which it is. */
    private static final Pattern BESIDE = Pattern.compile(
            "\\b(\\d+([.,]\\d+)?|percent|protein|dry|dried|ground|rolled|cracked|whole|bulk|delivered|good|first|second|third"
                    + "|cutting|big|large|small|round|square|rounds|squares|bales?|ton|tons|natural|all)\\b|[%()#/,;-]",
            Pattern.CASE_INSENSITIVE);

    /** Words of the trade, the first that is found: no source. */
    private static final Map<String, FeedClass> WORDS = words();

    private FeedNames() {}

    /** @param bookRow as a document names it; empty for the usual feed of its kind */
    record Meant(FeedClass kind, String bookRow) {}

    private static Map<String, FeedClass> words() {
        var words = new LinkedHashMap<String, FeedClass>();
        words.put("urea|npn", FeedClass.NPN);
        words.put("tub|tubs|block|blocks|lick", FeedClass.TUB);
        words.put("mineral|minerals|salt|limestone|dical", FeedClass.MINERAL);
        words.put("cake|cube|cubes|creep|pellets?", FeedClass.CAKE);
        words.put("ddgs?|wdgs?|mwdgs?|distillers?", FeedClass.DISTILLERS_GRAINS);
        words.put(
                "gluten meal|soybean meal|sbm|canola meal|cottonseed meal|linseed meal|sunflower meal",
                FeedClass.PROTEIN_MEAL);
        words.put(
                "gluten feed|hulls|soyhulls|midds|middlings|beet pulp|screenings|hominy|bran|molasses",
                FeedClass.BYPRODUCT_ENERGY);
        words.put("corn silage", FeedClass.CORN_SILAGE);
        words.put("straw", FeedClass.STRAW);
        words.put("stalks?|stover|chaff", FeedClass.CROP_RESIDUE);
        words.put("alfalfa silage|alfalfa haylage", FeedClass.LEGUME_SILAGE);
        words.put("silage|haylage", FeedClass.CEREAL_SILAGE);
        words.put(
                "(oat|barley|wheat|rye|millet|cereal|cane|sorghum|triticale|sudan|sudangrass)s? hay",
                FeedClass.CEREAL_HAY);
        words.put("(mixed|mix|alfalfa[- ]?grass|grass[- ]?alfalfa) hay|alfalfa.grass", FeedClass.MIXED_HAY);
        words.put("alfalfa|clover|sainfoin", FeedClass.LEGUME_HAY);
        words.put("hay|brome|timothy|meadow", FeedClass.GRASS_HAY);
        words.put("corn|barley|oats?|wheat|milo|sorghum|rye|triticale|peas?|grain", FeedClass.GRAIN);
        return words;
    }

    /** The kinds of feed to choose from, with what goes by another name in the trade. */
    static List<Option> kinds() {
        return Option.of(FeedClass.class, FeedNames::kind);
    }

    private static String kind(FeedClass kind) {
        return switch (kind) {
            case LEGUME_HAY -> "alfalfa, clover or other legume hay";
            case MIXED_HAY -> "mixed hay (alfalfa and grass)";
            case CEREAL_HAY -> "cereal hay (oat, barley, millet, cane or sudan)";
            case CROP_RESIDUE -> "crop residue (stalks, stover, chaff)";
            case NPN -> "urea or other nonprotein nitrogen";
            default -> kind.words();
        };
    }

    /** Empty where neither tells. */
    static Optional<Meant> meant(String typed) {
        var name = BESIDE.matcher(typed)
                .replaceAll(" ")
                .replaceAll("\\s+", " ")
                .strip()
                .toLowerCase(Locale.ROOT);
        if (name.isEmpty()) {
            return Optional.empty();
        }
        return byBook(name).or(() -> byWords(name).map(kind -> new Meant(kind, row(name, kind))));
    }

    private static Optional<FeedClass> byWords(String name) {
        return WORDS.entrySet().stream()
                .filter(entry -> Pattern.compile("\\b(" + entry.getKey() + ")\\b")
                        .matcher(name)
                        .find())
                .map(Map.Entry::getValue)
                .findFirst();
    }

    private static Optional<Meant> byBook(String name) {
        var found = BOOK.feeds(name).stream()
                .map(FeedBook.Feed::feedClass)
                .distinct()
                .toList();
        return found.size() == 1 ? Optional.of(new Meant(found.get(0), row(name, found.get(0)))) : Optional.empty();
    }

    /** The one feed of this kind with these words; empty where there are several, or none. */
    private static String row(String name, FeedClass kind) {
        try {
            var row = BOOK.named("name", name, kind);
            return row.feedClass() == kind ? BOOK.idOf(BOOK.feed(row)) : "";
        } catch (Refused several) {
            return "";
        }
    }
}
