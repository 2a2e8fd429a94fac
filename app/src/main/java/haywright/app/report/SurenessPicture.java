package haywright.app.report;

import haywright.app.words.Show;
import haywright.feeding.CostOfSureness;
import java.util.ArrayList;
import java.util.List;

/**
 * What a ration costs against how often it holds.
 *
 * @param id names the picture on its page
 * @param curve at least two points
 * @param holdsPercent and {@code dollars} of the ration that is shown
 */
public record SurenessPicture(String id, CostOfSureness curve, double holdsPercent, double dollars) {
    private static final double LEFT = 46;
    private static final double RIGHT = 330;
    private static final double TOP = 30;
    private static final double BOTTOM = 170;
    private static final int TENS = 10;

    /** Dollars that the picture is high at least: less is not told from flat. */
    private static final double LEAST_HIGH = 0.1;

    private double low() {
        return Math.min(dollars, curve.points().get(0).dollars());
    }

    private double high() {
        double highest = curve.points().stream()
                .mapToDouble(CostOfSureness.Point::dollars)
                .max()
                .orElse(dollars);
        return Math.max(low() + LEAST_HIGH, Math.max(dollars, highest));
    }

    private double x(double percent) {
        return LEFT + (RIGHT - LEFT) * percent / 100;
    }

    private double y(double cost) {
        return BOTTOM - (BOTTOM - TOP) * (cost - low()) / (high() - low());
    }

    /** {@code $1.79 is enough 5 times in 10; $2.02, 9 times in 10.} */
    public String words() {
        var first = curve.points().get(0);
        var last = curve.points().get(curve.points().size() - 1);
        var says = "%s is enough %s; %s, %s. The ration shown costs %s and is enough %s."
                .formatted(
                        Show.dollars(first.dollars()),
                        Show.timesInTen(first.holdsPercent()),
                        Show.dollars(last.dollars()),
                        Show.timesInTen(last.holdsPercent()),
                        Show.dollars(dollars),
                        Show.timesInTen(holdsPercent));
        return curve.kink() < 0
                ? says
                : says
                        + " Past %s, much surer gets expensive."
                                .formatted(Show.timesInTen(
                                        curve.points().get(curve.kink()).holdsPercent()));
    }

    public String svg() {
        var drawn = new ArrayList<String>();
        for (int tens = 0; tens <= TENS; tens += 2) {
            drawn.add(Svg.faint(x(10.0 * tens), TOP, x(10.0 * tens), BOTTOM));
            drawn.add(Svg.text(x(10.0 * tens), BOTTOM + 16, "middle", false, Integer.toString(tens)));
        }
        drawn.add(Svg.line(LEFT, BOTTOM, RIGHT, BOTTOM));
        drawn.add(Svg.text(RIGHT, BOTTOM + 32, "end", false, "times in 10 it is enough"));
        drawn.add(Svg.text(LEFT - 42, TOP - 14, "start", false, "per head per day"));
        drawn.add(Svg.text(LEFT - 6, y(low()) + 4, "end", false, Show.dollars(low())));
        drawn.add(Svg.text(LEFT - 6, y(high()) + 4, "end", false, Show.dollars(high())));
        var points = curve.points();
        for (int i = 1; i < points.size(); i++) {
            drawn.add(Svg.thick(
                    x(points.get(i - 1).holdsPercent()),
                    y(points.get(i - 1).dollars()),
                    x(points.get(i).holdsPercent()),
                    y(points.get(i).dollars())));
        }
        if (curve.kink() > 0 && curve.kink() < points.size() - 1) {
            var bend = points.get(curve.kink());
            drawn.add(dot(bend.holdsPercent(), bend.dollars(), "#fff"));
            drawn.add(Svg.dot(LEFT + 10, TOP + 12, 5, "#fff"));
            drawn.add(Svg.text(LEFT + 20, TOP + 16, "start", false, "past here surer costs more"));
        }
        drawn.add(dot(holdsPercent, dollars, "#1d1b17"));
        drawn.addAll(label(holdsPercent, dollars, -12, "this mix, " + Show.dollars(dollars)));
        return Svg.picture(id, 340, 208, "Cost against how often it holds", words(), drawn);
    }

    private String dot(double percent, double cost, String fill) {
        return Svg.dot(x(percent), y(cost), 5, fill);
    }

    private List<String> label(double percent, double cost, double down, String words) {
        boolean right = x(percent) > (LEFT + RIGHT) / 2;
        return List.of(Svg.text(x(percent) + (right ? 6 : -2), y(cost) + down, right ? "end" : "start", true, words));
    }
}
