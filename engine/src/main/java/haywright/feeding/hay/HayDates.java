package haywright.feeding.hay;

import haywright.cattle.AnimalClass;
import haywright.cattle.herd.Group;
import haywright.outlook.HayFacts;
import haywright.outlook.Yard;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;

/**
 * When what is done where hay is short begins to tell, in days after today: a step is figured from the day that it names, so
 * that what is promised is kept.
 *
 * @param sold from when open and late cows are gone
 * @param away from when cows feed elsewhere. @param awayDays for how long
 * @param changedOver from when straw, cake and grain are fed in full
 * @param bredSold from when bred cows are gone
 */
record HayDates(Yard yard, int sold, int away, int awayDays, int changedOver, int bredSold) {
    static HayDates of(Yard yard, @Nullable Integer awayDays) {
        int sold = HayFacts.days("sell_days");
        int straw = HayFacts.days("straw_days");
        var haul = yard.ranch().groups().values().stream()
                .filter(group -> group.animals() == AnimalClass.MATURE_COW)
                .flatMap(group -> group.firstCalving().stream())
                .filter(first -> !first.isBefore(yard.day()))
                .min(LocalDate::compareTo)
                .map(first -> ChronoUnit.DAYS.between(yard.day(), first) - HayFacts.days("haul_before_calving"));
        long bred = Math.min(
                haul.filter(days -> days >= sold).orElse((long) Integer.MAX_VALUE), HayFacts.days("bred_days"));
        return new HayDates(
                yard, sold, straw, awayDays == null ? 0 : awayDays, straw + HayFacts.days("change_over"), (int) bred);
    }

    /** Ends of the pieces of a stretch in which nothing changes. */
    List<Integer> cuts(int from, int to) {
        return IntStream.concat(IntStream.of(sold, away, away + awayDays, changedOver, bredSold), IntStream.of(to))
                .filter(cut -> cut > from && cut <= to)
                .sorted()
                .distinct()
                .boxed()
                .toList();
    }

    /** The day on which something is to be done. */
    LocalDate on(int days) {
        return yard.day().plusDays(days);
    }

    /** From when all that is done tells, in days after today. */
    int allTold(HayPlan plan) {
        return IntStream.of(
                        plan.sold() > 0 ? sold : 0,
                        plan.straw() || plan.limited() ? changedOver : 0,
                        plan.bredSold() > 0 ? bredSold : 0)
                .max()
                .orElse(0);
    }

    /** Straw and grain begin then. */
    int straw() {
        return away;
    }

    /** Whether a group may still be put on limited hay: nobody is in the last month before they calve. */
    boolean mayLimit(Group group) {
        return group.firstCalving()
                .filter(first -> !first.isBefore(yard.day()))
                .map(first -> !on(straw()).isAfter(first.minusDays(HayFacts.days("limit_before_calving"))))
                .orElse(true);
    }
}
