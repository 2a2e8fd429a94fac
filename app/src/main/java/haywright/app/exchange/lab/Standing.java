package haywright.app.exchange.lab;

import java.util.Optional;
import java.util.regex.Pattern;

/**
 * Whether a result counts, by the words of its sheet: in a remark or a status beside it, in a title over it, in a
 * sentence or at the foot. What the laboratory itself takes back is never taken without a question.
 */
public enum Standing {
    STANDS,
    /** Void, rejected, canceled, not to be used. */
    VOID,
    /** Another report has taken its place. */
    REPLACED,
    /** The laboratory may still change it. */
    PRELIMINARY,
    /** Measured once more, and no duplicate bag; which of the two counts is another question. */
    AGAIN;

    private static final int LONGEST_QUOTE = 120;

    private static final String FROM = "(?iu)(?<![\\p{L}\\p{N}-])(?:";
    private static final String TO = ")(?![\\p{L}\\p{N}])";

    private static final Pattern VOIDS = Pattern.compile(FROM
            + "void(?:ed)?|(?:(?:do|must|should) not (?:be )?used?|don['’]t use)(?! (?:(?:for|in|as|to) )?(?:any |the |our |an? )?(?:advertis|promot|litigat|endors|resale|legal|trade|commercial|marketing|name|logo|mark))|not (?:for use|to be used|to be relied on|valid|usable|reportable|acceptable)"
            + "|no longer valid|reject(?:ed)?|cancel(?:l)?ed|invalid(?:ated)?|withdrawn|retracted|annulled|recalled|scratched|struck out|disregard(?:ed)?|ignore (?:this|these|it|the above|result|value|figure)"
            + "|(?:sample|samples|bag|bags)(?: (?:was|were|got|is|are))? (?:mixed[- ]?up|switched|swapped|mislabel(?:l)?ed|lost|spilled|not ours|contaminated)|mix(?:ed)?[- ]up|wrong (?:sample|bag|lot)|(?:blank|standard|check)(?: (?:was|is))? contaminated|(?:reported|issued|sent|printed|run) in error|erroneous"
            + "|(?:qc|quality control|check sample|duplicates?) fail(?:ed|ure|s)?|fail(?:ed|s)? (?:the )?(?:qc|quality control|check)"
            + TO);

    private static final Pattern REPLACES = Pattern.compile(FROM
            + "superseded|(?:is|was|been|are|were|and) replaced|replaced by|obsolete|outdated|see (?:the )?(?:revised|corrected|amended|new|newer|later) (?:report|version|certificate|results?)"
            + TO);

    private static final Pattern EARLY = Pattern.compile(FROM
            + "preliminary|provisional|interim|draft(?= (?:report|copy|results?|only|version)|\\W*$)|pending|not (?:yet )?(?:final|reviewed|approved|released)|unreviewed|unapproved|subject to (?:revision|change|review)|to be confirmed|awaiting (?:review|confirmation|approval)"
            + TO);

    private static final String AGAINS =
            "re-?runs?|re-?ran|repeat(?:ed|s)?|re-?tests?|re-?tested|re-?anal(?:ysis|y[sz]ed)|re-?check(?:ed)?|re-?do(?:ne)?|duplicates?|dup\\.?|(?:second|2nd|third|3rd) (?:run|test|analysis|try|time)|(?:run|test|trial|try) [2-9]|check (?:run|test)|confirm(?:ed|ation)(?: run| test)?";

    private static final Pattern ONCE_MORE = Pattern.compile(FROM + AGAINS + TO);
    private static final Pattern AT_THE_END =
            Pattern.compile("(?iu)(?:[\\s,;:(\\[–—-]+|(?<=[0-9])(?=r$))(?:" + AGAINS + "|r(?=$))[)\\]\\s]*$");

    private static final Pattern DUPLICATE = Pattern.compile("(?iu)(?<!\\p{L})dup(?:licates?)?(?!\\p{L})");
    private static final Pattern BEGINS =
            Pattern.compile("(?iu)[(\\[]?(?:" + AGAINS + "|second|2nd|third|3rd)[)\\]:,]?");

    /** "Void if altered", "samples may be rejected": a rule of the house, and nothing of this result. */
    private static final Pattern CONDITION = Pattern.compile(
            "(?iu)(?<!\\p{L})(?:if|unless|when|whenever|where|without|until|may|might|can|could|would|will|shall|after|policy|reserves?)(?!\\p{L})");

    /** "No sample was rejected"; what says "not" itself is another thing. */
    private static final Pattern DENIED = Pattern.compile(
            "(?iu)(?<!\\p{L})(?:no|none|never|nothing|neither|not|nor|isn['’]t|wasn['’]t|free of|zero)(?: [\\p{L}’']+){0,3}$");

    /** "This replaces the report of 9 Sep, which was void": of another report. */
    private static final Pattern OF_ANOTHER = Pattern.compile(
            "(?iu)(?<!\\p{L})(?:(?:replaces?|supersedes?|replacing|superseding|cancels|voids|instead of|in place of|corrects?)(?!\\p{L})|(?:earlier|previous|prior|old|last|former|first|original|other) (?:reports?|results?|figures?|sheets?|ones?|certificates?|e?-?mails?|letters?|version|numbers|issue|copy|revision))");

    /** What a sheet says of a figure, a row, a sample or a report, sentence by sentence; the worst of it counts. */
    public static Standing of(String words) {
        var worst = STANDS;
        for (var sentence : words.split("(?<=[.;!])\\s+")) {
            var one = ofSentence(sentence);
            worst = one.compareTo(STANDS) > 0 && (worst == STANDS || one.compareTo(worst) < 0) ? one : worst;
        }
        return worst;
    }

    private static Standing ofSentence(String sentence) {
        boolean isRule = CONDITION.matcher(sentence).find();
        if (!isRule && !OF_ANOTHER.matcher(sentence).find()) {
            if (isSaid(VOIDS, sentence)) {
                return VOID;
            }
            if (isSaid(REPLACES, sentence)) {
                return REPLACED;
            }
            if (isSaid(EARLY, sentence)) {
                return PRELIMINARY;
            }
        }
        return !isRule
                        && isSaid(ONCE_MORE, sentence)
                        && !DUPLICATE.matcher(sentence).find()
                ? AGAIN
                : STANDS;
    }

    private static boolean isSaid(Pattern pattern, String sentence) {
        return pattern.matcher(sentence)
                .results()
                .anyMatch(found -> !DENIED.matcher(
                                sentence.substring(0, found.start()).strip())
                        .find());
    }

    /** Whether a figure that these words speak of is not taken as it is. */
    public boolean isDoubtful() {
        return this == VOID || this == REPLACED || this == PRELIMINARY;
    }

    /** The reason of it, with the sheet's own words; empty for what stands. */
    public static Optional<String> why(String words) {
        return of(words).isDoubtful() ? Optional.of(quoted(words)) : Optional.empty();
    }

    static String quoted(String words) {
        var plain = words.strip().replaceAll("\\s+", " ");
        var cut = plain.length() > LONGEST_QUOTE ? plain.substring(0, LONGEST_QUOTE) + " …" : plain;
        return "the sheet says of it: “%s”".formatted(cut);
    }

    /**
     * A code without what says that its bag was measured once more: "B-2 rerun", "T-202R". The same where it says no such
     * thing; a duplicate is a bag of its own.
     */
    static String once(String code) {
        return DUPLICATE.matcher(code).find()
                ? code
                : AT_THE_END.matcher(code.strip()).replaceFirst("");
    }

    /** "Rerun", "repeat": what a name can begin with. */
    static boolean isOnceMore(String word) {
        return BEGINS.matcher(word).matches();
    }

    /** A name of an analyte without it: "Crude protein (rerun)", "Repeat NDF". */
    static String without(String name) {
        var once = AT_THE_END.matcher(name.strip()).replaceFirst("");
        return (once.isBlank() ? name : once)
                .replaceFirst("(?iu)^[(\\[]?(?:" + AGAINS + ")[)\\]]?[\\s,:–-]+(?:of (?:the )?)?(?=\\p{L})", "");
    }
}
