package haywright.cattle.cold;

import haywright.workings.Source;
import java.util.Locale;

/** Mud in the lot where they stand and eat: the deeper, the less they are expected to eat. */
public enum Mud {
    NONE(1.0),
    /** 4 to 8 in, 10 to 20 cm. */
    HOOF_DEEP(0.85),
    /** 12 to 24 in, 30 to 60 cm. */
    KNEE_DEEP(0.70);

    public static final Source SOURCE = Source.memory("NRC 1996/2000 ch. 7, intake multipliers: mud");

    private final double factor;

    Mud(double factor) {
        this.factor = factor;
    }

    /** Of expected intake (NRC 1996/2000, from memory). */
    public double factor() {
        return factor;
    }

    public String id() {
        return name().toLowerCase(Locale.ROOT);
    }
}
