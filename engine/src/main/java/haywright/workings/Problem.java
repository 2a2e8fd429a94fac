package haywright.workings;

import java.util.regex.Pattern;

/**
 * One thing wrong with what came in.
 *
 * @param field the field's name as its record has it: {@code adf}, {@code bodyWeight}; the app turns it into the name
 *     the reader knows
 * @param value what came in, as text
 * @param rule the rule it broke, in the rancher's words
 * @param fix what to do, often as a question
 */
public record Problem(String field, String value, String rule, String fix) {
    private static final Pattern ID =
            Pattern.compile("[0-9a-f]{8}(-[0-9a-f]{4}){3}-[0-9a-f]{12}", Pattern.CASE_INSENSITIVE);

    /** What came in, as a person knows it; empty for the id of a record, which says nothing to one. */
    public String said() {
        return ID.matcher(value.strip()).matches() ? "" : value;
    }

    public String sentence() {
        var said = said();
        return "%s%s. %s"
                .formatted(said.isEmpty() ? "" : said + ": ", rule, fix)
                .strip();
    }
}
