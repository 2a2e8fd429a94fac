package haywright.app.words;

import haywright.workings.Problem;
import haywright.workings.Refused;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Pattern;
import java.util.stream.IntStream;
import java.util.stream.Stream;

/** Several numbers in one box, understood as {@link Parse} understands one. */
public final class ParseList {
    private static final Pattern BETWEEN = Pattern.compile("[\\s;\u00a0\u202f]+|,(?=[\\s;\u00a0\u202f]|$)");
    private static final int MOST_NAMED = 5;

    private ParseList() {}

    /**
     * Several numbers of 0 or more, blanks, lines, semicolons or commas between them: {@code 2,100 2,080}, {@code 12, 15, 14}.
     * A comma that may also stand in a number is refused with a question.
     *
     * @throws Refused with a problem for each that is wrong, the first few of them
     */
    public static List<Double> of(String field, String text) {
        var words =
                Stream.of(BETWEEN.split(text)).filter(word -> !word.isEmpty()).toList();
        var problems = new ArrayList<Problem>();
        var numbers = new ArrayList<Double>();
        for (var word : words) {
            try {
                numbers.addAll(of(field, word, words.size() == 1));
            } catch (Refused refused) {
                problems.addAll(refused.problems());
            }
            if (problems.size() >= MOST_NAMED) {
                break;
            }
        }
        Refused.unlessEmpty(problems);
        return numbers;
    }

    private static List<Double> of(String field, String word, boolean isAlone) {
        var parts = List.of(word.split(",", -1));
        boolean isGrouped = Parse.GROUPED.matcher(word).matches()
                && (!isAlone || parts.size() == 2 && parts.get(0).length() < 3);
        if (isGrouped) {
            return List.of(Parse.digits(field, word, word));
        }
        // 080 is what is behind a comma or a blank between thousands
        if (!parts.stream().allMatch(part -> Parse.PLAIN.matcher(part).matches() && !part.matches("0[0-9].*"))) {
            throw new Refused(field, word, "each is a number of 0 or more", "Put spaces between them, and no words.");
        }
        if (canBeOne(parts)) {
            throw new Refused(
                    field,
                    word,
                    "the comma can mean two things",
                    "Put a space between two figures, as in 950 985; a comma only between thousands, as in 2,100 2,080.");
        }
        return parts.stream().map(part -> Parse.digits(field, word, part)).toList();
    }

    /** Whether some comma may be one between thousands, or a point. */
    private static boolean canBeOne(List<String> parts) {
        return IntStream.range(1, parts.size())
                        .anyMatch(i -> parts.get(i - 1).matches("[0-9]{1,3}")
                                && parts.get(i).matches("[0-9]{3}(\\..*)?"))
                || parts.size() == 2
                        && parts.get(0).matches("[0-9]+")
                        && parts.get(1).matches("[0-9]{1,2}");
    }
}
