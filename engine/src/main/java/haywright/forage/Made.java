package haywright.forage;

import java.util.OptionalDouble;

/**
 * What a feed may be made of: as it is expected, with its origins ({@link Composition}), or one of the ways it may lie,
 * without.
 */
public interface Made {
    /** On dry matter in {@link Analyte#unit()}; empty where it is not known. */
    OptionalDouble value(Analyte analyte);
}
