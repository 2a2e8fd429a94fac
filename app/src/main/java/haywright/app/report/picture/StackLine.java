package haywright.app.report.picture;

import haywright.app.words.Measures;
import haywright.app.words.Show;
import haywright.season.kept.KeptBook;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.time.temporal.TemporalAdjusters;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.IntToDoubleFunction;
import java.util.function.ToDoubleFunction;
import java.util.stream.IntStream;

/**
 * Hay and silage on hand from today to grass: one falling line through the winters that were played, the band in which
 * eight of ten of them run, and a thin line for each that fell short. Where the line meets the foot before the grass line,
 * the stacks are empty too soon.
 *
 * @param begins the first day of each week; at least two
 * @param winters tons as fed on hand at the start of each week, one list a winter, as long as {@code begins} or shorter
 * @param grass the day grass is expected
 */
public record StackLine(List<LocalDate> begins, List<Winter> winters, LocalDate grass) {
    private static final double LEFT = 40;
    private static final double RIGHT = 332;
    private static final double TOP = 24;
    private static final double DEEP = 190;
    private static final double FOOT = TOP + DEEP;
    private static final int FEWEST = 3;
    private static final int MOST_THIN = 12;
    private static final double TENTH = 0.1;
    private static final double HALF = 0.5;

    /** @param lasted whether the feed did */
    public record Winter(boolean lasted, List<Double> tons) {}

    public StackLine {
        begins = List.copyOf(begins);
        winters = List.copyOf(winters);
    }

    /** Of a kept book; empty where too few winters were played to draw it. */
    public static Optional<StackLine> of(KeptBook book) {
        return of(book.begins(), book.lines(), book.grass());
    }

    /** The same while it is made. */
    public static Optional<StackLine> of(List<LocalDate> begins, List<KeptBook.Line> lines, LocalDate grass) {
        return begins.size() < 2 || lines.size() < FEWEST
                ? Optional.empty()
                : Optional.of(new StackLine(
                        begins,
                        lines.stream()
                                .map(line -> new Winter(
                                        line.lasted(),
                                        line.kg().stream()
                                                .map(Measures.mass()::fromBase)
                                                .toList()))
                                .toList(),
                        grass));
    }

    /** Of the winters that were still fed in that week; the others have gone to grass. */
    private double tons(int week, double share) {
        var all = winters.stream()
                .filter(winter -> winter.tons().size() > week)
                .map(winter -> winter.tons().get(week))
                .sorted()
                .toList();
        return all.isEmpty() ? 0 : all.get((int) Math.min(all.size() - 1, Math.floor(share * all.size())));
    }

    /**
     * Tons as fed that are left on a day: in the middle of the winters played, and from where to where 8 of 10 lie.
     *
     * @param day in one of the weeks
     */
    public Left left(LocalDate day) {
        int week = 0;
        while (week + 1 < begins.size() && !begins.get(week + 1).isAfter(day)) {
            week++;
        }
        return new Left(tons(week, TENTH), tons(week, HALF), tons(week, 1 - TENTH));
    }

    /** Tons as fed. */
    public record Left(double low, double middle, double high) {}

    private double most() {
        return winters.stream()
                .flatMap(winter -> winter.tons().stream())
                .mapToDouble(tons -> tons)
                .max()
                .orElse(1);
    }

    /** {@code You have 740 tons of hay and silage you can feed now. On Feb 2 half the winters have more than 640 tons left. On May 4 half have more than 210}. */
    public String words() {
        int middle = begins.size() / 2;
        int last = lastToGrass();
        var day = Show.day(begins.get(last));
        boolean isHeld =
                tons(last, HALF) >= 1 && winters.stream().filter(Winter::lasted).count() < HALF * winters.size();
        return Measures.say(
                        "You have %s {tons} of hay and silage you can feed now.%s On %s half the winters have more than %s {tons} left. %s%s")
                .formatted(
                        Show.number(tons(0, HALF), 0),
                        tons(1, HALF) > tons(0, HALF) ? " The line goes up first because the plan buys hay." : "",
                        Show.day(begins.get(middle)),
                        Show.number(tons(middle, HALF), 0),
                        tons(last, HALF) < 1
                                ? "By %s at least half have run out".formatted(day)
                                : "On %s half have more than %s".formatted(day, Show.number(tons(last, HALF), 0)),
                        isHeld
                                ? ". Winters with hay left count as short where hay still to find was fed beside it, or hay held for storms was touched"
                                : "");
    }

    /** The last week that begins before grass: later ones are of winters in which grass comes late. */
    private int lastToGrass() {
        int week = begins.size() - 1;
        while (week > 1 && !begins.get(week).isBefore(grass)) {
            week--;
        }
        return week;
    }

    public String svg() {
        double most = Math.max(1, most());
        double step = step(most);
        var drawn = new ArrayList<String>();
        for (double tons = 0; tons <= most; tons += step) {
            double y = y(tons, most);
            drawn.add(tons == 0 ? Svg.line(LEFT, y, RIGHT, y) : Svg.faint(LEFT, y, RIGHT, y));
            drawn.add(Svg.text(LEFT - 5, y + 4, "end", false, Show.number(tons, 0)));
        }
        drawn.add(Svg.text(4, TOP - 9, "start", false, Measures.tons() + " of hay and silage"));
        drawn.add(Svg.area(
                band(week -> y(tons(week, TENTH), most), week -> y(tons(week, 1 - TENTH), most)), "url(#stack-due)"));
        winters.stream()
                .filter(winter -> !winter.lasted())
                .limit(MOST_THIN)
                .forEach(winter -> drawn.add(thin(winter, most)));
        for (int week = 1; week < begins.size(); week++) {
            drawn.add(Svg.thick(
                    x(begins.get(week - 1)),
                    y(tons(week - 1, HALF), most),
                    x(begins.get(week)),
                    y(tons(week, HALF), most)));
        }
        drawn.add(Svg.line(x(grass), TOP, x(grass), FOOT));
        drawn.add(Svg.text(x(grass) - 3, TOP + 9, "end", true, "turnout " + Show.day(grass)));
        drawn.addAll(months());
        return Svg.picture("stack", 340, (int) FOOT + 26, "Hay and silage on hand to turnout", words(), drawn);
    }

    private String thin(Winter winter, double most) {
        var points = new ArrayList<String>();
        for (int week = 0; week < Math.min(begins.size(), winter.tons().size()); week++) {
            points.add(Svg.point(x(begins.get(week)), y(winter.tons().get(week), most)));
        }
        return "<polyline points=\"%s\" fill=\"none\" stroke=\"currentColor\" stroke-dasharray=\"3 3\" stroke-width=\"1\"/>"
                .formatted(String.join(" ", points));
    }

    private String band(IntToDoubleFunction under, IntToDoubleFunction over) {
        var points = new ArrayList<String>();
        IntStream.range(0, begins.size())
                .forEach(week -> points.add(Svg.point(x(begins.get(week)), over.applyAsDouble(week))));
        for (int week = begins.size() - 1; week >= 0; week--) {
            points.add(Svg.point(x(begins.get(week)), under.applyAsDouble(week)));
        }
        return String.join(" ", points);
    }

    private List<String> months() {
        var marks = new ArrayList<String>();
        for (var month : months(begins, this::x, RIGHT)) {
            marks.add(Svg.line(month.x, FOOT, month.x, FOOT + 5));
            if (month.isWritten) {
                marks.add(Svg.text(month.x, FOOT + 19, "middle", false, Show.day(month.first)));
            }
        }
        return marks;
    }

    /** @param isWritten whether there is room for its date */
    record Month(LocalDate first, double x, boolean isWritten) {}

    /** The months that begin in these weeks. @param x of a day. @param right where the picture ends */
    static List<Month> months(List<LocalDate> begins, ToDoubleFunction<LocalDate> x, double right) {
        var months = new ArrayList<Month>();
        double written = Double.NEGATIVE_INFINITY;
        var last = begins.get(begins.size() - 1);
        for (var first = begins.get(0).with(TemporalAdjusters.firstDayOfNextMonth());
                !first.isAfter(last);
                first = first.plusMonths(1)) {
            double at = x.applyAsDouble(first);
            boolean isWritten = at - written >= 44 && at <= right - 20;
            written = isWritten ? at : written;
            months.add(new Month(first, at, isWritten));
        }
        return months;
    }

    private double x(LocalDate day) {
        var first = begins.get(0);
        double days = ChronoUnit.DAYS.between(first, begins.get(begins.size() - 1));
        return Math.min(RIGHT, LEFT + (RIGHT - LEFT) * ChronoUnit.DAYS.between(first, day) / days);
    }

    private static double y(double tons, double most) {
        return FOOT - DEEP * Math.max(0, tons) / most;
    }

    /** One, two or five times a power of ten, four to eight of them. */
    private static double step(double most) {
        double power = Math.pow(10, Math.floor(Math.log10(most)));
        for (double times : List.of(0.2, 0.5, 1.0)) {
            if (most / (power * times) <= 6) {
                return power * times;
            }
        }
        return power * 2;
    }

    /** Winters as dots, in rows of ten; those that fell short are hatched. */
    public static String dots(int of, int lasted) {
        var drawn = new ArrayList<String>();
        for (int i = 0; i < of; i++) {
            drawn.add(String.format(
                    Locale.ROOT,
                    "<circle cx=\"%d\" cy=\"%d\" r=\"10\" fill=\"%s\" stroke=\"#1d1b17\" stroke-width=\"1.5\"/>",
                    16 + i % 10 * 27,
                    16 + i / 10 * 27,
                    i < lasted ? "#1d1b17" : "url(#dots-due)"));
        }
        return Svg.picture(
                "dots",
                280,
                32 + (of - 1) / 10 * 27,
                "%d winters".formatted(of),
                "Feed lasts in %d of %d; striped: it falls short in %d".formatted(lasted, of, of - lasted),
                drawn);
    }
}
