/**
 * What every group of a ranch is to be fed today, weighed by the plan of the winter, and what can be said of it at a glance:
 * what being surer costs, how often it holds, until when its feeds last, what the cold, a purchase or a test would change.
 *
 * <p>Start at {@link haywright.feeding.Rations}, and at {@link haywright.feeding.Offers} for one group. In: a
 * {@link haywright.outlook.Yard} and one of its groups. Out: figures in kilograms, dollars a head and day, and dates; pages
 * and papers put them into pounds and words.
 *
 * <p>Knows yard and season, and what is below them.
 */
@NullMarked
package haywright.feeding;

import org.jspecify.annotations.NullMarked;
