package haywright.quantity;

/** Which units a ranch reads its figures in. No figure is computed by it: it says how they are shown and typed. */
public enum Preset {
    /** Pounds, tons of 2,000 lb, °F, miles an hour. */
    US("U.S.: pounds, tons, °F"),
    /** Pounds a head, tonnes of 1,000 kg, °C, kilometers an hour. */
    WESTERN_CANADA("Western Canada: pounds, tonnes, °C");

    private final String words;

    Preset(String words) {
        this.words = words;
    }

    public String words() {
        return words;
    }
}
