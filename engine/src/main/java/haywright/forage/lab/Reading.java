package haywright.forage.lab;

import haywright.forage.Analyte;
import haywright.forage.Basis;
import haywright.forage.lab.Tested.Method;
import haywright.quantity.Unit;
import org.jspecify.annotations.Nullable;

/**
 * One figure of a laboratory's report, as it was printed: value, unit and basis as typed.
 *
 * @param basis for dry matter itself and for ratios and indices, which have no pair of bases, {@code DRY_MATTER} is
 *     written and means nothing
 * @param method how this figure was measured, where the sheet says so of this figure; null where it was measured as
 *     the whole report was
 */
public record Reading(
        Analyte analyte,
        double value,
        Unit unit,
        Basis basis,
        @Nullable Method method) {
    /** A figure measured as the whole report was. */
    public Reading(Analyte analyte, double value, Unit unit, Basis basis) {
        this(analyte, value, unit, basis, null);
    }

    /** The same figure, with how it was measured. */
    public Reading by(@Nullable Method how) {
        return new Reading(analyte, value, unit, basis, how);
    }
}
