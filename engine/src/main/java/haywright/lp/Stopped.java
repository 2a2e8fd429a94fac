package haywright.lp;

import java.util.Optional;

/**
 * The budget was spent before the end.
 *
 * @param best the best plan so far that keeps every limit, if one was found: only programs with whole columns have any
 *     before their end
 */
public record Stopped(Optional<Whole> best) implements Outcome {}
