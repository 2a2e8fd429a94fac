/**
 * A ranch on a day, worked out: what every lot is made of and weighs, what every group needs in the weeks ahead and in
 * this ranch's own cold, what is to be tested, what last winter says. What is fed is decided above it.
 *
 * <p>Start at {@link haywright.outlook.Yard}. Knows the ranch document and every room below it; the document knows nothing
 * of what is worked out here.
 */
@NullMarked
package haywright.outlook;

import org.jspecify.annotations.NullMarked;
