package haywright.season.play;

/** What decides each week. It is given what is known, and nothing of what is true. Belongs to the thread that uses it. */
public sealed interface Policy extends AutoCloseable permits Replanned, InOrder, RanchsOwn, Followed {
    Decision next(Known known);

    @Override
    void close();
}
