package haywright.app.exchange.line;

import haywright.app.exchange.lab.Heading;
import haywright.app.exchange.lab.Label;
import haywright.app.exchange.lab.Told;
import haywright.app.exchange.lab.Understood;
import haywright.app.exchange.lab.UnitWords;
import haywright.app.exchange.line.TextLine.Word;
import java.util.List;
import java.util.regex.Pattern;

/**
 * What stands behind a figure. A unit, a basis, a mark, a flag or a method is known; what is none of them could be a unit
 * or a basis that nobody knows, and the figure is not taken in the usual one instead.
 */
public final class Behind {
    private static final int LONGEST_UNIT = 7;
    private static final int LONGEST_NAME = 6;

    /** Words a sentence goes on with, judgments and flags: they say nothing of the figure's unit or basis. */
    private static final Pattern WORD_OF_A_SENTENCE = Pattern.compile("(?i)(?:"
            + "and|but|with|plus|so|which|that|this|these|while|whereas|for|from|by|at|is|are|was|were|it|it[’']s|its|has|had|have|if|or|nor|not|than|then|though|although|because|since|when|where|here"
            + "|there|to|too|very|quite|rather|pretty|little|about|again|also|all|both|each|every|only|just|even|yes|no|the|your|our|my|their|his|he|she|we|they|you|i|same|see|still|well|way|most|mostly"
            + "|good|bad|fine|ok|okay|low|lower|lows?|high|higher|hi|lo|normal|adequate|deficient|excess(?:ive)?|marginal|fair|poor|excellent|elevated|safe|caution|danger(?:ous)?|toxic|typical|pass(?:ed)?|fail(?:ed)?"
            + "|h|l|hh|ll|n|a|v|today|yesterday|last|call|calls|called|test(?:s|ed)?|before|after|between|above|below|over|under|against|compared|down|up|out|off|on|worth|thanks|please"
            + "|looks?|seems?|means?|makes?|should|could|would|will|can|may|might|must|come|comes|came|do|does|did|don[’']t|feed|fed|enough|usual(?:ly)?|[-–—/&]+"
            + ")[.,;:!?]*");

    private static final String CATTLE =
            "(?:cows?|calves|calf|steers?|heifers?|bulls?|cattle|stock|livestock|animals?|head|beef|dairy)(?!\\p{L})";

    /** Behind a figure it is what the sentence speaks of: a need, a limit, a rule of thumb. */
    private static final Pattern GUIDE = Pattern.compile(
            "(?iu)(?:(?:is|are|would|will|should|does|do|meets?|keeps?|covers?|carries|carry|suffices?|makes?|can|must|ought|seems?|needs?|gets?) (?!(?:(?:very|quite|rather|pretty|a (?:bit|little)|on the) )*(?:low|high|good|fine|fair|poor|excellent|bad|ok|okay|better|worse|down|up|about (?:right|average))(?!\\p{L})).*"
                    + "|(?:needed|required|recommended|desired|wanted|minimum|maximum|min|max|tops|limit|or (?:more|less|over|under|above|below|better|higher|lower)|and (?:up|over|above|under|below)|at (?:most|least)|(?:the )?(?:most|least))(?!\\p{L}).*"
                    + "|(?:for|to) (?:(?:a|an|the|most|any|all|your|keep|feed) )*(?:[\\p{L}-]+ ){0,2}" + CATTLE
                    + ".*)");

    /** Why a figure is not taken that the words behind it make a need or a limit. */
    private static final String IS_GUIDE =
            "the words behind the figure tell of a need or a guide. If it is this sample’s, type it in the form";

    /** "(cow needs 7)": what is usual or needed, beside what was found. */
    private static final Pattern REMARK = Pattern.compile(
            "(?iu)[(\\[](?=.*(?<!\\p{L})(?:needs?|needed|requires?d?|wants?|limit|guide|max\\p{L}*|min\\p{L}*|usual\\p{L}*|normal\\p{L}*|typical\\p{L}*|average|last|previous|goal|target|should|below|above|under|over|20[0-9]{2})(?!\\p{L})).*");

    private static final Pattern JOINS = Pattern.compile("(?i)in|as|expressed|given|reported|measured|stated|figured");

    /** What was not understood is said first. */
    public static final String QUOTE = "“";

    private Behind() {}

    /** How many words here are a unit that is known: "lb per ton" is three; 0 where they are none. */
    public static int unit(List<Word> words, int at) {
        int last = at + 1;
        while (last < words.size() && last - at < LONGEST_UNIT && Rows.isInCell(words, last)) {
            last++;
        }
        boolean isWritten = last > at + 1 && UnitWords.isPerhapsIn(NamedFigures.bare(words, at, last - at));
        for (int end = isWritten ? last : at + 1; end > at; end--) {
            if (Heading.unit(NamedFigures.bare(words, at, end - at)).isPresent()) {
                return end - at;
            }
        }
        return 0;
    }

    /** Why the figure before this word is none of the feed's, by the rest of its sentence; empty as a rule. */
    static String guide(List<Word> words, int at) {
        if (!Rows.isInCell(words, at) || words.get(at - 1).text().matches(".*[,;:.(]")) {
            return "";
        }
        int end = at;
        while (end < words.size()
                && Rows.isInCell(words, end)
                && !words.get(end).isFigure()) {
            end++;
            if (words.get(end - 1).text().matches(".*[.;]")) {
                break;
            }
        }
        return GUIDE.matcher(TextLine.join(words.subList(at, end)).text()).matches() ? IS_GUIDE : "";
    }

    /** Why the figure before this word is not to be taken; what was said before where nothing speaks against it. */
    public static String why(List<Word> words, int at, Names names, String before) {
        if (!before.isEmpty()) {
            return before;
        }
        int from = JOINS.matcher(words.get(at).text()).matches() && at + 1 < words.size() ? at + 1 : at;
        if (from == at
                && (words.get(at).isBound()
                        || REMARK.matcher(words.get(at).text()).matches())) {
            return before;
        }
        var word = words.get(from).text().replaceAll("^[(\\[]\\s*|\\s*[)\\]]$", "");
        var first = word.split("\\s", 2)[0];
        boolean isInUnit = UnitWords.isPart(word);
        boolean isParted = words.get(at - 1).text().matches("[=:(),;.]|.*[,;:]");
        boolean isKnown = !isInUnit
                && (isParted
                        || from > at
                        || words.get(at).isParted()
                        || words.get(at).isGarbled()
                        || WORD_OF_A_SENTENCE.matcher(first).matches()
                        || Label.isManner(word)
                        || Told.speaksOfOthers(word)
                        || Understood.ownMethod(word) != null);
        if (isKnown || !isInUnit && goesOn(words, at) || beginsName(words, at, names, isInUnit)) {
            return before;
        }
        int end = from + 1;
        while (end < words.size() && end - from < LONGEST_UNIT && Rows.isInCell(words, end)) {
            end++;
        }
        return QUOTE
                + "%s” stands behind the figure, and it is no unit or basis that is known. Say its unit below, beside its name"
                        .formatted(TextLine.join(words.subList(from, end)).text());
    }

    /** @param withFigure whether a figure must follow: "mg" may be magnesium, or what is left of "mg kg" */
    public static boolean beginsName(List<Word> words, int at, Names names, boolean withFigure) {
        if (!names.canBegin(words.get(at).text())) {
            return false;
        }
        for (int end = Math.min(words.size(), at + LONGEST_NAME); end > at; end--) {
            boolean isFollowed =
                    !withFigure || end < words.size() && words.get(end).isFigure();
            if (isFollowed
                    && names.label(TextLine.join(words.subList(at, end)).text()).isPresent()) {
                return true;
            }
        }
        return false;
    }

    /** In columns: a name that nobody knows, with figures of its own behind it. */
    private static boolean goesOn(List<Word> words, int at) {
        return !Rows.isInCell(words, at)
                && words.subList(at, words.size()).stream().anyMatch(Word::isFigure);
    }
}
