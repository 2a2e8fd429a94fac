/**
 * The letter's step of the trail: every group's feed letter, its words open to change, printed on Letter or A4.
 *
 * <p>Start at {@link haywright.app.web.letter.LetterPages}. What a letter says is made in {@code report}; here it is only
 * shown, rewritten and kept.
 */
@NullMarked
package haywright.app.web.letter;

import org.jspecify.annotations.NullMarked;
