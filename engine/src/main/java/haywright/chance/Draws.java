package haywright.chance;

import java.util.SplittableRandom;

/** Numbers by chance from a seed. The same seed gives the same numbers on every machine. */
public final class Draws {
    private static final double STEP = 0x1p-53;

    private final SplittableRandom random;

    public Draws(long seed) {
        this(new SplittableRandom(seed));
    }

    private Draws(SplittableRandom random) {
        this.random = random;
    }

    /** Uniform, above 0 and below 1: never either, so that a quantile can be taken of it. */
    public double uniform() {
        return ((random.nextLong() >>> 11) + 0.5) * STEP;
    }

    /** Standard normal, by inversion: one uniform a draw, so antithetic pairs are {@code z} and {@code −z}. */
    public double normal() {
        return Normal.quantile(uniform());
    }

    /** A whole number from 0 to {@code bound} − 1, each equally likely. */
    public int below(int bound) {
        if (bound < 1) {
            throw new IllegalArgumentException("no whole number from 0 is below " + bound);
        }
        return (int) (uniform() * bound);
    }

    /** A stream of its own, for a part of the work that may draw more or less without moving the rest. */
    public Draws split() {
        return new Draws(random.split());
    }
}
