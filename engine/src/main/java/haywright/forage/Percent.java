package haywright.forage;

import haywright.workings.Problem;
import haywright.workings.Refused;
import java.util.ArrayList;
import java.util.List;

/** The rule of every share of dry matter: a number from 0 to 100. */
public final class Percent {
    private Percent() {}

    public static void refuseOutside(String field, String name, double value) {
        var problems = new ArrayList<Problem>();
        check(problems, field, name, value);
        Refused.unlessEmpty(problems);
    }

    public static void check(List<Problem> problems, String field, String name, double value) {
        if (!(value >= 0 && value <= 100)) { // also refuses NaN
            problems.add(new Problem(
                    field,
                    "%s %s %%".formatted(name, Say.number(value)),
                    "a share of dry matter is a number from 0 to 100 %",
                    value > 100 ? "Is it in g/kg or ppm?" : "What does the report say?"));
        }
    }
}
