package haywright.app.report.picture;

import haywright.app.words.Show;
import haywright.feeding.CostOfSureness;
import haywright.feeding.Offer;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.stream.Collectors;

/**
 * What being surer takes, beside the way to feed them that is the cheapest for the ranch.
 *
 * @param id names the picture on its page
 * @param curve at least two ways
 * @param shown the ration that is shown
 */
public record SurenessPicture(String id, CostOfSureness curve, Offer shown) {
    private static final double LEFT = 46;
    private static final double RIGHT = 330;
    private static final double TOP = 30;
    private static final double BOTTOM = 170;
    private static final int TENS = 10;

    /** Dollars that the picture is high at least: less is not told from flat. */
    private static final double LEAST_HIGH = 0.1;

    private double high() {
        return Math.max(
                LEAST_HIGH, curve.ways().stream().mapToDouble(curve::over).max().orElse(0));
    }

    private double x(double percent) {
        return LEFT + (RIGHT - LEFT) * percent / 100;
    }

    private double y(double cost) {
        return BOTTOM - (BOTTOM - TOP) * cost / high();
    }

    /** {@code 9 ¢ more than the cheapest is enough 7 times in 10; 21 ¢ more, 9 times in 10.} */
    public String words() {
        var first = curve.ways().get(0);
        var told = new HashSet<>(List.of(Show.timesInTen(first.holdsPercent())));
        var says = curve.ways().stream()
                .skip(1)
                .filter(way -> told.add(Show.timesInTen(way.holdsPercent())) || way.equals(shown))
                .map(way -> "%s more is enough %s%s"
                        .formatted(
                                Show.cents(curve.over(way)),
                                Show.timesInTen(way.holdsPercent()),
                                way.equals(shown) ? " (this mix)" : ""))
                .collect(Collectors.joining("; "));
        return "The cheapest%s is enough %s. %s."
                .formatted(first.equals(shown) ? ", this mix," : "", Show.timesInTen(first.holdsPercent()), says);
    }

    public String svg() {
        var drawn = new ArrayList<String>();
        for (int tens = 0; tens <= TENS; tens += 2) {
            drawn.add(Svg.faint(x(10.0 * tens), TOP, x(10.0 * tens), BOTTOM));
            drawn.add(Svg.text(x(10.0 * tens), BOTTOM + 16, "middle", false, Integer.toString(tens)));
        }
        drawn.add(Svg.line(LEFT, BOTTOM, RIGHT, BOTTOM));
        drawn.add(Svg.text(RIGHT, BOTTOM + 32, "end", false, "times in 10 it is enough"));
        drawn.add(Svg.text(LEFT - 42, TOP - 14, "start", false, "more per head per day than the cheapest"));
        drawn.add(Svg.text(LEFT - 6, y(0) + 4, "end", false, Show.cents(0)));
        drawn.add(Svg.text(LEFT - 6, y(high()) + 4, "end", false, Show.cents(high())));
        var ways = curve.ways();
        for (int i = 1; i < ways.size(); i++) {
            drawn.add(Svg.thick(x(ways.get(i - 1)), y(ways.get(i - 1)), x(ways.get(i)), y(ways.get(i))));
        }
        ways.forEach(way -> drawn.add(Svg.dot(x(way), y(way), 4, way.equals(shown) ? "#1d1b17" : "#fff")));
        boolean right = x(shown) > (LEFT + RIGHT) / 2;
        drawn.add(Svg.text(x(shown) + (right ? 6 : -2), y(shown) - 12, right ? "end" : "start", true, "this mix"));
        return Svg.picture(id, 340, 208, "Cost against how often it holds", words(), drawn);
    }

    private double x(Offer way) {
        return x(way.holdsPercent());
    }

    private double y(Offer way) {
        return y(curve.over(way));
    }
}
