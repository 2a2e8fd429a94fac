/**
 * The ranch as JSON: what a file and the store hold, and how older ones are brought up to date.
 *
 * <p>Start at {@link haywright.app.document.RanchDocument}. In: bytes of a document, or a
 * {@link haywright.ranch.Ranch}. Out: the other one, or {@link haywright.workings.Refused} with the path of every field
 * that is wrong. {@link haywright.app.document.Patch} is a change to whole entities: what the store writes down, merges
 * and undoes.
 *
 * <p>The form follows the records: keys are their component names in snake_case, so a component added to a record is a
 * key added here. Knows {@code haywright.*} of the engine and Jackson; knows nothing of SQL or pages.
 */
@NullMarked
package haywright.app.document;

import org.jspecify.annotations.NullMarked;
