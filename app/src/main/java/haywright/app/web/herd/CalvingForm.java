package haywright.app.web.herd;

import haywright.app.web.Ask;
import haywright.app.web.Form;
import haywright.app.web.form.Field;
import haywright.app.web.form.Part;
import haywright.app.words.Parse;
import haywright.app.words.Show;
import haywright.cattle.Pregnancy;
import haywright.cattle.herd.Breeding;
import haywright.cattle.herd.Group.CalvingWeek;
import haywright.quantity.Unit;
import haywright.workings.Refused;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/**
 * How many calve in which week: typed week by week, as one date and a list of counts, or from breeding dates and the
 * pregnancy check.
 */
public final class CalvingForm {
    /** Named by what is wrong with the weeks together. */
    public static final Ask CALVING = Ask.choice(
            "calving",
            "When they calve",
            "Head due, or calved, in the week starting on each date. Empty rows don’t count; a row without a"
                    + " date follows the row before. Not bred yet: leave it all empty.");

    public static final Ask FROM = Ask.date("calvingFrom", "First week starts", "Such as Mar 15, 2027.");
    public static final Ask COUNTS = new Ask(
            "calvingCounts",
            "Head in that week and each after",
            Unit.NONE,
            "Such as 40, 58, 50, 34. Enter 0 for a week with none.",
            28);

    public static final Ask BULLS_IN = Ask.date("bullsIn", "Bulls went in on", "Or the AI date.");
    public static final Ask BULLS_OUT = Ask.date("bullsOut", "Bulls came out on", "For one AI date: the same day.");
    public static final Ask IN_CALF = Ask.number("inCalf", "Head bred at preg check", "Without the opens.");
    public static final Ask BY_CYCLE = new Ask(
            "byCycle",
            "Of these, by 21-day cycle",
            Unit.NONE,
            "If the check told how far along. Empty: 6 in 10 of those still open settle in each cycle"
                    + " (common practice).",
            28);

    /** The two boxes that most groups need. */
    static final Field FIRST =
            Field.comingDate("calvingFirst", "First calves due", "Such as Mar 15. Not bred, or open: leave empty.");

    /** Bulls in for three cycles of 21 days: common practice, no source. */
    static final int USUAL_WEEKS = 9;

    static final Field WEEKS = Field.amount(
            "calvingWeeks",
            "Weeks of calving",
            Unit.WEEK,
            "Empty: 9, bulls in for 63 days. Assumes 6 in 10 settle each cycle (common practice).");

    /** Of the two dates; those found open are fed with the rest. */
    public static final Ask IN_CALF_NOW =
            Ask.number("inCalfNow", "Bred head, if not all", "For the due date and weeks above.");

    private static final Ask HEAD = Ask.number("head", "Head", "");

    /** A calving without its year began at most so long ago, or is to come. */
    private static final int MONTHS_BACK = 4;

    private static final int ROWS = 12;
    private static final int SPARE = 3;
    private static final int LONGEST = 30;
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

    /** The component {@code calving}, asked by its first day and its weeks; the grid is shown apart. */
    record Dates() implements Part {
        @Override
        public String component() {
            return "calving";
        }

        @Override
        public List<Field> fields() {
            return List.of(FIRST, WEEKS);
        }

        @Override
        public Object read(Form form, Class<?> type, LocalDate today) {
            return CalvingForm.read(form, today);
        }

        @Override
        public void know(Map<String, String> known, @Nullable Object value) {
            var weeks = new ArrayList<CalvingWeek>();
            ((List<?>) Objects.requireNonNullElse(value, List.of())).forEach(week -> weeks.add((CalvingWeek) week));
            CalvingForm.know(known, weeks);
        }
    }

    /** As many weeks as the season has, by what most herds do. */
    private static List<CalvingWeek> season(LocalDate first, int weeks, int head) {
        var in = first.minusDays((long) Pregnancy.GESTATION);
        return new Breeding(in, in.plusDays((long) DAYS_A_WEEK * weeks - 1), head, List.of()).calving();
    }

    /** The short way where it gives the same weeks, otherwise week by week. */
    private static void know(Map<String, String> known, List<CalvingWeek> weeks) {
        if (!weeks.isEmpty()) {
            var first = weeks.get(0).begins();
            int many = (int) ChronoUnit.WEEKS.between(
                            first, weeks.get(weeks.size() - 1).begins())
                    + 1;
            int head = weeks.stream().mapToInt(CalvingWeek::head).sum();
            if (many <= LONGEST && head > 0 && season(first, many, head).equals(weeks)) {
                known.put(FIRST.name(), Show.date(first));
                known.put(WEEKS.name(), Integer.toString(many));
                known.put(IN_CALF_NOW.name(), Integer.toString(head));
                return;
            }
        }
        int row = 1;
        for (var week : weeks) {
            known.put(begins(row).name(), Show.date(week.begins()));
            known.put(head(row).name(), String.valueOf(week.head()));
            row++;
        }
    }

    private static List<CalvingWeek> read(Form form, LocalDate today) {
        form.text(CALVING);
        var weeks = weekByWeek(form, today);
        boolean isShort = isShort(form);
        boolean isListed = isListed(form);
        boolean isBred = isBred(form);
        if ((weeks.isEmpty() ? 0 : 1) + (isShort ? 1 : 0) + (isListed ? 1 : 0) + (isBred ? 1 : 0) > 1) {
            form.refuse(
                    isBred ? IN_CALF.name() : isListed ? COUNTS.name() : FIRST.name(),
                    "",
                    "calving is entered twice: by first day, week by week, as a list or from breeding",
                    "Keep one and clear the rest.");
        }
        return isShort
                ? season(form, today)
                : isBred ? bred(form, today) : isListed ? listed(form, today) : apart(form, weeks);
    }

    private static boolean isShort(Form form) {
        return !form.isEmpty(FIRST.ask()) || !form.isEmpty(WEEKS.ask());
    }

    private static List<CalvingWeek> season(Form form, LocalDate today) {
        var first = form.date(FIRST.ask(), "Enter the day the first calves are due.", today.minusMonths(MONTHS_BACK));
        var typed = form.maybeCount(WEEKS.ask());
        int weeks = typed == null ? USUAL_WEEKS : typed;
        var head = form.isEmpty(IN_CALF_NOW)
                ? form.count(HEAD, "Enter how many are fed in this group.")
                : form.count(IN_CALF_NOW, "");
        if (weeks < 1 || weeks > LONGEST) {
            form.refuse(
                    WEEKS.name(),
                    form.value(WEEKS.ask()),
                    "calving takes 1 to %d weeks".formatted(LONGEST),
                    "A longer season goes week by week, below.");
        }
        // what is wrong with, or asked about, another box leaves these dates as they were typed
        boolean stands = Stream.of(FIRST.ask(), WEEKS.ask(), HEAD, IN_CALF_NOW)
                .allMatch(ask -> form.problem(ask).isEmpty());
        return stands && head >= 1 ? season(first, weeks, head) : List.of();
    }

    /** Whether the boxes behind the two dates are in use. */
    public static boolean isWeekByWeek(Form form) {
        return isListed(form)
                || isBred(form)
                || !form.isEmpty(head(1))
                || !form.problem(CALVING).isEmpty();
    }

    public static boolean isListed(Form form) {
        return !form.isEmpty(FROM) || !form.isEmpty(COUNTS);
    }

    public static boolean isBred(Form form) {
        return Stream.of(BULLS_IN, BULLS_OUT, IN_CALF, BY_CYCLE).anyMatch(ask -> !form.isEmpty(ask));
    }

    private static List<CalvingWeek> bred(Form form, LocalDate today) {
        var in = form.past(BULLS_IN, "Enter the day the bulls went in.", today);
        var out = form.date(BULLS_OUT, "Enter the day they came out.", in);
        int inCalf = form.count(IN_CALF, "Enter how many were bred. A good guess will do.");
        var byCycle = counts(form, BY_CYCLE);
        if (Stream.of(BULLS_IN, BULLS_OUT, IN_CALF, BY_CYCLE)
                .anyMatch(ask -> !form.problem(ask).isEmpty())) {
            return List.of(); // some of these are stand-ins
        }
        try {
            return new Breeding(in, out, inCalf, byCycle).calving();
        } catch (Refused refused) {
            for (var problem : refused.problems()) {
                form.refuse(
                        problem.field().equals("to") ? BULLS_OUT.name() : problem.field(),
                        problem.value(),
                        problem.rule(),
                        problem.fix());
            }
            return List.of();
        }
    }

    private static List<CalvingWeek> weekByWeek(Form form, LocalDate today) {
        var weeks = new ArrayList<CalvingWeek>();
        LocalDate before = null;
        for (int row = 1; row <= rows(form); row++) {
            var begins = begins(row);
            var head = head(row);
            if (form.isEmpty(begins) && form.isEmpty(head)) {
                continue;
            }
            int count = form.count(head, "Enter how many calve that week. If none, clear the date too.");
            var on = form.isEmpty(begins) && before != null
                    ? before.plusDays(DAYS_A_WEEK)
                    : form.date(
                            begins,
                            "Enter the day that week starts.",
                            before == null ? today.minusMonths(MONTHS_BACK) : before);
            weeks.add(new CalvingWeek(on, count));
            before = on;
        }
        return weeks;
    }

    private static List<CalvingWeek> listed(Form form, LocalDate today) {
        var from = form.date(FROM, "Enter the day the first week starts.", today.minusMonths(MONTHS_BACK));
        form.text(COUNTS, "Enter how many calve each week, in order.");
        var weeks = new ArrayList<CalvingWeek>();
        for (int head : counts(form, COUNTS)) {
            weeks.add(new CalvingWeek(from.plusDays((long) DAYS_A_WEEK * weeks.size()), head));
        }
        weeks.removeIf(week -> week.head() == 0);
        return weeks;
    }

    private static List<Integer> counts(Form form, Ask ask) {
        var counts = new ArrayList<Integer>();
        var text = form.text(ask);
        for (var one : text.isEmpty() ? new String[0] : text.split("[\\s,;]+")) {
            try {
                counts.add(Parse.count(ask.name(), one, Unit.NONE));
            } catch (Refused refused) {
                refused.problems().forEach(p -> form.refuse(p.field(), p.value(), p.rule(), p.fix()));
            }
        }
        return counts;
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
                        "this week starts inside the one of " + Show.date(before.begins()),
                        "Give each week seven days, or combine the two.");
            }
            before = week;
        }
        return sorted;
    }
}
