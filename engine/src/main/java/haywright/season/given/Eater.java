package haywright.season.given;

import haywright.cattle.herd.Group;
import haywright.diet.WayOfFeeding;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * A group through one winter.
 *
 * @param stages of each week
 * @param body empty for cattle that gain: their shortfall is gain that is not made
 * @param days from the first day to the one on which it is said to go to grass
 * @param away weeks from the first day in which it feeds elsewhere
 * @param way how it is fed
 * @param firstWeek kg of dry matter of each feed of the season that one head is to eat a day in the first week; empty where
 *     that is for a plan to say
 */
public record Eater(
        Group group,
        int head,
        List<Stage> stages,
        Optional<Body> body,
        int days,
        int away,
        WayOfFeeding way,
        Map<Integer, Double> firstWeek) {
    public Eater {
        stages = List.copyOf(stages);
        firstWeek = Map.copyOf(firstWeek);
    }

    public boolean isFreeChoice() {
        return way == WayOfFeeding.FREE_CHOICE;
    }

    /** Days of a week on which it is fed, grass coming so many days late. */
    public int fed(int week, double late) {
        if (week < away) {
            return 0;
        }
        double left = days + late - (double) Season.DAYS_A_WEEK * week;
        return (int) Math.max(0, Math.min(Season.DAYS_A_WEEK, Math.rint(left)));
    }
}
