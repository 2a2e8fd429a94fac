package haywright.app.web;

/** The eight steps of the trail, in walking order. */
public enum Step {
    LOTS("Lots", "lots", true, "What is in the yard: every stack, pit and bag, its tons and its price."),
    TAKE_IT("Take it", "take", true, "The sampling plan: which bales, how many cores, what to bring."),
    READ_IT("Read it", "reports", true, "The laboratory’s report beside its checks."),
    HERD("Herd", "herd", true, "The groups, and what each needs."),
    MATCH("Match", "match", false, "Which lot is enough for which group and stage, and what it is short of."),
    BENCH("Bench", "bench", true, "The ration for each group, by hand or solved."),
    WINTER_BOOK("Winter book", "winter", false, "Whether the feed lasts to turnout, in twenty winters."),
    LETTER("Letter", "letter", true, "The one page for the person who feeds.");

    private final String title;
    private final String path;
    private final boolean built;
    private final String about;

    Step(String title, String path, boolean built, String about) {
        this.title = title;
        this.path = path;
        this.built = built;
        this.about = about;
    }

    public String title() {
        return title;
    }

    /** Under the ranch: {@code /ranch/ID/lots}. */
    public String path() {
        return path;
    }

    /** Whether there is a page; if not, the trail says so and the path shows what will stand there. */
    public boolean isBuilt() {
        return built;
    }

    public String about() {
        return about;
    }

    public int number() {
        return ordinal() + 1;
    }
}
