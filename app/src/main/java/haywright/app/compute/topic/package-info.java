/**
 * The topics: one record in, one record out, one function each.
 *
 * <p>Start at {@link haywright.app.compute.topic.Topics}.
 */
@NullMarked
package haywright.app.compute.topic;

import org.jspecify.annotations.NullMarked;
