package haywright.workings;

/**
 * Where a fact is known from.
 *
 * @param cite the publication, with page, table or equation where known
 * @param known how firmly: {@link Known}
 */
public record Source(String cite, Known known) {
    /** How a fact is known. Shown beside the source, so that nobody takes memory for reading. */
    public enum Known {
        /** The page was read. */
        READ("read"),
        /** Recalled, not re-read. */
        FROM_MEMORY("from memory, not re-read"),
        /** Recalled, and it reproduces published numbers that were read. */
        MEMORY_THAT_REPRODUCES("from memory; reproduces published numbers"),
        COMMON_PRACTICE("common practice, no source"),
        JUDGMENT("judgment"),
        ARITHMETIC("arithmetic"),
        INVENTED("invented for the demo");

        private final String words;

        Known(String words) {
            this.words = words;
        }

        public String words() {
            return words;
        }
    }

    public static Source read(String cite) {
        return new Source(cite, Known.READ);
    }

    public static Source memory(String cite) {
        return new Source(cite, Known.FROM_MEMORY);
    }

    public static Source reproduces(String cite) {
        return new Source(cite, Known.MEMORY_THAT_REPRODUCES);
    }

    public static Source practice(String cite) {
        return new Source(cite, Known.COMMON_PRACTICE);
    }

    public static Source judgment(String cite) {
        return new Source(cite, Known.JUDGMENT);
    }

    public static final Source ARITHMETIC = new Source("arithmetic", Known.ARITHMETIC);
}
