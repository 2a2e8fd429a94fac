/**
 * What the laboratory's numbers mean: reports checked line by line, the published equations, the feed book, and the
 * composition of a lot that comes out of them.
 *
 * <p>Start at {@link haywright.forage.lot.LotComposition}. In: {@link haywright.forage.lab.LabReport}s as typed and a row of the
 * {@link haywright.forage.book.FeedBook}. Out: a {@link haywright.forage.Composition} on dry matter, every value with its
 * origin. {@link haywright.forage.lab.ReportCheck} says what is impossible or unlikely in a report; each published equation
 * ({@link haywright.forage.energy.Tdn}, {@link haywright.forage.energy.NetEnergy}, {@link haywright.forage.energy.RelativeFeedValue},
 * {@link haywright.forage.hazard.Nitrate}, …) is a record of what was measured and can be used alone.
 *
 * <p>{@link haywright.forage.lot.LotEstimate} says how far to trust it: the {@link haywright.forage.book.Prior} of its kind, moved
 * by what was {@link haywright.forage.lab.Tested} as far as sampling and laboratory allow.
 *
 * <p>Concentrations are percent or ppm of dry matter, energy is Mcal per kg of dry matter. Where sources disagree they
 * are shown together (nitrate) or the one used is named with its reason (TDN). Knows {@code sampling}, {@code chance},
 * {@code workings} and {@code quantity}; knows nothing of cattle, files or pages.
 */
@NullMarked
package haywright.forage;

import org.jspecify.annotations.NullMarked;
