package haywright.app.cli;

import haywright.app.store.Home;

/** What failed inside is written to a file for whoever mends it; the person reads one sentence. */
final class Faults {
    static final int FAILED = 3;

    private final Data data;

    Faults(Data data) {
        this.data = data;
    }

    /** Adds it to {@code errors.log} beside the ranches, as the pages do. */
    String kept(Throwable fault) {
        return "Haywright failed, and the fault is its own (%s). %s Send it to whoever looks after Haywright."
                .formatted(Home.name(fault), Home.written(data.home(), "the command", fault));
    }
}
