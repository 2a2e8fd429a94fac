package haywright.feeding.hay;

import haywright.cattle.AnimalClass;
import haywright.cattle.herd.Group;
import haywright.outlook.HayFacts;
import haywright.outlook.Yard;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;

/** How many head of each group are there on a day, in whole head, with what a plan sells and sends away. */
final class HayHeads {
    private final HayDates dates;
    private final HayPlan plan;
    private final Map<UUID, Integer> sold;
    private final Map<UUID, Integer> bred;
    private final Map<UUID, Integer> gone = new LinkedHashMap<>();

    HayHeads(Yard yard, HayDates dates, HayPlan plan) {
        this.dates = dates;
        this.plan = plan;
        sold = from(yard, plan.sold(), Map.of());
        bred = from(yard, plan.bredSold(), sold);
        int away = plan.away();
        for (var group : yard.ranch().groups().values()) {
            int one = HayFacts.isSturdy(group) ? Math.min(away, stay(group)) : 0;
            gone.put(group.id(), one);
            away -= one;
        }
    }

    /** Mature cows, those with the most head that are not due first, as they are sold. */
    static List<Group> cows(Yard yard) {
        return yard.ranch().groups().values().stream()
                .filter(group -> group.animals() == AnimalClass.MATURE_COW)
                .sorted(Comparator.comparingInt(HayHeads::openOrLate)
                        .thenComparingInt(Group::head)
                        .reversed())
                .toList();
    }

    /** Head that are not due, or late after the first of their group; none where nobody said when any is due. */
    static int openOrLate(Group group) {
        if (group.calving().isEmpty()) {
            return 0;
        }
        var late = group.firstCalving().map(first -> first.plusDays(HayFacts.days("late_days")));
        int due = group.calving().stream()
                .filter(week -> late.map(on -> !week.begins().isAfter(on)).orElse(true))
                .mapToInt(Group.CalvingWeek::head)
                .sum();
        return Math.max(0, group.head() - due);
    }

    /** How many of so many are taken out of each group, after others. */
    private static Map<UUID, Integer> from(Yard yard, int wanted, Map<UUID, Integer> before) {
        var taken = new LinkedHashMap<UUID, Integer>();
        int left = wanted;
        for (var group : cows(yard)) {
            int one = Math.min(left, group.head() - before.getOrDefault(group.id(), 0));
            taken.put(group.id(), one);
            left -= one;
        }
        return taken;
    }

    private static int of(Map<UUID, Integer> taken, Group group) {
        return taken.getOrDefault(group.id(), 0);
    }

    /** Head of a group when all is done. */
    int stay(Group group) {
        return group.head() - of(sold, group) - of(bred, group);
    }

    /**
     * Open and late cows are sold of those that are not in milk, bred ones of both alike; those that feed elsewhere are dry.
     *
     * @param day after today
     * @param milkingShare of the group before any is sold
     */
    int there(Group group, int day, double milkingShare, boolean inMilk) {
        int milking = (int) Math.rint(milkingShare * group.head());
        int dry = group.head() - milking;
        if (day >= dates.sold()) {
            int ofDry = Math.min(dry, of(sold, group));
            dry -= ofDry;
            milking -= of(sold, group) - ofDry;
        }
        if (day >= dates.bredSold() && dry + milking > 0) {
            int ofMilking = (int) Math.rint((double) of(bred, group) * milking / (dry + milking));
            milking -= ofMilking;
            dry -= of(bred, group) - ofMilking;
        }
        if (day >= dates.away() && day < dates.away() + plan.awayDays()) {
            int ofDry = Math.min(Math.max(0, dry), of(gone, group));
            dry -= ofDry;
            milking -= of(gone, group) - ofDry;
        }
        return Math.max(0, inMilk ? milking : dry);
    }
}
