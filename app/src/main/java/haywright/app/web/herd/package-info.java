/**
 * Herd: the groups of cattle, and what one head of each needs on a day and in the weeks to come.
 *
 * <p>Start at {@link haywright.app.web.herd.GroupPages}; what a group needs is shown by
 * {@link haywright.app.web.herd.NeedPages}. The cold is that of a usual week at the ranch's
 * place, or of the winters of its station.
 */
@NullMarked
package haywright.app.web.herd;

import org.jspecify.annotations.NullMarked;
