package haywright.app.exchange.lab;

import haywright.quantity.Unit;
import java.util.Arrays;
import java.util.Optional;
import java.util.regex.Pattern;
import java.util.stream.Stream;

/** A sentence that says the unit of all figures: "Figures are grams per kilogram of dry matter", "Units: g/kg". */
public final class UnitSaid {
    private static final Pattern OF_ALL = Pattern.compile(
            "(?iu)^\\W*(?:(?:all|the|these|our|above|below|following|mineral|analytical) )*(?:figures?|results?|values?|numbers|data|everything|concentrations?|contents?|analys[ie]s|minerals|nutrients)\\b(?=.*\\b(?:are|is|in|as|given|expressed|reported|shown)\\b).*"
                    + "|^\\W*(?:all )?units?(?: of measure(?:ment)?)?(?: for all(?: figures)?| used)?\\s*(?:[:=–-]|is|are)\\s?.*|^\\W*(?:all|everything)(?: is| are)? (?:in|as) .*|^\\W*in .*");
    private static final Pattern BUT = Pattern.compile(
            "(?iu)\\b(?:except|unless|but|other than|excluding|apart from|save|some|usual|typical|average|range|target)\\b");

    private static final Pattern SIGN = Pattern.compile("(?i)%|pp[mb]\\b");
    private static final int LONGEST = 200;
    private static final int MOST_WORDS = 16;

    private UnitSaid() {}

    /** Empty where a line says none of all its figures, or several. */
    public static Optional<Unit> in(String line) {
        if (line.isBlank()
                || line.length() > LONGEST
                || !UnitWords.isPerhapsIn(line) && !SIGN.matcher(line).find()) {
            return Optional.empty();
        }
        return Stream.of(line.strip().split("(?<=[.;])\\s+"))
                .map(UnitSaid::ofSentence)
                .flatMap(Optional::stream)
                .findFirst();
    }

    private static Optional<Unit> ofSentence(String sentence) {
        var words = UnitWords.plain(sentence.strip()).split("[\\s,()\\[\\]]+");
        var units = Arrays.stream(words)
                .map(word -> Heading.unit(word.replaceAll("^[:=]|[.;:]$", "")))
                .flatMap(Optional::stream)
                .distinct()
                .toList();
        boolean isOfAll = OF_ALL.matcher(sentence.strip()).matches() || isAlone(words);
        return isOfAll
                        && words.length <= MOST_WORDS
                        && units.size() == 1
                        && !BUT.matcher(sentence).find()
                ? Optional.of(units.get(0))
                : Optional.empty();
    }

    /** "g/kg DM", "g/kg of dry matter": a unit and a basis, and no other word. */
    private static boolean isAlone(String[] words) {
        if (words.length < 2 || Heading.unit(words[0]).isEmpty()) {
            return false;
        }
        var rest =
                String.join(" ", Arrays.asList(words).subList(1, words.length)).replaceAll("[.;:]$", "");
        return Heading.basis(rest).isPresent();
    }
}
