package haywright.cattle.cold;

import java.util.Locale;

/** Two ways to count the cold. One is taken or the other; they are never added for the same cold. */
public enum ColdSystem {
    /** Percent of maintenance per degree under the critical temperature: {@link ColdStress}. */
    RULE_OF_THUMB("the rule of thumb: {percent a degree}"),
    /** Heat made against heat lost: {@link HeatBalance}. */
    HEAT_BALANCE("the heat balance of the NRC");

    /**
     * The rule of thumb: its table of critical temperatures was read, and examples can be checked against it; the
     * coefficients of the heat balance are from memory.
     */
    public static final ColdSystem USUAL = RULE_OF_THUMB;

    private final String words;

    ColdSystem(String words) {
        this.words = words;
    }

    /** With {@code {percent a degree}}, which whoever shows it says in degrees of the ranch. */
    public String words() {
        return words;
    }

    public String id() {
        return name().toLowerCase(Locale.ROOT);
    }
}
