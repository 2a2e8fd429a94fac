/**
 * The round: every ranch the adviser looks after, what each waits for, and the next date that matters. A new ranch, the
 * demo, and ranches that come as files begin here.
 */
@NullMarked
package haywright.app.web.round;

import org.jspecify.annotations.NullMarked;
