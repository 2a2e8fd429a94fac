/**
 * Small tools beside the bench: a question of the trade a page, each also a topic of the command.
 *
 * <p>Start at {@link haywright.app.web.tools.ToolPages}. In: what is typed, which stays in the address. Out: sentences and
 * their workings. Knows nothing of the ranch that it is opened from.
 */
@NullMarked
package haywright.app.web.tools;

import org.jspecify.annotations.NullMarked;
