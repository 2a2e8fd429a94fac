package haywright.app.web.bench;

import haywright.app.words.Show;
import haywright.cattle.herd.Group;
import haywright.cattle.need.Need;
import haywright.workings.Origin;
import haywright.workings.Worked;
import io.javalin.http.NotFoundResponse;

/**
 * One page of the workings of a need: its lines, with a link to each number that was worked out itself. All of them on
 * one page are megabytes, for a group with many calving weeks.
 *
 * @param says what is worked out
 * @param worked its own lines alone
 * @param of where it stands in the need: line and input of each step, {@code 0.3-1.0}; empty for the need itself
 */
public record NeedWorkings(Group group, String says, Worked worked, String of) {
    private static final String STEP = "-";

    static NeedWorkings of(Group group, Need need, String says, String of) {
        Worked worked = need;
        for (var step : of.isEmpty() ? new String[0] : of.split(STEP, -1)) {
            if (!step.matches("[0-9]{1,3}\\.[0-9]{1,3}")) {
                throw new NotFoundResponse();
            }
            int line = Integer.parseInt(step.substring(0, step.indexOf('.')));
            int input = Integer.parseInt(step.substring(step.indexOf('.') + 1));
            var lines = worked.lines();
            if (line >= lines.size() || input >= lines.get(line).inputs().size()) {
                throw new NotFoundResponse();
            }
            var number = lines.get(line).inputs().get(input);
            if (!(number.origin() instanceof Origin.Computed computed)) {
                throw new NotFoundResponse();
            }
            worked = computed.by();
            says = number.symbol() + " = " + Show.worked(number.value(), number.unit());
        }
        return new NeedWorkings(group, says, worked, of);
    }

    /** Of the number that was worked out of a line's input. */
    public String of(int line, int input) {
        return (of.isEmpty() ? "" : of + STEP) + line + "." + input;
    }

    public boolean isInner() {
        return !of.isEmpty();
    }

    /** What it is worked out for. */
    public String up() {
        return of.contains(STEP) ? of.substring(0, of.lastIndexOf(STEP)) : "";
    }
}
