/**
 * What can be said of a group's ration at a glance: what it costs at even odds and more surely, how often it holds, until
 * when its feeds last, what the cold, a purchase or a test would change.
 *
 * <p>Start at {@link haywright.outlook.bench.Offers}. In: a {@link haywright.outlook.Yard} and one of its groups. Out:
 * figures in kilograms, dollars a head and day, and dates; pages and papers put them into pounds and words.
 *
 * <p>Knows the yard and what is below it. Nothing here decides a ration: the yard does.
 */
@NullMarked
package haywright.outlook.bench;

import org.jspecify.annotations.NullMarked;
