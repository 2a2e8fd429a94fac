package haywright.app.report.picture;

import haywright.app.words.Show;
import haywright.cattle.herd.Group.CalvingWeek;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/**
 * How many calve in each week as bars: hatched where they are still due, white where the week is
 * past.
 *
 * @param weeks at least one
 */
public record CalvingPicture(String group, List<CalvingWeek> weeks, LocalDate today) {
    private static final double LEFT = 8;
    private static final double WIDTH = 324;
    private static final double TOP = 30;
    private static final double HEIGHT = 96;
    private static final int DAYS_A_WEEK = 7;
    private static final int LABELS_APART = 62;
    private static final int MOST_COUNTS = 14;

    public CalvingPicture {
        weeks = weeks.stream().sorted(Comparator.comparing(CalvingWeek::begins)).toList();
    }

    /** {@code 240 due from Mar 15 to May 16, most in the week of Mar 22}. */
    public String words() {
        var first = weeks.get(0).begins();
        var end = last().begins().plusDays(DAYS_A_WEEK - 1);
        int head = weeks.stream().mapToInt(CalvingWeek::head).sum();
        var verb = end.isBefore(today) ? "calved" : first.isAfter(today) ? "due" : "due or calved";
        return "%s %s from %s to %s%s"
                .formatted(
                        Show.number(head, 0),
                        verb,
                        first.getYear() == end.getYear() ? Show.day(first) : Show.date(first),
                        Show.date(end),
                        weeks.size() < 2
                                ? ""
                                : ", most in the week of " + Show.day(busiest().begins()));
    }

    private CalvingWeek busiest() {
        return weeks.stream().max(Comparator.comparingInt(CalvingWeek::head)).orElseThrow();
    }

    private CalvingWeek last() {
        return weeks.get(weeks.size() - 1);
    }

    public String svg() {
        var first = weeks.get(0).begins();
        long span = ChronoUnit.DAYS.between(first, last().begins()) + DAYS_A_WEEK;
        double perDay = WIDTH / Math.max(span, 5 * DAYS_A_WEEK);
        double perHead = HEIGHT / Math.max(1, busiest().head());
        var drawn = new ArrayList<String>();
        double labeled = Double.NEGATIVE_INFINITY;
        for (var week : weeks) {
            double x = LEFT + perDay * ChronoUnit.DAYS.between(first, week.begins());
            double tall = perHead * week.head();
            double wide = perDay * DAYS_A_WEEK - 2;
            boolean past = week.begins().plusDays(DAYS_A_WEEK).isBefore(today);
            drawn.add(Svg.box(x, TOP + HEIGHT - tall, wide, tall, past ? "#fff" : "url(#calving-due)"));
            if (weeks.size() <= MOST_COUNTS || week.equals(busiest())) {
                drawn.add(Svg.text(x + wide / 2, TOP + HEIGHT - tall - 5, "middle", true, Show.number(week.head(), 0)));
            }
            if (x - labeled >= LABELS_APART && x <= LEFT + WIDTH - 40) {
                drawn.add(Svg.line(x, TOP + HEIGHT, x, TOP + HEIGHT + 5));
                drawn.add(Svg.text(x, TOP + HEIGHT + 19, "start", false, Show.day(week.begins())));
                labeled = x;
            }
        }
        drawn.add(Svg.line(LEFT, TOP + HEIGHT, LEFT + WIDTH, TOP + HEIGHT));
        drawn.add(today(first, span, perDay));
        return Svg.picture("calving", 340, 152, "Calving weeks: " + group, "Head per week. " + words() + ".", drawn);
    }

    private String today(LocalDate first, long span, double perDay) {
        long day = ChronoUnit.DAYS.between(first, today);
        if (day < 0 || day > span) {
            return "";
        }
        double x = LEFT + perDay * day;
        return Svg.line(x, TOP - 12, x, TOP + HEIGHT)
                + Svg.text(x, TOP - 16, day > span / 2 ? "end" : "start", true, "today");
    }
}
