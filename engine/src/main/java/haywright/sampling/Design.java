package haywright.sampling;

import haywright.workings.Problem;
import haywright.workings.Refused;
import java.util.ArrayList;
import java.util.List;

/**
 * How much is taken and analyzed.
 *
 * @param units bales, scoops or plots taken from, n
 * @param cores from all of them, C = Σc
 * @param evenUnits units of as many cores each that would tell as much, m = (Σc)²/Σc²: n where all gave the same, fewer
 *     where one gave more than another and so weighs more in the composite
 * @param analyses laboratory results averaged, k
 */
public record Design(int units, int cores, double evenUnits, int analyses) {
    /** No plan for a ranch needs more; a number above it is a slip of the finger. */
    static final int MOST_UNITS = 1_000_000;

    public Design {
        var problems = new ArrayList<Problem>();
        check(problems, "units", units, MOST_UNITS, "a composite is taken from");
        int increments = units < 1 ? 1 : cores / units;
        check(problems, "increments", increments, 1000, "from each unit comes");
        check(problems, "analyses", analyses, 1000, "the laboratory makes");
        Refused.unlessEmpty(problems);
    }

    public static Design of(int units, int increments, int analyses) {
        return new Design(units, (int) Math.min(Integer.MAX_VALUE, (long) units * increments), units, analyses);
    }

    /** As it came out; 0 stands for a unit that nothing was taken from. */
    static Design of(List<Integer> coresOfEach, int analyses) {
        int units = 0;
        int cores = 0;
        double squares = 0;
        for (int c : coresOfEach) {
            units += c > 0 ? 1 : 0;
            cores += c;
            squares += (double) c * c;
        }
        return new Design(units, cores, (double) cores * cores / squares, analyses);
    }

    /** From each, rounded down where they differ, c. */
    public int increments() {
        return cores / units;
    }

    private static void check(ArrayList<Problem> problems, String field, int value, int most, String words) {
        if (value < 1 || value > most) {
            problems.add(new Problem(
                    field, String.valueOf(value), words + " at least 1 and at most " + most, "Enter how many."));
        }
    }
}
