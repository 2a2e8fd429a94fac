/**
 * What laboratories report: a report as it was typed, read into one unit and basis, and checked line by line.
 *
 * <p>Start at {@link haywright.forage.lab.ReportCheck}; {@link haywright.forage.lab.Tested} is what a checked report says of
 * its lot.
 */
@NullMarked
package haywright.forage.lab;

import org.jspecify.annotations.NullMarked;
