package haywright.lp;

import java.util.function.BooleanSupplier;

/**
 * How long a search may take. Where the same bytes must come out again, count nodes: seconds differ from run to run.
 *
 * @param seconds of the clock; infinite for no limit
 * @param nodes of branch and bound, in each of its rounds
 * @param canceled asked now and then by the thread that solves; what it throws ends the search and is thrown on
 */
public record Budget(double seconds, int nodes, BooleanSupplier canceled) {
    private static final BooleanSupplier NEVER = () -> false;

    /** As long as it takes. */
    public static final Budget UNLIMITED = new Budget(Double.POSITIVE_INFINITY, Integer.MAX_VALUE, NEVER);

    public Budget {
        if (!(seconds >= 0) || nodes < 0) {
            throw new IllegalArgumentException(seconds + " seconds and " + nodes + " nodes: both are zero or more.");
        }
    }

    public static Budget ofSeconds(double seconds) {
        return new Budget(seconds, Integer.MAX_VALUE, NEVER);
    }

    public static Budget ofNodes(int nodes) {
        return new Budget(Double.POSITIVE_INFINITY, nodes, NEVER);
    }

    public static Budget until(BooleanSupplier canceled) {
        return new Budget(Double.POSITIVE_INFINITY, Integer.MAX_VALUE, canceled);
    }

    boolean asks() {
        return canceled != NEVER;
    }

    /** What is left of it, {@code started} by {@link System#nanoTime()}. */
    Budget since(long started) {
        double used = (System.nanoTime() - started) / 1e9;
        return new Budget(Math.max(0, seconds - used), nodes, canceled);
    }

    boolean isSpent() {
        return seconds <= 0 || canceled.getAsBoolean();
    }
}
