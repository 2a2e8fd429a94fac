package haywright.app.report.picture;

import haywright.app.words.Show;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.time.temporal.TemporalAdjusters;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;

/**
 * What one head needs of one thing in the weeks to come, as a stack of its parts from today to turnout.
 *
 * @param id names the picture on its page
 * @param about what is needed, to begin a sentence with: {@code Energy (NEm)}
 * @param unit in words: {@code Mcal}
 * @param decimals of the figures written on it
 * @param dates of the values, at least two
 * @param bands from the bottom up; those that stay at nothing are left out
 */
public record NeedPicture(String id, String about, String unit, int decimals, List<LocalDate> dates, List<Band> bands) {
    private static final double LEFT = 6;
    private static final double RIGHT = 334;
    private static final double TOP = 44;
    private static final double BOTTOM = 184;
    private static final double LABEL_HIGH = 13;
    private static final double LABEL_WIDE = 84;
    private static final double SMALL = 1e-9;

    /** @param says what the part is for: {@code for the unborn calf}; empty where it is the whole */
    public record Band(String says, List<Double> values) {}

    public NeedPicture {
        bands = bands.stream()
                .filter(band -> band.values().stream().anyMatch(v -> v > SMALL))
                .toList();
    }

    private double total(int week) {
        return bands.stream().mapToDouble(band -> band.values().get(week)).sum();
    }

    private int highest() {
        int high = 0;
        for (int week = 1; week < dates.size(); week++) {
            high = total(week) > total(high) + SMALL ? week : high;
        }
        return high;
    }

    private String said(int week) {
        return Show.number(total(week), decimals) + " " + unit;
    }

    /** {@code Energy (NEm): 9.9 Mcal a day now, 15.2 Mcal in the week of May 5}. */
    public String words() {
        int last = dates.size() - 1;
        int high = highest();
        var middle = high == 0 || high == last
                ? ""
                : ", %s at most, in the week of %s".formatted(said(high), Show.day(dates.get(high)));
        return "%s: %s per day now%s, %s in the week of %s"
                .formatted(about, said(0), middle, said(last), Show.day(dates.get(last)));
    }

    public String svg() {
        double top =
                IntStream.range(0, dates.size()).mapToDouble(this::total).max().orElseThrow();
        var under = new double[dates.size()];
        var drawn = new ArrayList<String>();
        var labels = new ArrayList<String>();
        for (int i = 0; i < bands.size(); i++) {
            var band = bands.get(i);
            var points = new ArrayList<String>();
            for (int week = dates.size() - 1; week >= 0; week--) {
                points.add(Svg.point(x(week), y(under[week], top)));
            }
            int thickest = 0;
            for (int week = 0; week < dates.size(); week++) {
                under[week] += band.values().get(week);
                points.add(Svg.point(x(week), y(under[week], top)));
                thickest = band.values().get(week) > band.values().get(thickest) ? week : thickest;
            }
            drawn.add(Svg.area(String.join(" ", points), fill(i)));
            if (!band.says().isEmpty()) {
                labels.add(label(band, thickest, i == 0, under, top));
            }
        }
        drawn.addAll(labels);
        drawn.addAll(ends(top));
        drawn.addAll(months());
        return Svg.picture(id, 340, 210, about + " from today to turnout", words() + ".", drawn);
    }

    private String fill(int band) {
        return switch (band) {
            case 0 -> "#fff";
            case 1 -> "url(#" + id + "-due)";
            default -> "url(#" + id + "-dots)";
        };
    }

    /** In the band where it is thickest; beside its top where it is too thin to hold words. */
    private String label(Band band, int thickest, boolean lowest, double[] over, double top) {
        double high = y(over[thickest] - band.values().get(thickest), top) - y(over[thickest], top);
        double middle = y(over[thickest], top) + high / 2 + LABEL_HIGH / 3;
        double x = lowest ? (LEFT + RIGHT) / 2 : x(thickest);
        var anchor = lowest ? "middle" : x > 230 ? "end" : x < 110 ? "start" : "middle";
        double shift = anchor.equals("end") ? -6 : anchor.equals("start") ? 6 : 0;
        return Svg.text(x + shift, high < LABEL_HIGH ? middle + LABEL_HIGH : middle, anchor, false, band.says());
    }

    private List<String> ends(double top) {
        int last = dates.size() - 1;
        int high = highest();
        var ends = new ArrayList<String>();
        ends.add(Svg.text(LEFT, over(LEFT, LEFT + LABEL_WIDE, top), "start", true, said(0) + " now"));
        ends.add(Svg.text(RIGHT, over(RIGHT - LABEL_WIDE, RIGHT, top), "end", true, said(last)));
        boolean apart = x(high) > LEFT + 130 && x(high) < RIGHT - 80;
        if (apart) {
            ends.add(Svg.text(x(high), y(total(high), top) - 8, "middle", true, said(high)));
        }
        return ends;
    }

    /** Clear of the line all along the words. */
    private double over(double from, double to, double top) {
        double highest = IntStream.range(0, dates.size())
                .filter(week -> x(week) >= from && x(week) <= to)
                .mapToDouble(this::total)
                .max()
                .orElse(top);
        return y(highest, top) - 8;
    }

    private List<String> months() {
        var marks = new ArrayList<String>();
        marks.add(Svg.line(LEFT, BOTTOM, RIGHT, BOTTOM));
        double written = Double.NEGATIVE_INFINITY;
        var first = dates.get(0);
        var last = dates.get(dates.size() - 1);
        for (var month = first.getDayOfMonth() == 1 ? first : first.with(TemporalAdjusters.firstDayOfNextMonth());
                !month.isAfter(last);
                month = month.plusMonths(1)) {
            double x = LEFT + (RIGHT - LEFT) * ChronoUnit.DAYS.between(first, month) / days();
            marks.add(Svg.line(x, BOTTOM, x, BOTTOM + 5));
            if (x - written >= 44 && x <= RIGHT - 36) {
                marks.add(Svg.text(x, BOTTOM + 19, "start", false, Show.day(month)));
                written = x;
            }
        }
        return marks;
    }

    private double days() {
        return ChronoUnit.DAYS.between(dates.get(0), dates.get(dates.size() - 1));
    }

    private double x(int week) {
        return LEFT + (RIGHT - LEFT) * ChronoUnit.DAYS.between(dates.get(0), dates.get(week)) / days();
    }

    /** From zero: a picture that cuts the foot off makes a small rise look large. */
    private static double y(double value, double top) {
        return BOTTOM - (BOTTOM - TOP) * value / Math.max(top, SMALL);
    }
}
