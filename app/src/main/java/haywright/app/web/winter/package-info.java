/**
 * The winter book: whether the feed lasts to grass, in how many winters of 20, and what to do about it. A book is made in
 * the background, so the page answers at once and shows each winter as it is played.
 */
@NullMarked
package haywright.app.web.winter;

import org.jspecify.annotations.NullMarked;
