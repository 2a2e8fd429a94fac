package haywright.cattle;

import java.util.Locale;

/**
 * Which edition of the published requirement equations is meant, where the two differ: the intake of growing cattle, the
 * weight of a heifer at first calving, microbial protein, cobalt, and how much of some minerals is too much. Maintenance,
 * pregnancy, milk, reserves and the intake of cows are the same in both, as far as recalled.
 */
public enum RequirementSystem {
    /** National Research Council, Nutrient Requirements of Beef Cattle, 7th edition, 1996, updated 2000. */
    NRC_1996("NRC 1996, updated 2000"),
    /** National Academies, Nutrient Requirements of Beef Cattle, 8th edition, 2016. */
    NASEM_2016("NASEM 2016");

    /** The older edition: its printed tables were read and come out again; of the newer one few were. */
    public static final RequirementSystem USUAL = NRC_1996;

    private final String words;

    RequirementSystem(String words) {
        this.words = words;
    }

    public String words() {
        return words;
    }

    /** As documents and topics write it: {@code nrc-1996}. */
    public String id() {
        return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }
}
