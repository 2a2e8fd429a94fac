package haywright.app.report;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/**
 * What was likely before, what the samples say, what is likely now: for each figure three bars on one scale, each where
 * the truth lies nine times in ten, with a stroke at the likeliest. White before, dotted the samples, hatched now.
 *
 * @param figures at least one
 */
public record TrustPicture(String lot, List<Figure> figures) {
    private static final double LEFT = 84;
    private static final double WIDTH = 246;
    private static final double BAR = 12;
    private static final double STEP = 18;

    public TrustPicture {
        figures = List.copyOf(figures);
    }

    /**
     * One figure, in the unit it is shown in.
     *
     * @param bars top to bottom
     */
    public record Figure(String name, List<Bar> bars) {
        public Figure {
            bars = List.copyOf(bars);
        }
    }

    /**
     * @param says the range and its unit as text, which stands in for the bar where a picture is not seen
     * @param fill white, dotted or hatched
     */
    public record Bar(String label, double low, double middle, double high, String says, Fill fill) {}

    /** How a bar is filled. */
    public enum Fill {
        WHITE("#fff"),
        DOTTED("url(#trust-dots)"),
        HATCHED("url(#trust-due)");

        private final String paint;

        Fill(String paint) {
            this.paint = paint;
        }
    }

    public String svg() {
        var drawn = new ArrayList<String>();
        var words = new ArrayList<String>();
        double y = 4;
        for (var figure : figures) {
            double least = figure.bars.stream().mapToDouble(Bar::low).min().orElse(0);
            double most = figure.bars.stream().mapToDouble(Bar::high).max().orElse(1);
            double scale = WIDTH / Math.max(most - least, 1e-9);
            y += 14;
            drawn.add(Svg.text(0, y, "start", true, figure.name));
            y += 6;
            for (var bar : figure.bars) {
                double x = LEFT + (bar.low - least) * scale;
                double middle = LEFT + (bar.middle - least) * scale;
                drawn.add(Svg.text(0, y + BAR - 2, "start", false, bar.label));
                drawn.add(Svg.box(x, y, Math.max((bar.high - bar.low) * scale, 1), BAR, bar.fill.paint));
                drawn.add(Svg.line(middle, y - 2, middle, y + BAR + 2));
                words.add("%s, %s: %s".formatted(figure.name, bar.label, bar.says));
                y += STEP;
            }
            var last = figure.bars.get(figure.bars.size() - 1);
            drawn.add(Svg.text(LEFT, y + 10, "start", false, last.label.toLowerCase(Locale.ROOT) + " " + last.says));
            y += 22;
        }
        return Svg.picture(
                "trust", 340, (int) Math.ceil(y), "How far to trust " + lot, String.join("; ", words) + ".", drawn);
    }
}
