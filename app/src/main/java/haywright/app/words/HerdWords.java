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

    /** {@code 1.25}. */
    public static String times(double factor) {
        return Show.number(factor, 2);
    }
}
