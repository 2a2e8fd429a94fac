/**
 * A laboratory's figures in a CSV file, as far as they can be understood; what cannot be is listed.
 *
 * <p>Start at {@link haywright.app.exchange.csv.ReportCsv}. It hands out text, not numbers: the form of a report reads
 * them, beside the checks, before anything is kept. Knows {@code forage}, {@code quantity} and {@code workings}.
 */
@NullMarked
package haywright.app.exchange.csv;

import org.jspecify.annotations.NullMarked;
