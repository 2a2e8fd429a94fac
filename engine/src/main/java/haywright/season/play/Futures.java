package haywright.season.play;

import haywright.lp.LinearProgram;
import haywright.lp.ProgramBuilder;
import java.util.Arrays;

/**
 * What is done now and what follows it in each of several futures, as one linear program: now is shared by all, and what
 * follows counts by how likely its future is.
 */
public final class Futures {
    private static final double HAIR = 1e-9;

    private final double[] weights;

    /** Adds one part of the program. */
    public interface Part {
        /** @param future which one; 0 for what is done now */
        void add(ProgramBuilder in, int future);
    }

    /** @param weights how likely each is; they come to 1 */
    public Futures(double... weights) {
        this.weights = weights.clone();
        double sum = Arrays.stream(weights).sum();
        if (weights.length == 0 || !(Math.abs(sum - 1) < HAIR)) {
            throw new IllegalArgumentException("futures whose chances come to " + sum);
        }
    }

    /** @param count of them, each as likely */
    static Futures alike(int count) {
        var weights = new double[count];
        Arrays.fill(weights, 1.0 / count);
        return new Futures(weights);
    }

    int count() {
        return weights.length;
    }

    double weight(int future) {
        return weights[future];
    }

    /** @param now is asked first and once. @param then for each future in turn */
    LinearProgram together(Part now, Part then) {
        var builder = LinearProgram.minimize();
        now.add(builder, 0);
        for (int future = 0; future < weights.length; future++) {
            then.add(builder, future);
        }
        return builder.build();
    }
}
