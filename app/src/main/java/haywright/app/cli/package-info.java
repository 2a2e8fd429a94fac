/**
 * The same answers from a terminal.
 *
 * <p>Start at {@link haywright.app.cli.Cli}: it reads the command line, runs one command and gives its exit status: 0
 * done, 1 done but the answer is "no", 2 the input is refused, 3 the output could not be written or the program failed.
 * Answers go to standard output, what went wrong to standard error, one line each. No command asks a question. What
 * failed inside is kept in {@code errors.log} beside the ranches.
 *
 * <p>Knows the other rooms of the app by what {@code Main} hands it.
 */
@NullMarked
package haywright.app.cli;

import org.jspecify.annotations.NullMarked;
