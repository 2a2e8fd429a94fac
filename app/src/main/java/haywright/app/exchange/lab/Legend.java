package haywright.app.exchange.lab;

import haywright.forage.Basis;
import haywright.forage.lab.Tested;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/**
 * What a sheet says its marks mean: {@code * as received}, {@code ¹ percent of NDF}, and letters in a column of bases:
 * {@code A = in the sample as it arrived}.
 */
public final class Legend {
    private static final int LONGEST = 1000;
    private static final String RAISED_FIGURES = "⁰¹²³⁴⁵⁶⁷⁸⁹";
    private static final String RAISED_LETTERS = "ᵃᵇᶜᵈᵉᶠᵍʰⁱ";
    /** Raised figures and letters, which are marks wherever they stand. */
    public static final String RAISED = RAISED_FIGURES + RAISED_LETTERS;
    /** Signs behind a name or a figure that point to what is said elsewhere. */
    public static final String MARK = "[*†‡§]{1,3}|[" + RAISED + "]{1,2}|[(\\[][a-zA-Z0-9][)\\]]";

    /** At the foot, before what they mean, and behind a figure: letters and figures without brackets too. */
    private static final Pattern BARE =
            Pattern.compile("^\\s*([a-z0-9])[.):]?\\s+(?=[=:–-]?\\s*(\\p{L}|%))(?!.*\\s{2,}.*[0-9])(.*)$");
    /** "a) as fed basis": what a letter means, in a line of its own. */
    private static final Pattern ALONE =
            Pattern.compile("^\\s*(?:(?:foot)?note\\s+)?([\\p{L}0-9])\\s?[).:=]\\s*[=:–-]?\\s*((?=.*\\p{L})[^0-9]+)$");
    /** A mark, and what it means up to the next one or the end of the sentence. */
    private static final Pattern LEGEND = Pattern.compile("(?:^|(?<=[\\s.;,]))(" + MARK
            + ")\\s*(?:[=:–-]|, (?:which|that) (?:are|is)(?= ))?\\s*(\\p{L}|%)((?:(?!\\s(?:" + MARK
            + ")\\s*[=:\\p{L}])(?!\\.\\s|\\.$|;).)*)");

    /** "*** VOID ***": stars round a title are no marks. */
    private static final Pattern FRAMED = Pattern.compile("\\s*[*†‡§]{1,9}\\s?\\p{L}.*[*†‡§]{1,9}\\s*");

    private static final Pattern BRACKETS =
            Pattern.compile("[(\\[]([*†‡§]{1,3})[)\\]]|(?<=(?<!\\S)[*†‡§]) ?[(\\[](?=\\p{L})");

    private static final Pattern SAID = Pattern.compile(
            "(?i)(?<!\\p{L})(?:(?:the |all )?(?:starred|asterisked) (?:tests?|results?|values?|figures?|items?|analytes?|lines?|rows?|ones)|(?:an? |the )?(?:asterisks?|stars?))\\s+(?=(?:means?|mark|marks|denotes?|indicates?|stands? for|shows?|says?|is|are|=|:)(?!\\p{L}))(?:(?:means?|marks?|denotes?|indicates?|stands? for|shows?|says?)\\s+)?");

    private static final Pattern FIGURE_BEHIND_UNIT =
            Pattern.compile("^(?:%|\\p{L}[\\p{L}/%.]*)(?: ?\\(?[\\p{L}/.]+\\)?){0,3}\\s+<? ?[0-9.]*[0-9](?:\\s|$)");

    private static final Pattern SHARE = Pattern.compile(
            "(?i)(?:(?:as|in|is|are|given|expressed|reported) )*(?:%|percent|pct\\.?) ?(?:of )?(?:the )?(.+)");
    /** "Percent or parts in the dry matter": words for any amount, before the basis of it. */
    private static final Pattern AMOUNTS = Pattern.compile(
            "(?i)^(?:(?:per ?cent(?:ages?)?|parts?|per million|ppm|ppb|amounts?|values?|figures?|results?|or|and|all|expressed|given|reported|is|are)[\\s,]+)+(?=(?:in|on|of) )(?:(?:in|on|of) the )?(?:(?:in|on|of) (?=an? ))?");

    private static final Pattern ABOUT_FIGURES =
            Pattern.compile("(?i)\\b(?:basis|dry|as[ -]received|as[ -]fed|converted|percent of|% of)\\b");

    /**
     * What a mark means.
     *
     * @param share "% of NDF", as it would stand behind a name; empty for none
     * @param form "as NO3-N", likewise
     * @param why what it says of figures and is not understood; empty as a rule
     */
    public record Meaning(
            @Nullable Basis basis, Tested.@Nullable Method method, String share, String form, String why) {
        public boolean isTold() {
            return basis != null || method != null || !share.isEmpty() || !form.isEmpty() || !why.isEmpty();
        }
    }

    /** "A = in the dry matter. B: as it came": a letter or a short word, and what it stands for. */
    private static final Pattern LETTER = Pattern.compile(
            "(?<![\\p{L}\\p{N}])([\\p{L}\\p{N}]{1,3})(?:\\s*[=:–]\\s*|\\s+(?:-|means?|stands for|is)\\s+|(?<=\\p{Lu})\\s+(?=(?:as|dry|on|in) ))"
                    + "((?:(?![\\s,][\\p{L}\\p{N}]{1,3}\\s*[=:–]\\s)(?!,\\s?\\p{Lu}{1,3}\\s)[^.;|()])+)");

    private static final Pattern DRY =
            Pattern.compile("(?i)\\b(?:dry|dried|oven-dr(?:y|ied)|dm|moisture[- ]free|water[- ]free)\\b");
    private static final Pattern RECEIVED = Pattern.compile(
            "(?i)\\b(?:arriv\\w+|received|submitted|delivered|as[- ](?:fed|is|sampled|sent|it came)|fresh|wet(?![ -]chem)|undried)\\b");
    /** "in the dry matter", "as it came"; not "corrected for dry matter". */
    private static final Pattern ON = Pattern.compile(
            "(?i)(?:(?:is|are|was|were|given|reported|expressed|measured|figures?|results?|values?|all)\\s+)*(?:in|on|of|as|at)\\b(?!.*\\b(?:correct|calculat|convert|method|free of)).*");

    private static final Pattern NINETY = Pattern.compile("(?i)\\b90 ?%");

    private final Map<String, Meaning> marks = new LinkedHashMap<>();
    private final Map<String, Basis> letters = new LinkedHashMap<>();
    private final Set<Integer> lines = new HashSet<>();
    private final Set<Integer> whole = new HashSet<>();
    private final Set<Integer> ofOne = new HashSet<>();

    /** @param all the lines of a sheet, or its cells; the first has number 1 */
    public Legend(List<String> all) {
        for (int number = 1; number <= all.size(); number++) {
            var line = signs(all.get(number - 1));
            if (line.length() > LONGEST || FRAMED.matcher(line).matches()) {
                continue;
            }
            var found = LEGEND.matcher(line);
            int end = line.length() - line.stripLeading().length();
            while (found.find()) {
                if (isOfRow(line, found.start(1), found.group(2) + found.group(3))) {
                    continue;
                }
                var meaning = meaning(found.group(2) + found.group(3));
                boolean isSaid =
                        meaning.isTold() || line.substring(found.end(1)).strip().matches("[=:].*");
                if (isSaid) {
                    marks.merge(key(found.group(1)), meaning, (one, other) -> one.isTold() ? one : other);
                    lines.add(number);
                    end = line.substring(end, found.start()).isBlank() ? found.end() : end;
                }
            }
            var rest = line.substring(end);
            if (lines.contains(number)
                    && (rest.matches("[.;,\\s]*")
                            || end > 0 && Standing.of(rest).isDoubtful())) {
                whole.add(number);
            }
            var alone = ALONE.matcher(line);
            if (alone.matches() && !lines.contains(number)) {
                var meaning = meaning(alone.group(2));
                if (meaning.basis() != null) {
                    marks.putIfAbsent(alone.group(1), meaning);
                    lines.add(number);
                    whole.add(number);
                }
            }
            var bare = BARE.matcher(line);
            if (bare.matches() && !lines.contains(number) && isPointedTo(bare.group(1), all)) {
                ofOne.add(number);
                marks.putIfAbsent(bare.group(1), meaning(bare.group(3).replaceFirst("^[=:–-]\\s*", "")));
                lines.add(number);
            }
            var letter = LETTER.matcher(line);
            while (letter.find()) {
                basis(letter.group(2)).ifPresent(basis -> letters.putIfAbsent(letter.group(1), basis));
            }
        }
    }

    /** A mark in brackets, or said in words, as it stands beside the names: "(*) as fed", "starred tests are as fed". */
    private static String signs(String line) {
        return BRACKETS.matcher(SAID.matcher(line).replaceAll("* ")).replaceAll("$1 ");
    }

    /** "TDN *  pct  60.7": behind a name stands the unit of its figures, and nothing that explains the mark. */
    private static boolean isOfRow(String line, int mark, String behind) {
        var before = line.substring(0, mark).strip();
        return !before.isEmpty()
                && (FIGURE_BEHIND_UNIT.matcher(behind).find()
                        || Label.of(before.replaceFirst("^.*[.;|]", "")).isPresent());
    }

    /** Whether a figure somewhere has this letter or figure behind it, as a mark. */
    private static boolean isPointedTo(String mark, List<String> all) {
        var behind = Pattern.compile("[0-9]%?(?:\\s?[(\\[]" + mark + "[)\\]]|\\s?[" + raised(mark) + "]"
                + (Character.isDigit(mark.charAt(0)) ? "|\\s" : "|\\s?") + mark
                + "\\)?)(?=\\s*(?:$|[,;|]|%|\\p{L}{1,4}/|ppm|ppb|\\s{2,}))");
        return all.stream().anyMatch(line -> behind.matcher(line).find());
    }

    private static String raised(String mark) {
        char one = mark.charAt(0);
        return Character.isDigit(one)
                ? RAISED_FIGURES.substring(one - '0', one - '0' + 1)
                : one - 'a' < RAISED_LETTERS.length() ? RAISED_LETTERS.substring(one - 'a', one - 'a' + 1) : mark;
    }

    /** One mark, raised or not and with its brackets or without. */
    private static String key(String mark) {
        var bare = mark.replaceAll("[()\\[\\]]", "");
        var key = new StringBuilder();
        for (char one : bare.toCharArray()) {
            int figure = RAISED_FIGURES.indexOf(one);
            int letter = RAISED_LETTERS.indexOf(one);
            key.append(figure >= 0 ? (char) ('0' + figure) : letter >= 0 ? (char) ('a' + letter) : one);
        }
        return key.toString();
    }

    /** Null where the sheet does not say what it means. */
    public @Nullable Meaning of(String mark) {
        return marks.get(key(mark));
    }

    /** The basis that a letter in a column of bases stands for; empty where the sheet does not say. */
    public Optional<Basis> letter(String cell) {
        return Optional.ofNullable(letters.get(cell.strip()));
    }

    /** Whether what marks mean stands in the line of this number. */
    public boolean isIn(int number) {
        return lines.contains(number);
    }

    /** Whether the line of this number says what marks mean, and nothing else. */
    public boolean isAll(int number) {
        return whole.contains(number);
    }

    /** Whether the line of this number says what one letter or figure behind figures means, and nothing of the others. */
    public boolean isOfOne(int number) {
        return ofOne.contains(number);
    }

    /** In a sentence that says no more than a basis; empty where it says two, or none. */
    private static Optional<Basis> basis(String sentence) {
        var words = sentence.strip().replaceAll("[,;)\\s]+$", "");
        var whole = Heading.basis(BasisSaid.bare(words + " "));
        if (whole.isPresent() || HalfDry.isIn(words)) {
            return whole;
        }
        boolean isDry = DRY.matcher(words).find();
        boolean isReceived = RECEIVED.matcher(words).find();
        if (words.length() > 60
                || !ON.matcher(words.strip()).matches()
                || words.matches(".*[0-9].*")
                || isDry == isReceived) {
            return NINETY.matcher(words).find() && !isReceived ? Optional.of(Basis.NINETY_PCT) : Optional.empty();
        }
        return Optional.of(isDry ? Basis.DRY_MATTER : Basis.AS_RECEIVED);
    }

    private static Meaning meaning(String words) {
        var text = words.strip()
                .replaceAll("(?<=\\([^()]{0,80}\\))[.,;]+$|[.,;)]+$", "")
                .replaceFirst("(?i)^(?:means?|denotes?|indicates?|stands? for|shows?) ", "");
        var back = Standing.why(text);
        if (back.isPresent()) {
            return new Meaning(null, null, "", "", back.get());
        }
        var basis = basis(text).or(() -> Heading.basis(AMOUNTS.matcher(text).replaceFirst("")));
        if (basis.isPresent()) {
            return new Meaning(basis.get(), null, "", "", "");
        }
        var share = SHARE.matcher(text);
        if (share.matches()) {
            var on = Heading.basis(share.group(1));
            return on.isPresent()
                    ? new Meaning(on.get(), null, "", "", "")
                    : new Meaning(null, null, "% of " + share.group(1), "", "");
        }
        if (text.matches("(?i)(?:expressed |reported |given )?as \\S.*")
                && Heading.of(text.replaceFirst("(?i)^.*?\\bas ", "")).isPresent()) {
            return new Meaning(null, null, "", text.replaceFirst("(?i)^.*?\\bas ", "as "), "");
        }
        var method = Understood.ownMethod(text);
        return method == null && ABOUT_FIGURES.matcher(text).find()
                ? new Meaning(null, null, "", "", "its mark says “%s”, and that is not understood".formatted(text))
                : new Meaning(null, method, "", "", "");
    }
}
