package haywright.lp;

/** No method of the solver came to an end: neither a plan nor a proof that there is none. */
public final class Undecided extends IllegalStateException {
    private static final long serialVersionUID = 1L;

    Undecided(String message) {
        super(message);
    }
}
