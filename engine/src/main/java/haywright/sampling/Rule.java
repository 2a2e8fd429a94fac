package haywright.sampling;

import java.util.Locale;

/** The rules by which a number of units is chosen. They disagree; the plan shows them side by side and says which it used. */
public enum Rule {
    /** A tenth of the bales, at least ten, or all when there are fewer. */
    TEN_PERCENT("ten percent, at least 10"),
    /** Twenty cores, one a bale while there are bales. */
    TWENTY_CORES("twenty cores"),
    /** A fifth of the bales, at least twelve, or all when there are fewer: the least that is published for nitrate. */
    NITRATE_SHARE("a fifth of the bales, at least 12, for nitrate"),
    /** What is published for a material that is not counted in bales. */
    PUBLISHED("the published count"),
    /** The cheapest numbers of units, cores and analyses that reach the half-width. */
    CHEAPEST("the cheapest for the accuracy you asked for");

    private final String words;

    Rule(String words) {
        this.words = words;
    }

    public String words() {
        return words;
    }

    public String id() {
        return name().toLowerCase(Locale.ROOT);
    }
}
