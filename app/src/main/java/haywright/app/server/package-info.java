/**
 * The server: it listens, and gives every step of the trail its pages; and the one page that is left where the database
 * cannot be opened.
 *
 * <p>Start at {@link haywright.app.server.Server}.
 */
@NullMarked
package haywright.app.server;

import org.jspecify.annotations.NullMarked;
