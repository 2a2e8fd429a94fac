package haywright.app.report.picture;

import haywright.app.words.ration.SupplyWords;
import haywright.feeding.Supply;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;

/**
 * What a mix likely supplies of each need beside what is needed, each as a strip: the line is the need, the bar what they
 * likely get nine times in ten, the mark in it what is expected. As shares of the need, so that all needs stand in line.
 *
 * @param id names the picture on its page
 * @param supplies from the top down, at least one
 */
public record StripPicture(String id, List<Supply> supplies) {
    private static final int WIDTH = 340;
    private static final double LEFT = 4;
    private static final double RIGHT = 336;
    private static final double HIGH = 66;
    private static final double BAR = 16;

    /** Shares of the need that the picture reaches to at most, and at least. */
    private static final double LEAST = 0.4;

    private static final double MOST = 2.2;
    private static final double NARROW_LEAST = 0.85;
    private static final double NARROW_MOST = 1.4;

    public StripPicture {
        supplies = List.copyOf(supplies);
    }

    private double from() {
        return supplies.stream()
                .mapToDouble(s -> Math.min(s.low(), s.expected()) / s.needed())
                .map(share -> share - 0.05)
                .reduce(NARROW_LEAST, (a, b) -> Math.max(LEAST, Math.min(a, b)));
    }

    private double to() {
        return supplies.stream()
                .mapToDouble(s -> s.high() / s.needed() + 0.05)
                .reduce(NARROW_MOST, (a, b) -> Math.min(MOST, Math.max(a, b)));
    }

    private double x(double share) {
        double at = (share - from()) / (to() - from());
        return LEFT + (RIGHT - LEFT) * Math.max(0, Math.min(1, at));
    }

    /** {@code Protein, tight: needs 1.83 lb, likely gets 1.95 to 2.40. Energy, …}. */
    public String words() {
        return supplies.stream()
                .map(s -> "%s, %s: %s.".formatted(SupplyWords.name(s), SupplyWords.verdict(s), SupplyWords.figures(s)))
                .collect(Collectors.joining(" "));
    }

    public String svg() {
        var drawn = new ArrayList<String>();
        for (int i = 0; i < supplies.size(); i++) {
            drawn.addAll(strip(supplies.get(i), HIGH * i));
        }
        return Svg.picture(
                id, WIDTH, (int) (HIGH * supplies.size()), "What they need and what this mix gives", words(), drawn);
    }

    private List<String> strip(Supply supply, double top) {
        double middle = top + 33;
        double low = x(supply.low() / supply.needed());
        double high = x(supply.high() / supply.needed());
        double need = x(1);
        var drawn = new ArrayList<String>();
        drawn.add(Svg.text(LEFT, top + 14, "start", true, SupplyWords.name(supply)));
        drawn.add(Svg.text(RIGHT, top + 14, "end", SupplyWords.isShort(supply), SupplyWords.verdict(supply)));
        drawn.add(Svg.faint(LEFT, middle, RIGHT, middle));
        if (high - low > 2) {
            drawn.add(Svg.box(low, middle - BAR / 2, high - low, BAR, "url(#%s-due)".formatted(id)));
        }
        if (supply.expected() / supply.needed() < to()) {
            double mark = x(supply.expected() / supply.needed());
            drawn.add(Svg.thick(mark, middle - BAR / 2, mark, middle + BAR / 2));
        } else {
            drawn.add(Svg.area(
                    Svg.point(RIGHT - 10, middle - 7) + " " + Svg.point(RIGHT, middle) + " "
                            + Svg.point(RIGHT - 10, middle + 7),
                    "#1d1b17"));
        }
        drawn.add(Svg.box(need - 1.5, middle - 12, 3, 24, "#1d1b17"));
        drawn.add(Svg.text(LEFT, top + 60, "start", false, SupplyWords.figures(supply)));
        return drawn;
    }
}
