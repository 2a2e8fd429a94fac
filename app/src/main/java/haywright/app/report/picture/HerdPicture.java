package haywright.app.report.picture;

import haywright.app.words.Show;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.time.temporal.TemporalAdjusters;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.IntToDoubleFunction;
import java.util.stream.IntStream;

/**
 * What one head needs from today to turnout, as one line through a band of winters, with the days that matter. The line is
 * the usual cold; over the band lies one winter in ten, under it another; the white under all is what a mild day takes.
 *
 * @param unit in words, of pounds: {@code lb of Meadow hay}
 * @param weeks at least two
 * @param marks in their order; those outside of the weeks are left out
 */
public record HerdPicture(String unit, List<Week> weeks, List<Mark> marks) {
    private static final double LEFT = 6;
    private static final double RIGHT = 334;
    private static final double ROW = 17;
    private static final double FIRST_ROW = 14;
    private static final double DEEP = 180;
    private static final double LETTER_WIDE = 6.3;
    private static final double LEAST_SAID = 0.1;
    private static final double HIGHEST_SHARE = 0.86;

    /**
     * @param begins its first day
     * @param mild on mild days
     * @param low one winter in ten stays under it; empty where no winters are known
     * @param high one winter in ten is over it
     */
    public record Week(LocalDate begins, double mild, double usual, Optional<Double> low, Optional<Double> high) {}

    public record Mark(LocalDate on, String words) {}

    public HerdPicture {
        var first = weeks.get(0).begins();
        var last = weeks.get(weeks.size() - 1).begins().plusDays(6);
        marks = marks.stream()
                .filter(mark -> !mark.on().isBefore(first) && !mark.on().isAfter(last))
                .toList();
    }

    private boolean isBanded() {
        return weeks.stream().anyMatch(week -> week.high().isPresent());
    }

    private int hardest() {
        return IntStream.range(0, weeks.size())
                .reduce(0, (a, b) -> weeks.get(b).usual() > weeks.get(a).usual() + 1e-9 ? b : a);
    }

    private static String amount(double value) {
        return Show.number(value, 0);
    }

    private double over(int week) {
        return weeks.get(week).high().orElse(weeks.get(week).usual())
                - weeks.get(week).usual();
    }

    /** {@code 24 lb of Meadow hay per head per day now, 33 at the most in the week of Apr 12. In the week of Jan 5 …}. */
    public String words() {
        var most = weeks.get(hardest());
        var says = "%s %s per head per day now".formatted(amount(weeks.get(0).usual()), unit);
        if (hardest() > 0) {
            says += ", %s at most, in the week of %s".formatted(amount(most.usual()), Show.day(most.begins()));
        }
        int widest = IntStream.range(0, weeks.size()).reduce(0, (x, y) -> over(y) > over(x) + 1e-9 ? y : x);
        return over(widest) < LEAST_SAID
                ? says
                : says
                        + ". In the week of %s, 2 winters in 20 take over %s more"
                                .formatted(Show.day(weeks.get(widest).begins()), Show.number(over(widest), 1) + " lb");
    }

    public String svg() {
        var labels = rows();
        int rows = labels.stream().mapToInt(Placed::row).max().orElse(-1) + 1;
        double top = FIRST_ROW + rows * ROW;
        double bottom = top + DEEP;
        double most = weeks.stream()
                        .mapToDouble(week -> Math.max(week.usual(), week.high().orElse(0.0)))
                        .max()
                        .orElseThrow()
                / HIGHEST_SHARE;
        var drawn = new ArrayList<String>();
        IntToDoubleFunction mild = week -> y(weeks.get(week).mild(), most, bottom);
        IntToDoubleFunction usual = week -> y(weeks.get(week).usual(), most, bottom);
        drawn.add(Svg.area(between(week -> bottom, mild), "#fff"));
        if (isBanded()) {
            drawn.add(Svg.area(
                    between(
                            week -> y(
                                    weeks.get(week).low().orElse(weeks.get(week).usual()), most, bottom),
                            week -> y(
                                    weeks.get(week)
                                            .high()
                                            .orElse(weeks.get(week).usual()),
                                    most,
                                    bottom)),
                    "url(#herd-due)"));
        } else {
            drawn.add(Svg.area(between(mild, usual), "url(#herd-dots)"));
        }
        for (int week = 1; week < weeks.size(); week++) {
            drawn.add(Svg.thick(x(week - 1), usual.applyAsDouble(week - 1), x(week), usual.applyAsDouble(week)));
        }
        for (var placed : labels) {
            double y = FIRST_ROW + placed.row() * ROW;
            drawn.add(Svg.line(placed.x(), y + 4, placed.x(), bottom));
            drawn.add(Svg.text(placed.text(), y, placed.anchor(), false, placed.words()));
        }
        drawn.addAll(figures(usual, mild, bottom));
        drawn.addAll(months(bottom));
        return Svg.picture(
                "herd", 340, (int) (bottom + 26), "The need from today to turnout", words() + ". " + marked(), drawn);
    }

    private String marked() {
        return String.join(
                ", ",
                marks.stream().map(m -> m.words() + " " + Show.day(m.on())).toList());
    }

    private List<String> figures(IntToDoubleFunction usual, IntToDoubleFunction mild, double bottom) {
        int last = weeks.size() - 1;
        var figures = new ArrayList<String>();
        figures.add(Svg.text(LEFT + 8, bottom - 30, "start", false, "on a mild day"));
        if (isBanded()) {
            figures.add(Svg.text(LEFT + 8, bottom - 12, "start", false, "hatched: 16 winters in 20"));
        } else if (weeks.stream().anyMatch(week -> week.usual() > week.mild() + LEAST_SAID)) {
            figures.add(Svg.text(LEFT + 8, bottom - 12, "start", false, "dotted: the usual cold"));
        }
        figures.add(Svg.text(
                LEFT,
                over(usual, LEFT, LEFT + 60),
                "start",
                true,
                amount(weeks.get(0).usual()) + " lb now"));
        figures.add(Svg.text(
                RIGHT,
                over(usual, RIGHT - 40, RIGHT),
                "end",
                true,
                amount(weeks.get(last).usual()) + " lb"));
        double x = x(hardest());
        if (x > LEFT + 90 && x < RIGHT - 60) {
            figures.add(Svg.text(
                    x,
                    over(usual, x - 16, x + 16),
                    "middle",
                    true,
                    amount(weeks.get(hardest()).usual()) + " lb"));
        }
        return figures;
    }

    /** Clear of the line all along the words. */
    private double over(IntToDoubleFunction usual, double from, double to) {
        return IntStream.range(0, weeks.size())
                        .filter(week -> x(week) >= from - 8 && x(week) <= to + 8)
                        .mapToDouble(usual)
                        .min()
                        .orElse(usual.applyAsDouble(0))
                - 8;
    }

    /** Where a label stands: text beside its line, in the first row that has room. */
    private record Placed(double x, double text, String anchor, int row, String words, double from, double to) {}

    private List<Placed> rows() {
        var placed = new ArrayList<Placed>();
        for (var mark : marks) {
            var words = mark.words() + " " + Show.day(mark.on());
            double x = x(mark.on());
            double wide = words.length() * LETTER_WIDE;
            boolean fits = x + wide <= RIGHT;
            double from = fits ? x : x - wide;
            int row = 0;
            while (isTaken(placed, row, from, from + wide)) {
                row++;
            }
            placed.add(new Placed(x, fits ? x + 3 : x - 3, fits ? "start" : "end", row, words, from, from + wide));
        }
        return placed;
    }

    private static boolean isTaken(List<Placed> placed, int row, double from, double to) {
        return placed.stream().anyMatch(p -> p.row() == row && p.from() < to + 6 && from < p.to() + 6);
    }

    private List<String> months(double bottom) {
        var marks = new ArrayList<String>();
        marks.add(Svg.line(LEFT, bottom, RIGHT, bottom));
        double written = Double.NEGATIVE_INFINITY;
        var first = weeks.get(0).begins();
        var last = weeks.get(weeks.size() - 1).begins();
        for (var month = first.getDayOfMonth() == 1 ? first : first.with(TemporalAdjusters.firstDayOfNextMonth());
                !month.isAfter(last);
                month = month.plusMonths(1)) {
            double x = x(month);
            marks.add(Svg.line(x, bottom, x, bottom + 5));
            if (x - written >= 44 && x <= RIGHT - 36) {
                marks.add(Svg.text(x, bottom + 19, "start", false, Show.day(month)));
                written = x;
            }
        }
        return marks;
    }

    private String between(IntToDoubleFunction under, IntToDoubleFunction over) {
        var points = new ArrayList<String>();
        for (int week = 0; week < weeks.size(); week++) {
            points.add(Svg.point(x(week), over.applyAsDouble(week)));
        }
        for (int week = weeks.size() - 1; week >= 0; week--) {
            points.add(Svg.point(x(week), under.applyAsDouble(week)));
        }
        return String.join(" ", points);
    }

    private double x(int week) {
        return x(weeks.get(week).begins());
    }

    private double x(LocalDate date) {
        var first = weeks.get(0).begins();
        double days = ChronoUnit.DAYS.between(first, weeks.get(weeks.size() - 1).begins());
        return Math.min(RIGHT, LEFT + (RIGHT - LEFT) * ChronoUnit.DAYS.between(first, date) / days);
    }

    /** From zero: a picture that cuts the foot off makes a small rise look large. */
    private static double y(double value, double most, double bottom) {
        return bottom - DEEP * value / most;
    }
}
