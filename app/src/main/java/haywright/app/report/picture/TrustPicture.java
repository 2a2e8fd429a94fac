package haywright.app.report.picture;

import java.math.BigDecimal;
import java.math.MathContext;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/**
 * What was likely before, what the samples say, what is likely now: for each figure three bars over one axis with round
 * numbers, each where the truth lies nine times in ten, with a stroke at the likeliest. White before, dotted the samples,
 * hatched now.
 *
 * @param figures at least one
 */
public record TrustPicture(String lot, List<Figure> figures) {
    private static final double LEFT = 84;
    private static final double WIDTH = 240;
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

    /** 1, 2 or 5 times a power of ten, so that four to eight of them fill the axis. */
    private static double step(double span) {
        double raw = Math.max(span, 1e-6) / 6;
        double power = Math.pow(10, Math.floor(Math.log10(raw)));
        double times = raw / power;
        return power * (times <= 1 ? 1 : times <= 2 ? 2 : times <= 5 ? 5 : 10);
    }

    private static String round(double tick) {
        return new BigDecimal(tick)
                .round(new MathContext(6))
                .stripTrailingZeros()
                .toPlainString();
    }

    public String svg() {
        var drawn = new ArrayList<String>();
        var words = new ArrayList<String>();
        double y = 4;
        for (var figure : figures) {
            double low =
                    Math.max(0, figure.bars.stream().mapToDouble(Bar::low).min().orElse(0));
            double high = figure.bars.stream().mapToDouble(Bar::high).max().orElse(1);
            double step = step(high - low);
            double least = Math.floor(low / step) * step;
            double most = Math.ceil(high / step) * step;
            double scale = WIDTH / (most - least);
            y += 14;
            drawn.add(Svg.text(0, y, "start", true, figure.name));
            y += 6;
            double foot = y + figure.bars.size() * STEP + 2;
            drawn.add(Svg.line(LEFT, foot, LEFT + WIDTH, foot));
            int ticks = (int) Math.round((most - least) / step);
            for (int i = 0; i <= ticks; i++) {
                double at = LEFT + i * step * scale;
                drawn.add(Svg.faint(at, y - 2, at, foot));
                drawn.add(Svg.line(at, foot, at, foot + 4));
                drawn.add(Svg.text(at, foot + 17, "middle", false, round(least + i * step)));
            }
            for (var bar : figure.bars) {
                double x = LEFT + (Math.max(0, bar.low) - least) * scale;
                double middle = LEFT + (bar.middle - least) * scale;
                drawn.add(Svg.text(0, y + BAR - 2, "start", false, bar.label));
                drawn.add(Svg.box(x, y, Math.max((bar.high - Math.max(0, bar.low)) * scale, 1), BAR, bar.fill.paint));
                drawn.add(Svg.line(middle, y - 2, middle, y + BAR + 2));
                words.add("%s, %s: %s".formatted(figure.name, bar.label, bar.says));
                y += STEP;
            }
            var last = figure.bars.get(figure.bars.size() - 1);
            drawn.add(Svg.text(LEFT, y + 36, "start", false, last.label.toLowerCase(Locale.ROOT) + " " + last.says));
            y += 48;
        }
        return Svg.picture(
                "trust", 340, (int) Math.ceil(y), "How far to trust " + lot, String.join("; ", words) + ".", drawn);
    }
}
