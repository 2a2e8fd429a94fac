/**
 * The week on a phone: what was fed each day, counts and scores, as one file that needs no signal.
 *
 * <p>Start at {@link haywright.app.report.phone.PhoneWeek}. In: a ranch and its wagon cards. Out: the file.
 */
@NullMarked
package haywright.app.report.phone;

import org.jspecify.annotations.NullMarked;
