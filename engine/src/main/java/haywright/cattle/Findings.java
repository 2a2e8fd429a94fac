package haywright.cattle;

import haywright.workings.Note;
import haywright.workings.Note.Level;
import haywright.workings.Problem;
import haywright.workings.Refused;
import java.util.ArrayList;
import java.util.List;

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
        var all = new ArrayList<Finding>();
        for (var part : parts) {
            all.addAll(part.found);
        }
        return all.isEmpty() ? NONE : new Findings(all);
    }

    List<Note> notes() {
        return found.stream().map(Finding::note).toList();
    }

    /** Throws when anything found is of level E. */
    void refuse() {
        if (found.isEmpty()) {
            return; // the road of every draw
        }
        Refused.unlessEmpty(found.stream()
                .filter(f -> f.level == Level.REFUSE)
                .map(f -> new Problem(f.field, f.value, f.words, f.fix))
                .toList());
    }
}
