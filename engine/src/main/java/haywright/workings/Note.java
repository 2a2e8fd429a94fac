package haywright.workings;

/**
 * What a check of plausibility has to say about what came in.
 *
 * @param rule the rule's id in its room's table
 * @param field the field's name as its record has it
 * @param words what came in and what is usual, one sentence
 * @param fix what to do, often as a question
 */
public record Note(Level level, String rule, String field, String words, String fix) {
    public enum Level {
        /** Impossible, or outside what an equation can bear: no answer is given. */
        REFUSE("E"),
        /** Unusual: ask, and go on. */
        ASK("W"),
        /** Worth saying. */
        SAY("I");

        private final String letter;

        Level(String letter) {
            this.letter = letter;
        }

        /** As JSON has it: {@code E}, {@code W}, {@code I}. */
        public String letter() {
            return letter;
        }
    }
}
