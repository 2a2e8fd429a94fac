package haywright.app.web.herd;

import haywright.app.web.Ask;
import haywright.app.web.Form;
import haywright.app.words.Parse;
import haywright.app.words.Show;
import haywright.cattle.Group.CalvingWeek;
import haywright.quantity.Unit;
import haywright.workings.Refused;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;

/** How many calve in which week: typed week by week, or as one date and a list of counts. */
public final class CalvingForm {
    /** Named by what is wrong with the weeks together. */
    public static final Ask CALVING = Ask.choice(
            "calving",
            "When they calve",
            "How many are due, or calved, in the week that begins on each date. Empty rows do not count; a row without its"
                    + " date is the week after the row before. Cows not bred yet: leave all of it empty.");

    public static final Ask FROM = Ask.date("calvingFrom", "First week begins", "For example Mar 15, 2027.");
    public static final Ask COUNTS = new Ask(
            "calvingCounts",
            "Head in that week and in each week after it",
            Unit.NONE,
            "For example 40, 58, 50, 34. A week without any is 0.",
            28);

    private static final int ROWS = 12;
    private static final int SPARE = 3;
    private static final int MOST = 53;
    private static final int DAYS_A_WEEK = 7;

    private CalvingForm() {}

    public static Ask begins(int row) {
        return new Ask("calving" + row + "begins", "Week of", Unit.NONE, "", 12);
    }

    public static Ask head(int row) {
        return new Ask("calving" + row + "head", "Head, week " + row, Unit.NONE, "", 4);
    }

    /** As many as are filled and a few to spare. */
    public static int rows(Form form) {
        int rows = ROWS;
        for (int row = 1; row <= MOST; row++) {
            if (!form.isEmpty(begins(row)) || !form.isEmpty(head(row))) {
                rows = Math.max(rows, Math.min(MOST, row + SPARE));
            }
        }
        return rows;
    }

    static void know(Map<String, String> known, List<CalvingWeek> weeks) {
        int row = 1;
        for (var week : weeks) {
            known.put(begins(row).name(), Show.date(week.begins()));
            known.put(head(row).name(), String.valueOf(week.head()));
            row++;
        }
    }

    static List<CalvingWeek> read(Form form) {
        form.text(CALVING);
        boolean isListed = !form.isEmpty(FROM) || !form.isEmpty(COUNTS);
        var weeks = weekByWeek(form);
        if (!isListed) {
            return apart(form, weeks);
        }
        var listed = listed(form);
        if (!weeks.isEmpty()) {
            form.refuse(
                    COUNTS.name(),
                    "",
                    "the weeks are filled in twice, in the rows and as a list",
                    "Empty one of the two.");
        }
        return listed;
    }

    private static List<CalvingWeek> weekByWeek(Form form) {
        var weeks = new ArrayList<CalvingWeek>();
        LocalDate before = null;
        for (int row = 1; row <= rows(form); row++) {
            var begins = begins(row);
            var head = head(row);
            if (form.isEmpty(begins) && form.isEmpty(head)) {
                continue;
            }
            int count = form.count(head, "How many calve in that week? If none, empty the date too.");
            var on = form.isEmpty(begins) && before != null
                    ? before.plusDays(DAYS_A_WEEK)
                    : form.date(begins, "On which day does that week begin?");
            weeks.add(new CalvingWeek(on, count));
            before = on;
        }
        return weeks;
    }

    private static List<CalvingWeek> listed(Form form) {
        var from = form.date(FROM, "On which day does the first week begin?");
        var text = form.text(COUNTS, "How many calve in each week, in order?");
        var weeks = new ArrayList<CalvingWeek>();
        for (var one : text.isEmpty() ? new String[0] : text.split("[\\s,;]+")) {
            try {
                int head = Parse.count(COUNTS.name(), one, Unit.NONE);
                weeks.add(new CalvingWeek(from.plusDays((long) DAYS_A_WEEK * weeks.size()), head));
            } catch (Refused refused) {
                refused.problems().forEach(p -> form.refuse(p.field(), p.value(), p.rule(), p.fix()));
            }
        }
        weeks.removeIf(week -> week.head() == 0);
        return weeks;
    }

    /** In order, and no week twice. */
    private static List<CalvingWeek> apart(Form form, List<CalvingWeek> weeks) {
        if (form.hasProblems()) {
            return weeks; // some of the dates are stand-ins
        }
        var sorted =
                weeks.stream().sorted(Comparator.comparing(CalvingWeek::begins)).toList();
        CalvingWeek before = null;
        for (var week : sorted) {
            if (before != null && ChronoUnit.DAYS.between(before.begins(), week.begins()) < DAYS_A_WEEK) {
                form.refuse(
                        CALVING.name(),
                        Show.date(week.begins()),
                        "this week begins inside the one of " + Show.date(before.begins()),
                        "Give each week seven days, or put the two together.");
            }
            before = week;
        }
        return sorted;
    }
}
