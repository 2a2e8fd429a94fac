package haywright.cattle.cold;

import java.util.Locale;

/** The hair that cattle wear, as the tables of lower critical temperatures sort it. */
public enum Coat {
    /** Under 0.2 in. */
    SUMMER(0.6),
    /** 0.3 to 0.6 in. */
    FALL(0.9),
    /** 0.7 to 1.0 in. */
    WINTER(1.2),
    /** Over 1.0 in. */
    HEAVY_WINTER(2.0);

    private final double hair;

    Coat(double hair) {
        this.hair = hair;
    }

    /**
     * Effective depth, cm, in the heat balance: 0.6 in summer, 1.2 in winter, 2 to 2.5 in a heavy coat (NRC 1996/2000, from
     * memory); fall lies between by judgment, and of a heavy coat the lesser depth stands.
     */
    public double hair() {
        return hair;
    }

    public String id() {
        return name().toLowerCase(Locale.ROOT);
    }
}
