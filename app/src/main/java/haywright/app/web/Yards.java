package haywright.app.web;

import haywright.outlook.Yard;
import haywright.ranch.Ranch;
import java.time.LocalDate;
import java.util.ArrayDeque;
import java.util.Deque;

/**
 * The yards of the ranches looked at last: what was worked out for one page of a revision and day serves the next. A
 * changed ranch is another ranch, and gets a yard of its own.
 */
final class Yards {
    private static final int MOST = 6;

    private final Deque<Yard> last = new ArrayDeque<>();

    synchronized Yard of(Ranch ranch, LocalDate day) {
        var known = last.stream()
                .filter(yard -> isSame(yard.ranch(), ranch) && yard.day().equals(day))
                .findFirst();
        var yard = known.orElseGet(() -> new Yard(ranch, day));
        last.remove(yard);
        last.addFirst(yard);
        if (last.size() > MOST) {
            last.removeLast();
        }
        return yard;
    }

    /** The same revision is the same object; comparing all of two ranches would cost more than it saves. */
    @SuppressWarnings("ReferenceEquality")
    private static boolean isSame(Ranch one, Ranch other) {
        return one == other;
    }
}
