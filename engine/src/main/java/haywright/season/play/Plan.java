package haywright.season.play;

import haywright.lp.Basis;
import haywright.season.given.Emergency;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;

/**
 * A plan from one week to grass.
 *
 * @param first what is done this week
 * @param cost dollars from now on: what is bought, what is missed and what is lost of condition, less what is left over
 * @param runsOut the day each lot is used up, by its id; none for those that last
 * @param buys kg as fed to be bought of each feed until grass
 * @param spoils kg as fed of each silage that its cattle do not eat off the open face, and that spoil
 * @param worth dollars that one more kg as fed would save if it lay there now, by feed; none for what has no end
 * @param emergencyKg as fed of hay beyond all that is at hand and for sale
 * @param unmet what no feed meets, emergency hay included; empty where all is met
 * @param missed dollars counted for needs that nothing meets
 * @param stormShort kg of dry matter that the storm reserve is short of at the worst
 * @param stretches who eats what from now to grass
 * @param basis where the solver stood
 */
public record Plan(
        Decision first,
        double cost,
        Map<String, LocalDate> runsOut,
        Map<String, Double> buys,
        Map<String, Double> spoils,
        Map<String, Double> worth,
        double emergencyKg,
        List<Unmet> unmet,
        double missed,
        double stormShort,
        List<Stretch> stretches,
        Basis basis) {
    public Plan {
        stretches = List.copyOf(stretches);
    }

    /**
     * Weeks in which the same is fed.
     *
     * @param to the day after the last
     */
    public record Stretch(LocalDate from, LocalDate to, Decision decision) {}

    /**
     * A need or a limit of good practice that a group misses in a stretch of weeks.
     *
     * @param row its id and its name
     * @param percent of it
     */
    public record Unmet(String group, LocalDate from, LocalDate to, String row, String name, double percent) {}

    /** The same, selling less this week. @param sell kg as fed of each feed */
    Plan selling(double[] sell) {
        return new Plan(
                new Decision(first.eaten(), first.buy(), sell),
                cost,
                runsOut,
                buys,
                spoils,
                worth,
                emergencyKg,
                unmet,
                missed,
                stormShort,
                stretches,
                basis);
    }

    /** Whether nothing has to be found beyond what is at hand and for sale. */
    public boolean lasts() {
        return emergencyKg < Emergency.KG && stormShort < Emergency.KG;
    }
}
