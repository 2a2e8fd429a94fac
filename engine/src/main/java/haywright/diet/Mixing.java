package haywright.diet;

/** Whether an outfit can mix feeds, as it was said. Only real mixing dilutes a danger; nobody's silence counts as a wagon. */
public enum Mixing {
    MIXES("It has a mixer"),
    NO_MIXER("It has no mixer"),
    NOT_SAID("Not said yet");

    private final String words;

    Mixing(String words) {
        this.words = words;
    }

    public String words() {
        return words;
    }

    public boolean mixes() {
        return this == MIXES;
    }
}
