package haywright.forage.lab;

import haywright.forage.Analyte;
import org.jspecify.annotations.Nullable;

/**
 * One thing the rules of consistency have to say of a report.
 *
 * @param rule the rule's id, {@code C08}
 * @param field the analyte it stands beside; null when it is about the report as a whole
 * @param words what is wrong or unusual, with the figures
 * @param fix what to do, often as a question
 */
public record Issue(Level level, String rule, @Nullable Analyte field, String words, String fix) {
    public enum Level {
        /** Impossible: refused, or asked about. */
        E,
        /** Unlikely: a warning. */
        W,
        /** Something to know. */
        I
    }

    static Issue error(String rule, @Nullable Analyte field, String words, String fix) {
        return new Issue(Level.E, rule, field, words, fix);
    }

    public static Issue warning(String rule, @Nullable Analyte field, String words, String fix) {
        return new Issue(Level.W, rule, field, words, fix);
    }

    static Issue information(String rule, @Nullable Analyte field, String words, String fix) {
        return new Issue(Level.I, rule, field, words, fix);
    }
}
