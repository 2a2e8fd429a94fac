package haywright.sampling;

import haywright.workings.Problem;
import haywright.workings.Refused;
import java.util.ArrayList;

/**
 * How much is taken and analysed.
 *
 * @param units bales, scoops or plots taken from, n
 * @param increments cores from each, c
 * @param splits parts of the composite that are analysed, s
 * @param analyses laboratory results averaged, k
 */
public record Design(int units, int increments, int splits, int analyses) {
    /** No plan for a ranch needs more; a number above it is a slip of the finger. */
    static final int MOST_UNITS = 1_000_000;

    public Design {
        var problems = new ArrayList<Problem>();
        check(problems, "units", units, MOST_UNITS, "a composite is taken from");
        check(problems, "increments", increments, 1000, "from each unit comes");
        check(problems, "splits", splits, 1000, "the composite is analysed in");
        check(problems, "analyses", analyses, 1000, "the laboratory makes");
        Refused.unlessEmpty(problems);
    }

    public static Design of(int units, int increments, int analyses) {
        return new Design(units, increments, 1, analyses);
    }

    public int cores() {
        return units * increments;
    }

    private static void check(ArrayList<Problem> problems, String field, int value, int most, String words) {
        if (value < 1 || value > most) {
            problems.add(new Problem(
                    field, String.valueOf(value), words + " at least 1 and at most " + most, "How many are meant?"));
        }
    }
}
