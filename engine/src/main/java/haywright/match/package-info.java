/**
 * Which lot carries which group: each lot of forage alone, with a loose mineral, beside each group at each stage until grass.
 *
 * <p>Start at {@link haywright.match.CarryChart}.
 */
@NullMarked
package haywright.match;

import org.jspecify.annotations.NullMarked;
