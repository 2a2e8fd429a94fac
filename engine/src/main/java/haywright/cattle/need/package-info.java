/**
 * What an animal or a group needs on a day and in each week: energy, protein, minerals, vitamins, water.
 *
 * <p>Start at {@link haywright.cattle.need.Requirement}.
 */
@NullMarked
package haywright.cattle.need;

import org.jspecify.annotations.NullMarked;
