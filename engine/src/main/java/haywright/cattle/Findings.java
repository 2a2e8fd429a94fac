package haywright.cattle;

import haywright.workings.Note;
import haywright.workings.Note.Level;
import haywright.workings.Problem;
import haywright.workings.Refused;
import java.time.LocalDate;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.function.Supplier;

/** What a check found, most serious or not; empty when all is well. */
public record Findings(List<Finding> found) {
    private static final DateTimeFormatter DATE = DateTimeFormatter.ofPattern("MMM d, uuuu", Locale.US);

    public static final Findings NONE = new Findings(List.of());

    /** Its words are only made when somebody reads them: thousands of animals are drawn that are unusual, though possible. */
    record Finding(Level level, String rule, String field, Supplier<Problem> says) {
        Note note() {
            var problem = says.get();
            return new Note(level, rule, field, problem.value() + ": " + problem.rule(), problem.fix());
        }
    }

    /** A day as a person writes it. */
    public static String said(LocalDate date) {
        return DATE.format(date);
    }

    public static Findings one(Level level, String rule, String field, String value, String words, String fix) {
        return one(level, rule, field, () -> new Problem(field, value, words, fix));
    }

    public static Findings one(Level level, String rule, String field, Supplier<Problem> says) {
        return new Findings(List.of(new Finding(level, rule, field, says)));
    }

    public static Findings of(Findings... parts) {
        var all = new ArrayList<Finding>();
        for (var part : parts) {
            all.addAll(part.found);
        }
        return all.isEmpty() ? NONE : new Findings(all);
    }

    /** Only what is impossible. */
    public Findings refusals() {
        return new Findings(found.stream().filter(f -> f.level == Level.REFUSE).toList());
    }

    public List<Note> notes() {
        return found.stream().map(Finding::note).toList();
    }

    /** Throws when anything found is of level E. */
    public void refuse() {
        if (found.isEmpty()) {
            return; // the road of every draw
        }
        Refused.unlessEmpty(refusals().found.stream().map(f -> f.says.get()).toList());
    }
}
