package haywright.app.report.picture;

import haywright.app.words.Measures;
import haywright.app.words.Show;
import haywright.quantity.Unit;
import haywright.weather.MeanWinter;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.function.ToDoubleFunction;

/**
 * How hard each winter was, as bars of its degree-days below 18 °F: hatched where it was one of the hardest tenth.
 *
 * @param winters at least one, the latest last
 */
public record WintersPicture(String place, List<MeanWinter> winters) {
    /** 18 °F, °C: where cold begins to cost a dry winter coat feed. */
    public static final double BASE = Unit.FAHRENHEIT.toBase(18);

    private static final double LEFT = 8;
    private static final double WIDTH = 324;
    private static final double TOP = 26;
    private static final double HEIGHT = 90;
    private static final int LABELS_APART = 5;
    private static final int ONE_IN = 10;

    public WintersPicture {
        winters = List.copyOf(winters);
    }

    /** Degree-days in the degrees of the ranch. */
    public static double degreeDays(MeanWinter winter) {
        return Measures.ofDegrees(winter.degreeDaysUnder(BASE) * 1.8);
    }

    private List<MeanWinter> byHardness() {
        return winters.stream()
                .sorted(Comparator.comparingDouble(WintersPicture::degreeDays))
                .toList();
    }

    /** {@code Middle winter 280 degree-days below 18 °F; hardest 1996-97 with 640, mildest 2011-12 with 60}. */
    public String words() {
        var sorted = byHardness();
        var hardest = sorted.get(sorted.size() - 1);
        var mildest = sorted.get(0);
        return "Middle winter: %s degree-days below %s, November to March. Hardest %s with %s, mildest %s with %s"
                .formatted(
                        Show.number(middle(sorted, WintersPicture::degreeDays), 0),
                        Show.temperature(BASE),
                        hardest.words(),
                        days(hardest),
                        mildest.words(),
                        days(mildest));
    }

    /**
     * As many are above as below: of an even number the mean of the two in the middle.
     *
     * @param sorted by what is asked of them, at least one
     */
    public static double middle(List<MeanWinter> sorted, ToDoubleFunction<MeanWinter> of) {
        int half = sorted.size() / 2;
        double upper = of.applyAsDouble(sorted.get(half));
        return sorted.size() % 2 == 1 ? upper : (of.applyAsDouble(sorted.get(half - 1)) + upper) / 2;
    }

    private static String days(MeanWinter winter) {
        return Show.number(degreeDays(winter), 0);
    }

    public String svg() {
        var sorted = byHardness();
        var hard = sorted.subList(sorted.size() - Math.max(1, sorted.size() / ONE_IN), sorted.size());
        double most = Math.max(1, degreeDays(sorted.get(sorted.size() - 1)));
        double wide = WIDTH / winters.size();
        var drawn = new ArrayList<String>();
        for (int i = 0; i < winters.size(); i++) {
            var winter = winters.get(i);
            double x = LEFT + wide * i;
            double tall = HEIGHT * degreeDays(winter) / most;
            boolean isHard = hard.contains(winter);
            drawn.add(Svg.box(x, TOP + HEIGHT - tall, wide - 2, tall, isHard ? "url(#winters-due)" : "#fff"));
            if (i % LABELS_APART == 0 && x < LEFT + WIDTH - 45) {
                drawn.add(Svg.line(x, TOP + HEIGHT, x, TOP + HEIGHT + 5));
                drawn.add(Svg.text(x, TOP + HEIGHT + 19, "start", false, winter.words()));
            }
            if (winter.equals(sorted.get(sorted.size() - 1))) {
                boolean atEnd = i > winters.size() / 2;
                drawn.add(Svg.text(
                        atEnd ? x + wide : x,
                        TOP - 8,
                        atEnd ? "end" : "start",
                        true,
                        winter.words() + ": " + days(winter)));
            }
        }
        drawn.add(Svg.line(LEFT, TOP + HEIGHT, LEFT + WIDTH, TOP + HEIGHT));
        return Svg.picture("winters", 340, 142, "Winters at " + place, words() + ".", drawn);
    }
}
