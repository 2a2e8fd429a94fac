package haywright.app.words;

import haywright.ranch.Settings;
import java.util.ArrayList;

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

    /**
     * What was taken of wind, windbreak and coat though nobody said it, as a sentence; empty where all of it was said, or
     * no cold counts. Coat and what lies on it are asked together, so a coat left open there was left open on purpose.
     */
    public static String taken(Settings settings) {
        var weather = settings.weather();
        var taken = new ArrayList<String>();
        if (weather != null && weather.wind() == null) {
            taken.add("wind of " + Show.quantity(weather.blows()));
        }
        if (weather != null && weather.windbreak() == null) {
            taken.add("no windbreak");
        }
        if (weather != null && weather.hide() == null) {
            taken.add(weather.coat() == null ? "dry coats of the season" : "dry coats");
        }
        return taken.isEmpty() ? "" : "Assumed until you say otherwise: " + String.join(", ", taken) + ".";
    }

    /** {@code 1.25}. */
    public static String times(double factor) {
        return Show.number(factor, 2);
    }
}
