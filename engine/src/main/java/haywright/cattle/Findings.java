package haywright.cattle;

import haywright.workings.Note;
import haywright.workings.Note.Level;
import haywright.workings.Problem;
import haywright.workings.Refused;
import java.util.List;
import java.util.stream.Stream;

/** What a check found, most serious or not; empty when all is well. */
record Findings(List<Finding> found) {
    static final Findings NONE = new Findings(List.of());

    record Finding(Level level, String rule, String field, String value, String words, String fix) {
        Note note() {
            return new Note(level, rule, field, value + ": " + words, fix);
        }
    }

    static Findings one(Level level, String rule, String field, String value, String words, String fix) {
        return new Findings(List.of(new Finding(level, rule, field, value, words, fix)));
    }

    static Findings of(Findings... parts) {
        return new Findings(Stream.of(parts).flatMap(p -> p.found.stream()).toList());
    }

    List<Note> notes() {
        return found.stream().map(Finding::note).toList();
    }

    /** Throws when anything found is of level E. */
    void refuse() {
        Refused.unlessEmpty(found.stream()
                .filter(f -> f.level == Level.REFUSE)
                .map(f -> new Problem(f.field, f.value, f.words, f.fix))
                .toList());
    }
}
