package haywright.season.play;

import java.util.List;

/** Decisions made ahead and followed as they stand, whatever comes. */
public final class Followed implements Policy {
    private final List<Decision> decisions;

    /** @param decisions of every week */
    public Followed(List<Decision> decisions) {
        this.decisions = List.copyOf(decisions);
    }

    @Override
    public Decision next(Known known) {
        return decisions.get(known.week());
    }

    @Override
    public void close() {}
}
