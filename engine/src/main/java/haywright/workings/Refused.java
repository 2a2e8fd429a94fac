package haywright.workings;

import haywright.quantity.Kind;
import haywright.quantity.Quantity;
import haywright.quantity.Unit;
import java.util.List;
import java.util.Locale;
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

    /**
     * Throws unless the quantity is of the kind that its place asks for: a weight in feet is refused by the record that
     * holds the weight.
     */
    public static void unlessOfKind(Kind kind, String field, Quantity quantity) {
        if (quantity.unit().kind() != kind) {
            throw new Refused(
                    field,
                    quantity.asTyped(),
                    "this is not a unit of "
                            + kind.name().toLowerCase(Locale.ROOT).replace('_', ' '),
                    "Use one of " + Unit.of(kind).stream().map(Unit::symbol).collect(Collectors.joining(", ")) + ".");
        }
    }

    /** Throws where an amount is below nothing, or is no number. @param rule what is the case: "a haul is 0 miles or more" */
    public static void ifBelowNothing(String field, Quantity value, String rule) {
        if (!(value.value() >= 0)) {
            throw new Refused(field, value.asTyped(), rule, "Check the figure.");
        }
    }
}
