package haywright.forage.lab;

import haywright.forage.Analyte;
import java.util.Collections;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;

/**
 * A report carried to dry matter, with what the rules say of it.
 *
 * @param values each figure in its analyte's unit, on dry matter; a figure that is no number, or whose basis cannot be
 *     told, is not among them
 * @param issues worst first
 */
public record CheckedReport(Map<Analyte, Double> values, List<Issue> issues) {
    public CheckedReport {
        values = values.isEmpty() ? Map.of() : Collections.unmodifiableMap(new EnumMap<>(values));
        issues = List.copyOf(issues);
    }

    /** Whether nothing in it is impossible. */
    public boolean isPossible() {
        return issues.stream().noneMatch(i -> i.level() == Issue.Level.E);
    }

    /** The figures that no error stands beside. */
    public Map<Analyte, Double> sound() {
        if (isPossible()) {
            return values;
        }
        var sound = new EnumMap<Analyte, Double>(Analyte.class);
        sound.putAll(values);
        for (var issue : issues) {
            if (issue.level() == Issue.Level.E) {
                if (issue.field() != null) {
                    sound.remove(issue.field());
                }
            }
        }
        return Collections.unmodifiableMap(sound);
    }
}
