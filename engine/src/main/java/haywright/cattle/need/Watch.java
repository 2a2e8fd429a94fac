package haywright.cattle.need;

import haywright.cattle.AnimalClass;
import haywright.cattle.LiveWeight;
import haywright.cattle.herd.Group;
import haywright.cattle.intake.FirstWeeks;
import haywright.workings.Source;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** What to watch in a group at a stage, beside the figures of its need. */
public enum Watch {
    /** New calves eat little, and have to learn what a bunk is. */
    FIRST_WEEKS(Source.practice("starting calves on feed")),
    /** Grass tetany, from shortly before calving until they are used to turnout. */
    MAGNESIUM(Source.read("Arkansas Cooperative Extension MP391: 0.20 % magnesium in early lactation")),
    /** Hay has lost it by the end of winter. */
    VITAMIN_A(Source.practice("no vitamin A is counted on in hay of last year; stores last some months")),
    /** Heifers that are too light at first calving. */
    TARGET(Source.practice("heifers under their target breed back late")),
    /** Bulls lose weight at work. */
    MATING(Source.memory("a bull may lose 100 to 200 lb in 60 days of mating"));

    private static final int BEFORE_CALVING = 14;
    private static final int VITAMIN_BEFORE = 60;
    private static final int USED_TO_GRASS = 30;
    private static final int WITHOUT_TURNOUT = 60;

    private final Source source;

    Watch(Source source) {
        this.source = source;
    }

    public Source source() {
        return source;
    }

    /** @param turnout of the group or of the ranch; null where no day is planned */
    public static List<Watch> of(Group group, LocalDate day, @Nullable LocalDate turnout) {
        var watch = new ArrayList<Watch>();
        if (firstWeeks(group, day) != null) {
            watch.add(FIRST_WEEKS);
        }
        var begins = group.calving().stream().map(Group.CalvingWeek::begins).toList();
        if (group.animals().calves() && !begins.isEmpty()) {
            var first = begins.stream().min(Comparator.naturalOrder()).orElseThrow();
            var last = begins.stream().max(Comparator.naturalOrder()).orElseThrow();
            var grass = turnout != null && turnout.isAfter(first.minusDays(VITAMIN_BEFORE))
                    ? turnout
                    : last.plusDays(WITHOUT_TURNOUT);
            if (within(day, first.minusDays(VITAMIN_BEFORE), grass)) {
                watch.add(VITAMIN_A);
            }
            if (within(day, first.minusDays(BEFORE_CALVING), grass.plusDays(USED_TO_GRASS))) {
                watch.add(MAGNESIUM);
            }
        }
        if (group.animals() == AnimalClass.BRED_HEIFER || group.animals() == AnimalClass.GROWING) {
            watch.add(TARGET);
        }
        if (group.animals() == AnimalClass.BULL) {
            watch.add(MATING);
        }
        return List.copyOf(watch);
    }

    /** Null where they are not in their first weeks. */
    public static @Nullable FirstWeeks firstWeeks(Group group, LocalDate day) {
        var weaned = group.weaning();
        if (group.animals() != AnimalClass.GROWING || weaned == null) {
            return null;
        }
        long days = ChronoUnit.DAYS.between(weaned, day);
        return FirstWeeks.holds(days)
                ? new FirstWeeks(days, new LiveWeight(GroupRequirement.weight(group, day), group.shrunk()).full())
                : null;
    }

    private static boolean within(LocalDate day, LocalDate from, LocalDate to) {
        return !day.isBefore(from) && !day.isAfter(to);
    }
}
