package haywright.forage;

import haywright.quantity.Unit;

/**
 * One figure of a laboratory's report, as it was printed: value, unit and basis as typed.
 *
 * @param basis for dry matter itself and for ratios and indices, which have no pair of bases, {@code DRY_MATTER} is
 *     written and means nothing
 */
public record Reading(Analyte analyte, double value, Unit unit, Basis basis) {}
