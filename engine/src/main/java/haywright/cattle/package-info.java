/**
 * What cattle need on a day: net energy, protein, calcium and phosphorus, what they are expected to eat and what they
 * can hold.
 *
 * <p>Start at {@link haywright.cattle.need.Requirement}; {@link haywright.cattle.herd.HerdCheck} says what in a group is unusual,
 * {@link haywright.cattle.intake.ForageCapacity} what they can hold, {@link haywright.cattle.Reserves} what a condition score is
 * worth. In: an animal, or a {@link haywright.cattle.herd.Group} and a date. Out: each need as a
 * worked figure. A group's need is the mean over its calving dates, never that of one average cow.
 *
 * <p>Kilograms and Mcal per head per day; shrunk body weight. Knows {@code weather}, {@code workings} and
 * {@code quantity}; knows nothing of feeds, files or pages.
 */
@NullMarked
package haywright.cattle;

import org.jspecify.annotations.NullMarked;
