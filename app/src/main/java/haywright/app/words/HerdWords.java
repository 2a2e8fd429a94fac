package haywright.app.words;

import haywright.ranch.Settings;

/** What holds for every figure of a herd, said wherever it acts. */
public final class HerdWords {
    private HerdWords() {}

    /** What last winter said of cold and waste, as a sentence; empty where nothing was accepted. */
    public static String factor(Settings settings) {
        var factor = settings.herdFactor();
        return factor == null
                ? ""
                : "The cold, and what is lost of hay, count %s times here, as last winter’s feeding said."
                        .formatted(times(factor));
    }

    /** What was taken of wind and windbreak though nobody said it, as a sentence; empty where somebody has, or no cold counts. */
    public static String taken(Settings settings) {
        var weather = settings.weather();
        return weather == null || weather.wind() != null
                ? ""
                : "Figured for wind of %s%s, which nobody has said."
                        .formatted(
                                Show.quantity(weather.blows()),
                                weather.windbreak() ? " behind a windbreak" : " and no windbreak");
    }

    /** {@code 1.25}. */
    public static String times(double factor) {
        return Show.number(factor, 2);
    }
}
