package haywright.outlook;

import haywright.cattle.herd.Group;
import haywright.ranch.Ranch;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * A day on which something changes for the cattle of a ranch.
 *
 * @param who the groups it concerns; empty for the whole ranch
 * @param days from the day the ranch is looked at
 */
public record NextDate(LocalDate on, What what, List<String> who, long days) {
    /** What begins that day. */
    public enum What {
        CALVING,
        WEANING,
        TURNOUT
    }

    public NextDate {
        who = List.copyOf(who);
    }

    public static Optional<NextDate> of(Ranch ranch, LocalDate today) {
        return all(ranch, today).stream().findFirst();
    }

    /** Everything that is still to come, soonest first; groups for which it is the same day stand together. */
    public static List<NextDate> all(Ranch ranch, LocalDate today) {
        var dates = new ArrayList<NextDate>();
        for (var group : ranch.groups().values()) {
            add(dates, What.CALVING, group, firstCalving(group), today);
            add(dates, What.WEANING, group, group.weaning(), today);
            add(dates, What.TURNOUT, group, group.turnout(), today);
        }
        var turnout = ranch.settings().turnout();
        boolean said = dates.stream().anyMatch(d -> d.what == What.TURNOUT && d.on.equals(turnout));
        if (turnout != null && !turnout.isBefore(today) && !said) {
            dates.add(new NextDate(turnout, What.TURNOUT, List.of(), ChronoUnit.DAYS.between(today, turnout)));
        }
        dates.sort(Comparator.comparing(NextDate::on));
        return List.copyOf(dates);
    }

    private static @Nullable LocalDate firstCalving(Group group) {
        return group.calving().stream()
                .map(Group.CalvingWeek::begins)
                .min(Comparator.naturalOrder())
                .orElse(null);
    }

    private static void add(List<NextDate> dates, What what, Group group, @Nullable LocalDate on, LocalDate today) {
        if (on == null || on.isBefore(today)) {
            return;
        }
        for (int i = 0; i < dates.size(); i++) {
            var same = dates.get(i);
            if (same.on.equals(on) && same.what == what) {
                var who = new ArrayList<>(same.who);
                who.add(group.name());
                dates.set(i, new NextDate(on, what, who, same.days));
                return;
            }
        }
        dates.add(new NextDate(on, what, List.of(group.name()), ChronoUnit.DAYS.between(today, on)));
    }
}
