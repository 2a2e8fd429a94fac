package haywright.app.exchange.lab;

import haywright.forage.Basis;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.regex.Pattern;
import java.util.stream.Stream;

/**
 * A part of a line that says the basis of all figures: "All results on a dry matter basis".
 *
 * @param from where it begins in the line
 * @param to where it ends
 */
public record BasisSaid(Basis basis, int from, int to) {
    private static final Pattern WORDS_OF_BASIS = Pattern.compile(
            "(?i)^(?:(?:all|everything|below|above|numbers|results?|values?|figures?|percent(?:ages)?|%|data|nutrients?|analys[ie]s|are|is|measured|determined|stated|printed|reported|expressed|given|shown|basis:?|on|in|the|as(?! ?[-_]?(?:received|rec|fed|is|sampled|wet)))[,:]?\\s+)+");
    private static final Pattern SAYS = Pattern.compile(
            "(?i)\\b(?:results?|values?|figures?|analys[ie]s|data|nutrients?|everything)\\b.*\\b(?:on|are|is|as|reported|expressed|given)\\b");
    private static final Pattern BASIS =
            Pattern.compile("(?i)\\b(?:as[ -](?:received|fed|is|sampled)|dry[ -](?:matter|weight)|dry(?!-\\p{L}))\\b");
    private static final Pattern LEADING = Pattern.compile(
            "(?i)^((?:on|in) (?:an? |the )?[^,.:;0-9]{2,24}? basis),? (?:it|this|that|the|your|our|these|those|they|we|all)\\b");

    private static final Pattern OTHERS =
            Pattern.compile("(?i)\\b(?:calculated|typical|average|mean|normal|range|goal|guide|reference)\\b");

    /** "(sample as received 92.6 % dry matter)": how dry it came, and no basis of figures. */
    private static final String DRY_MATTER_ITSELF =
            "(?i)\\((?=[^()]*[0-9])(?=[^()]*\\b(?:dry matter|dm|moisture|solids)\\b)(?![^()]*\\b(?:all|basis|results?|figures?|values?)\\b)[^()]*\\)"
                    + "|\\((?:dm|dry matter|moisture)(?: itself| alone| only)?,? (?:is |on |in )?as[ -](?:received|fed|is|sampled)[^()]*\\)";

    /** "All but moisture on …": what has one figure whatever the basis. */
    private static final String BUT =
            "(?i)^(?:all|everything)(?: (?:of the )?(?:figures|results|values|numbers|analytes|nutrients))? ?,? ?(?:but|except|except for|other than|excluding|apart from|save) (?:the |for )*"
                    + "(?:(?:moisture|dry matter|dm|ph|rfv|rfq|and|or|,|&|the) ?)+(?= )";

    /** What is taken out of it, with a basis of its own or without. */
    private static final String TAKEN_OUT =
            "(?i)[,;(]?\\s*\\b(?:except|excepting|excluding|other than|apart from|save|but) .*$";

    private static final String OF_RESULTS =
            "(?i)^(?:the )?(?:reporting |reported |result )?basis(?: of| for)?(?: (?:the|all|these))*(?: (?:report(?:ing)?|results?|figures?|values?|analys[ie]s|data|numbers))? ?(?:[:=–-]|is|are) ?";

    /** What a line says of all figures, sentence by sentence. */
    public static List<BasisSaid> in(String line) {
        var all = new ArrayList<BasisSaid>();
        var sentence = Pattern.compile("\\S.*?(?:[.;](?=\\s|$)|$)").matcher(line);
        while (sentence.find()) {
            var text = sentence.group();
            if (text.matches("(?:[*†‡§]{1,3}|[⁰¹²³⁴-⁹]{1,2}|\\([a-z]\\)).*")
                    || OTHERS.matcher(text).find()) {
                continue;
            }
            // "Dry matter basis. Starred tests are as fed."
            boolean isAlone = text.length() < line.strip().length() && text.matches("(?i).*\\bbasis[.;]");
            var whole = isAlone ? Heading.basis(text.replaceAll("[.;]$", "")) : Optional.<Basis>empty();
            whole.or(() -> basis(text))
                    .ifPresent(basis -> all.add(new BasisSaid(basis, sentence.start(), sentence.end())));
        }
        return all;
    }

    private static Optional<Basis> basis(String sentence) {
        var plain = sentence.strip()
                .replaceAll("\\s+", " ")
                .replaceAll(DRY_MATTER_ITSELF, "")
                .replaceFirst(BUT, "all ")
                .replaceFirst(TAKEN_OUT, "")
                .replaceFirst(OF_RESULTS, "basis: ")
                .replaceAll(" ?[.;:,]+$", "")
                .strip();
        return Stream.concat(Stream.of(plain), clauses(plain))
                .map(BasisSaid::wholly)
                .flatMap(Optional::stream)
                .findFirst()
                .or(() -> leading(plain));
    }

    /** "Here is what we found, all on the dry basis": the parts of a sentence that speak of all figures. */
    private static Stream<String> clauses(String sentence) {
        return Pattern.compile("[,:]|(?=\\((?:on |all )?[^()]*\\bbasis\\))")
                .splitAsStream(sentence)
                .map(String::strip)
                .map(part -> isAtTheEnd(sentence, part) ? "all " + part : part)
                .map(part -> sentence.matches("(?i).*\\b(?:results?|values?|figures?|numbers)\\b.*")
                        ? part.replaceFirst("^\\(([^()]*basis)\\).*", "all $1")
                        : part)
                .filter(part -> part.matches("(?i)(?:all|everything|results?|values?|figures?|numbers)\\b.*"));
    }

    /** "Here is your hay, on a dry matter basis:" speaks of all that follows; "TDN, dry matter basis" of one figure. */
    private static boolean isAtTheEnd(String sentence, String part) {
        return part.matches("(?i).*\\bbasis$")
                && Heading.basis(part).isPresent()
                && sentence.endsWith(part)
                && sentence.split(" ").length - part.split(" ").length > 3
                && sentence.substring(0, sentence.length() - part.length()).indexOf('%') < 0
                && Label.of(sentence.split("[,:(]", 2)[0]).isEmpty();
    }

    /** "On a dry matter basis it ran crude protein 9.2 %": of all that the sentence goes on to say. */
    private static Optional<Basis> leading(String sentence) {
        var found = LEADING.matcher(sentence);
        return found.find() ? Heading.basis(found.group(1)) : Optional.empty();
    }

    private static Optional<Basis> wholly(String said) {
        return alone(said).or(() -> alone(said.replaceFirst("(?i)[, (]*\\b(?:unless|except|if not) .*$", "")));
    }

    private static Optional<Basis> alone(String plain) {
        var rest = WORDS_OF_BASIS.matcher(plain).replaceFirst("");
        if (!rest.equals(plain)) {
            var whole = Heading.basis(rest);
            if (whole.isPresent()) {
                return whole;
            }
        }
        return SAYS.matcher(plain).find() && !HalfDry.isIn(plain)
                ? BASIS.matcher(plain)
                        .results()
                        .filter(found ->
                                SAYS.matcher(plain.substring(0, found.start())).find()
                                        && !HalfDry.DENIED
                                                .matcher(plain.substring(0, found.start()))
                                                .find())
                        .findFirst()
                        .flatMap(found -> Heading.basis(found.group()))
                : Optional.empty();
    }

    /** Without the words that stand round a basis in a sentence. */
    public static String bare(String text) {
        return WORDS_OF_BASIS.matcher(text).replaceFirst("").strip();
    }
}
