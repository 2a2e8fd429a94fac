package haywright.cattle;

import java.util.Locale;

/** Classes of beef cattle, as the requirement tables sort them. */
public enum AnimalClass {
    MATURE_COW("mature cows"),
    FIRST_CALF_HEIFER("first-calf heifers"),
    BRED_HEIFER("bred heifers"),
    BULL("bulls"),
    /** Weaned calves and replacement heifers on their way to a target. */
    GROWING("growing cattle");

    private final String words;

    AnimalClass(String words) {
        this.words = words;
    }

    public String words() {
        return words;
    }

    public String id() {
        return name().toLowerCase(Locale.ROOT);
    }
}
