/**
 * The feed book: what is usual for a feed before it is tested, and how far lots of a kind lie apart.
 *
 * <p>Start at {@link haywright.forage.book.FeedBook}; {@link haywright.forage.book.Prior} is its spread.
 */
@NullMarked
package haywright.forage.book;

import org.jspecify.annotations.NullMarked;
