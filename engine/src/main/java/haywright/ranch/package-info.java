/**
 * The ranch document: herd, lots, reports, fields, feeds to buy, what the outfit can feed with, and what was fed last
 * winter. It is the record; nothing else keeps a copy.
 *
 * <p>Start at {@link haywright.ranch.Ranch}. Every entity sits in a map by its id, and values stay as they were typed,
 * with their unit.
 *
 * <p>Knows the values of the rooms below it; knows nothing of files, JSON or pages.
 */
@NullMarked
package haywright.ranch;

import org.jspecify.annotations.NullMarked;
