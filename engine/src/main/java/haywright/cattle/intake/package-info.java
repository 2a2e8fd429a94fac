/**
 * What cattle are expected to eat, and what they can hold.
 *
 * <p>Start at {@link haywright.cattle.intake.ExpectedIntake} and {@link haywright.cattle.intake.ForageCapacity}.
 */
@NullMarked
package haywright.cattle.intake;

import org.jspecify.annotations.NullMarked;
