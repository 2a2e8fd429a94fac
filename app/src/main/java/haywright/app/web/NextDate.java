package haywright.app.web;

import haywright.app.words.Show;
import haywright.cattle.Group;
import haywright.ranch.Ranch;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/** The next day on which something changes for the cattle of a ranch: calving, weaning, grass. */
public record NextDate(LocalDate on, String what, long days) {
    public static Optional<NextDate> of(Ranch ranch, LocalDate today) {
        return all(ranch, today).stream().findFirst();
    }

    /** Everything that is still to come, soonest first. */
    public static List<NextDate> all(Ranch ranch, LocalDate today) {
        var dates = new ArrayList<NextDate>();
        add(dates, "grass", ranch.settings().turnout(), today);
        for (var group : ranch.groups().values()) {
            add(dates, group.name() + " begin calving", firstCalving(group), today);
            add(dates, group.name() + " wean their calves", group.weaning(), today);
            add(dates, group.name() + " go to grass", group.turnout(), today);
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

    private static void add(ArrayList<NextDate> dates, String what, @Nullable LocalDate on, LocalDate today) {
        if (on != null && !on.isBefore(today)) {
            dates.add(new NextDate(on, what, ChronoUnit.DAYS.between(today, on)));
        }
    }

    /** {@code Mar 15, 2027, in 110 days: cows begin calving}. */
    public String words() {
        return "%s: %s".formatted(when(), what);
    }

    /** {@code Mar 15, 2027, in 110 days}. */
    public String when() {
        return Show.date(on) + ", " + (days == 0 ? "today" : days == 1 ? "tomorrow" : "in " + Show.count(days, "day"));
    }
}
