package haywright.app.exchange.lab;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.regex.Pattern;

/**
 * What a line that stands alone over figures says of them: that a section of the same result begins, that what follows
 * is of others, or that it is the sample's again. What is none of them may speak of anything.
 */
public final class SectionWords {
    private static final int LONGEST_NAME = 5;

    /** Words of which the titles of a result's sections are made. */
    private static final Pattern KNOWN = Pattern.compile(
            "(?i)(?:macro|micro|trace|major|minor)?-?minerals?|(?:macro|micro)-?(?:nutrients?|elements?)|elements?|energ(?:y|ies)|net|fib(?:er|re)s?|proteins?|carbohydrates?|sugars?|starch(?:es)?|fats?|lipids?|fractions?"
                    + "|fermentation|acids?|volatile|fatty|toxins?|mycotoxins?|molds?|yeasts?|nitrates?|anti-?quality|quality|digestib(?:le|ility)|digestion|in|vitro|situ|moisture|water|solids|dry|matter|dm|wet|fresh|weight|as|received|fed|is|sampled|basis"
                    + "|proximates?|analys[ie]s|analytical|results?|reports?|reported|continued|cont|page|tests?|tested|testing|feeds?|forages?|nutri(?:ents?|tion|tional|tive)|composition|contents?|summary|chemistry|chemical|nir|nirs|icp|methods?|calculat(?:ed|ions?)|computed|derived|estimat(?:ed|es?)|predicted"
                    + "|values?|figures?|data|indexe?s|indices|ratios?|ratings?|relative|macro|micro|trace|major|minor|other|others|additional|further|more|rest|remaining|also|found|measured|determined|profiles?|panels?|packages?|sections?|parts?|table|units?|percent|pct|total|crude|detergent|acid|neutral|non|soluble|amino|vitamins?|physical|general|basic|full|complete|final"
                    + "|all|and|or|the|of|for|on|an?|at|by|with|from|to|here|are|we|per|expressed|given|shown|following|follows?|below|above|laborator(?:y|ies)|labs?|plus|ash|ph|%|&|[ivx]{1,3}|[a-d]|[0-9]{1,2}|notes?|remarks?|comments?");

    private static final Pattern OTHERS = Pattern.compile(
            "(?iu)\\b(?:needs?|needed|requires?|requirements?|required|recommend\\w*|good|poor|better|best|excellent|typical(?:ly)?|usual(?:ly)?|normal(?:ly)?|average[sd]?|avg|means?|median|books?|limits?|maxim\\w*|minim\\w*|guide\\w*|neighbou?r\\w*|check|control|standards?|compar\\w+|reference|target|goals?|desired|optim\\w+|ideal|adequate|safe|toxic|ranges?|last|previous|prior|earlier|ago|old|past|former\\w*|should|ought|want|like)\\b");

    private static final Pattern OWN = Pattern.compile(
            "(?iu)^(?:and )?(?:here (?:is|are) )?(?:now |then )?(?:for )?(?:your|yours|this|these|our|the (?:new|current|present|latest)|new|current|present|latest|now)\\b(?!.*\\b(?:last|previous|prior|earlier|ago|old|past|20[0-9]{2})\\b).*");

    /** "That was November 2025": of what stands before it. */
    private static final Pattern BACK = Pattern.compile(
            "(?iu)\\b(?:that|those|these|the (?:above|former|first ones?)|all that|this|above) (?:was|were|is from|are from|came from)\\b(?=.*(?:20[0-9]{2}|last|previous|prior|earlier|ago|before|other|neighbou?r|average|typical))");

    private static final Pattern YEAR = Pattern.compile("(?<![0-9.,-])(20[0-9]{2})(?![0-9.,-]*[0-9])");

    private SectionWords() {}

    /** Titles of the sections of a result, and nothing else: names of analytes, groups of them, units, bases. */
    public static boolean isKnown(String text) {
        var words = text.replaceAll("[()\\[\\],;:./*&–—=_+\"“”-]+", " ").strip().split("\\s+");
        for (int at = 0; at < words.length; ) {
            int next = words[at].isEmpty() || KNOWN.matcher(words[at]).matches() ? at + 1 : at;
            for (int end = Math.min(words.length, at + LONGEST_NAME); end > at && next == at; end--) {
                var name = String.join(" ", Arrays.asList(words).subList(at, end));
                next = Heading.of(name).isPresent()
                                || Heading.basis(name).isPresent()
                                || Heading.unit(name).isPresent()
                        ? end
                        : at;
            }
            if (next == at) {
                return false;
            }
            at = next;
        }
        return true;
    }

    /** Whether it speaks of others: a need, a limit, an average, another time. @param newest year on the sheet */
    public static boolean saysOthers(String text, int newest) {
        return OTHERS.matcher(text).find()
                || year(text).filter(year -> year < newest).isPresent()
                || Whose.of(List.of(bare(text))).get(0) == Whose.OTHERS;
    }

    /**
     * Whether it calls what follows this sample's: "Your hay:", "Now the new ones".
     *
     * @param newest year on the sheet, which tells where there are others
     */
    public static boolean saysOwn(String text, int newest, boolean areOthers) {
        return OWN.matcher(text.strip()).matches()
                || areOthers
                        && year(text).filter(year -> year == newest).isPresent()
                        && isKnown(YEAR.matcher(text).replaceAll(""));
    }

    /** Whether it says that the figures before it were another's. */
    public static boolean speaksBack(String text) {
        return BACK.matcher(text).find();
    }

    /** The newest of the years that a line says; empty where it says none. */
    public static Optional<Integer> year(String text) {
        return YEAR.matcher(text)
                .results()
                .map(found -> Integer.parseInt(found.group(1)))
                .reduce(Math::max);
    }

    private static String bare(String text) {
        return text.replaceAll("[\\s:.]+$", "");
    }
}
