package haywright.cattle.herd;

import haywright.cattle.Pregnancy;
import haywright.cattle.herd.Group.CalvingWeek;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** A day on which the feeding of a group changes, or should be looked at again. */
public record KeyDate(What what, LocalDate on) {
    private static final int MIDDLE_OF_WEEK = 3;
    private static final int TWO_WEEKS = 14;
    private static final int A_YEAR = 365;

    /** Why the day matters. */
    public enum What {
        WEANING("calves weaned"),
        /** Of the mean of the group. */
        MID_GESTATION("halfway to calving"),
        /** Before the first week in which any is due. */
        BEFORE_CALVING("two weeks to calving"),
        CALVING("calving starts"),
        /** So that the first calve again on the same day of next year. */
        BREEDING("bulls in"),
        TURNOUT("turnout");

        private final String words;

        What(String words) {
            this.words = words;
        }

        public String words() {
            return words;
        }
    }

    /**
     * Of one group, in their order.
     *
     * @param turnout the day it goes to turnout; null where none is planned
     */
    public static List<KeyDate> of(Group group, @Nullable LocalDate turnout) {
        var dates = new ArrayList<KeyDate>();
        if (group.weaning() != null) {
            dates.add(new KeyDate(What.WEANING, group.weaning()));
        }
        var due = group.calving().stream().filter(week -> week.head() > 0).toList();
        if (!due.isEmpty()) {
            var first = due.stream()
                    .map(CalvingWeek::begins)
                    .min(Comparator.naturalOrder())
                    .orElseThrow();
            dates.add(new KeyDate(
                    What.MID_GESTATION, LocalDate.ofEpochDay(Math.round(mean(due) - Pregnancy.GESTATION / 2))));
            dates.add(new KeyDate(What.BEFORE_CALVING, first.minusDays(TWO_WEEKS)));
            dates.add(new KeyDate(What.CALVING, first));
            dates.add(new KeyDate(What.BREEDING, first.plusDays(A_YEAR - (int) Pregnancy.GESTATION)));
        }
        if (turnout != null) {
            dates.add(new KeyDate(What.TURNOUT, turnout));
        }
        dates.sort(Comparator.comparing(KeyDate::on));
        return List.copyOf(dates);
    }

    private static double mean(List<CalvingWeek> due) {
        return due.stream()
                        .mapToDouble(
                                week -> week.head() * (double) (week.begins().toEpochDay() + MIDDLE_OF_WEEK))
                        .sum()
                / due.stream().mapToInt(CalvingWeek::head).sum();
    }
}
