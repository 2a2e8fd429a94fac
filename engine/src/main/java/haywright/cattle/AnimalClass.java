package haywright.cattle;

import haywright.quantity.Unit;
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
    private final String weightRule;

    AnimalClass(String words) {
        this.words = words;
        weightRule = "weight_" + id();
    }

    public String words() {
        return words;
    }

    public String id() {
        return name().toLowerCase(Locale.ROOT);
    }

    /** Cows and heifers that calve: their intake follows the cow equation. */
    public boolean calves() {
        return this == MATURE_COW || this == FIRST_CALF_HEIFER || this == BRED_HEIFER;
    }

    /** Cows and bulls that grow no more. */
    public boolean isGrown() {
        return this == MATURE_COW || this == BULL;
    }

    /** In her first pregnancy or with her first calf. */
    public boolean firstCalf() {
        return this == FIRST_CALF_HEIFER || this == BRED_HEIFER;
    }

    public Findings checkWeight(String field, double weight, double matureWeight, Unit unit) {
        return firstCalf()
                ? Findings.of(
                        Limits.of("weight_mature").check("matureWeight", matureWeight, unit),
                        Limits.of(weightRule).check(field, 100 * weight / matureWeight, Unit.PERCENT))
                : Limits.of(weightRule).check(field, weight, unit);
    }
}
