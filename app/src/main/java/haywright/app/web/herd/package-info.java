/**
 * Herd: the groups of cattle, and what one head of each needs on a day and in the weeks to come.
 *
 * <p>Start at {@link haywright.app.web.herd.GroupPages}; what a group needs is shown by
 * {@link haywright.app.web.herd.NeedPages}. Weather is not in it yet, and every page says so.
 */
@NullMarked
package haywright.app.web.herd;

import org.jspecify.annotations.NullMarked;
