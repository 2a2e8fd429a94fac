package haywright.workings;

/** Where a number came from: a person or file typed it, a source published it, or the engine computed it. */
public sealed interface Origin {
    /** Typed with nothing more to say about it. */
    Origin TYPED = new Typed("entered");

    /** @param where in the reader's words: "entered", "report of 12 Oct, Tin Valley laboratory" */
    record Typed(String where) implements Origin {}

    record Published(Source source) implements Origin {}

    record Computed(Worked by) implements Origin {}
}
