package haywright.app.report.picture;

import haywright.app.words.Measures;
import haywright.app.words.Show;
import haywright.season.kept.WinterStory;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;

/**
 * One winter as it was played: a strip a lot, each with its thin line from what was on hand to nothing, so that no line
 * crosses another and each is named where it is.
 *
 * @param begins the first day of each week; at least two
 */
public record LotLines(WinterStory story, List<LocalDate> begins) {
    private static final double LEFT = 8;
    private static final double RIGHT = 332;
    private static final double DEEP = 40;
    private static final double STRIP = 66;
    private static final double TOP = 18;

    public String words() {
        return String.join(". ", story.lots().stream().map(lot -> line(lot)).toList());
    }

    /** {@code used up by Feb 2}; {@code lasts}. */
    public static String ends(WinterStory.Line lot) {
        return lot.usedUp() == null ? "lasts" : "used up by " + Show.day(lot.usedUp());
    }

    private static String line(WinterStory.Line lot) {
        return "%s: %s %s, %s"
                .formatted(
                        lot.name(),
                        Show.number(Measures.mass().fromBase(lot.kg().get(0)), 0),
                        Measures.tons(),
                        ends(lot));
    }

    public String svg() {
        var drawn = new ArrayList<String>();
        double y = TOP;
        for (var lot : story.lots()) {
            drawn.add(Svg.text(LEFT, y, "start", false, line(lot)));
            double foot = y + 6 + DEEP;
            double most =
                    Math.max(1, lot.kg().stream().mapToDouble(kg -> kg).max().orElse(1));
            int weeks = Math.min(begins.size(), lot.kg().size());
            for (int week = 1; week < weeks; week++) {
                drawn.add(Svg.thick(
                        x(begins.get(week - 1)),
                        foot - DEEP * lot.kg().get(week - 1) / most,
                        x(begins.get(week)),
                        foot - DEEP * lot.kg().get(week) / most));
            }
            drawn.add(Svg.line(LEFT, foot, RIGHT, foot));
            y += STRIP;
        }
        double foot = y - STRIP + 6 + DEEP;
        for (var month : StackLine.months(begins, this::x, RIGHT)) {
            drawn.add(Svg.faint(month.x(), TOP, month.x(), foot));
            if (month.isWritten()) {
                drawn.add(Svg.text(month.x(), foot + 17, "middle", false, Show.day(month.first())));
            }
        }
        return Svg.picture(
                "lots",
                340,
                (int) foot + 26,
                Measures.say("{Tons} of each lot through ") + story.winter(),
                words(),
                drawn);
    }

    private double x(LocalDate day) {
        double days = ChronoUnit.DAYS.between(begins.get(0), begins.get(begins.size() - 1));
        return LEFT + (RIGHT - LEFT) * ChronoUnit.DAYS.between(begins.get(0), day) / days;
    }
}
