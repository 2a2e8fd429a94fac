package haywright.lp;

/** The solver cannot be loaded on this machine; the message says why and what to do, as sentences. */
public final class SolverMissing extends IllegalStateException {
    private static final long serialVersionUID = 1;

    SolverMissing(String sentences, Throwable cause) {
        super(sentences, cause);
    }
}
