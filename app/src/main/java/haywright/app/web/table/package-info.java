/**
 * Tables brought in: each line of a spreadsheet becomes the form that it would be typed in, so that everything a typed one
 * is asked and told holds for it too.
 *
 * <p>Start at {@link haywright.app.web.table.TableForm}. In: the text of a table. Out: a form for each of its lines.
 */
@NullMarked
package haywright.app.web.table;

import org.jspecify.annotations.NullMarked;
