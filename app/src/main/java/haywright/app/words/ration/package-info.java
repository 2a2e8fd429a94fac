/** What one ration says: its rows, its needs, and what the trade says beside it. */
@NullMarked
package haywright.app.words.ration;

import org.jspecify.annotations.NullMarked;
