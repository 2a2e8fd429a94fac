package haywright.feeding.hay;

import haywright.cattle.AnimalClass;
import haywright.cattle.herd.Group;
import haywright.diet.LimitFeeding;
import haywright.outlook.HayFacts;
import haywright.outlook.Yard;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.TreeSet;
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
    /** One ration stands so many days at most: needs grow with the calf and the cold. */
    private static final int LONGEST = 45;

    private static final int DAYS_A_WEEK = 7;

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

    /** Ends of the stretches of a group, in days after today until grass: in each it is fed the same every day. */
    List<Integer> ends(Group group) {
        int days = yard.daysToGrass().orElseThrow();
        var marks = new TreeSet<Integer>();
        if (group.animals() == AnimalClass.MATURE_COW) {
            marks.add(bredSold);
            if (HayHeads.openOrLate(group) > 0 || HayFacts.isSturdy(group)) {
                marks.add(sold);
            }
        }
        if (HayFacts.isSturdy(group)) {
            marks.add(changedOver);
            if (awayDays > 0) {
                marks.add(away);
                marks.add(away + awayDays);
            }
        }
        group.firstCalving().map(this::after).ifPresent(first -> {
            marks.add(first);
        });
        group.calving().stream().mapToInt(week -> after(week.begins()) + DAYS_A_WEEK).max().stream()
                .filter(last -> last < days - DAYS_A_WEEK)
                .forEach(marks::add);
        marks.add(days);
        var ends = new ArrayList<Integer>();
        int from = 0;
        for (int to : marks.subSet(1, days + 1)) {
            int pieces = Math.max(1, (int) Math.ceil((double) (to - from) / LONGEST));
            for (int piece = 1; piece <= pieces; piece++) {
                ends.add(from + (to - from) * piece / pieces);
            }
            from = to;
        }
        return List.copyOf(ends);
    }

    private int after(LocalDate on) {
        return (int) ChronoUnit.DAYS.between(yard.day(), on);
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

    /** Whether hay of dry cows may be limited until they calve: it is not begun close to the first calf, or after it. */
    boolean mayLimit(Group group) {
        return group.calving().stream().allMatch(week -> week.begins().isBefore(yard.day()))
                || group.firstCalving()
                        .map(this::after)
                        .filter(first -> straw() <= first - LimitFeeding.LAST_DAYS)
                        .isPresent();
    }
}
