package haywright.forage;

import java.util.Locale;

/** What a concentration is a share of. A required choice for every column of a report, never assumed. */
public enum Basis {
    /** As the sample came in: the same as "as fed" and "as is". */
    AS_RECEIVED,
    DRY_MATTER,
    /** At 90 % dry matter, as hay is often traded. */
    NINETY_PCT;

    public String id() {
        return name().toLowerCase(Locale.ROOT);
    }
}
