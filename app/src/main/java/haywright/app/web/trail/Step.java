package haywright.app.web.trail;

/** The eight steps of the trail, in walking order. */
public enum Step {
    LOTS("Lots", "lots"),
    TAKE_IT("Take samples", "take"),
    READ_IT("Lab reports", "reports"),
    HERD("Herd", "herd"),
    MATCH("Match", "match"),
    BENCH("Rations", "bench"),
    WINTER_BOOK("Winter book", "winter"),
    LETTER("Letter", "letter");

    private final String title;
    private final String path;

    Step(String title, String path) {
        this.title = title;
        this.path = path;
    }

    public String title() {
        return title;
    }

    /** Under the ranch: {@code /ranch/ID/lots}. */
    public String path() {
        return path;
    }

    public int number() {
        return ordinal() + 1;
    }
}
