package haywright.lp;

/**
 * A curved limit that linear ones hold from outside: every point that breaks it can be cut off by a linear row that
 * keeps all points that keep it. A {@link Session} adds such cuts until no curved row is broken. Immutable, pure numbers:
 * the amounts it is given are of its own columns, in the order in which it was placed ({@link ProgramBuilder#convex}).
 *
 * <p>A row is made for one need; another need is another row of the same form. What a cut asks for is the row's to say
 * ({@link #atLeast}), so that cuts taken for one need serve the next: only their right sides move.
 */
public interface ConvexRow {
    /** How far these amounts break it, as a share of the row's own size; 0 or less where it is kept. */
    double broken(double[] x);

    /** A cut that these amounts break and that all keep which keep the row. Asked only where it is broken. */
    Cut cutAt(double[] x);

    /** What the left side of a cut must come to at least, for this row's need; the cut may be of another need. */
    double atLeast(Cut cut);

    /** How much {@link #atLeast} of this cut rises for one unit more of the limit as a reader sees it. */
    double perUnit(Cut cut);

    /**
     * The left side of a cut.
     *
     * @param coefficients one for each of the row's columns
     * @param mark whatever else the row needs to say the right side
     */
    record Cut(double[] coefficients, double[] mark) {
        @Override
        public boolean equals(Object o) {
            return this == o;
        }

        @Override
        public int hashCode() {
            return System.identityHashCode(this);
        }
    }
}
