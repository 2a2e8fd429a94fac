package haywright.workings;

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
    public String sentence() {
        return "%s%s. %s"
                .formatted(value.isEmpty() ? "" : value + ": ", rule, fix)
                .strip();
    }
}
