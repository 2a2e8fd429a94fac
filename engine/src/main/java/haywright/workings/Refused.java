package haywright.workings;

import java.util.List;
import java.util.stream.Collectors;

/** Input that no answer can be given for. Thrown by the type that owns the rule; the edge shows it beside the field. */
public final class Refused extends RuntimeException {
    private static final long serialVersionUID = 1;

    private final transient List<Problem> problems;

    public Refused(List<Problem> problems) {
        super(problems.stream().map(p -> p.field() + ": " + p.sentence()).collect(Collectors.joining("; ")));
        this.problems = List.copyOf(problems);
    }

    public Refused(String field, String value, String rule, String fix) {
        this(List.of(new Problem(field, value, rule, fix)));
    }

    public List<Problem> problems() {
        return problems;
    }

    /** Throws unless the list is empty. */
    public static void unlessEmpty(List<Problem> problems) {
        if (!problems.isEmpty()) {
            throw new Refused(problems);
        }
    }
}
