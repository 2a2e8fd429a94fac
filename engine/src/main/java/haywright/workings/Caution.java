package haywright.workings;

/** A warning that stands where the act is: short, in plain words, deferring to local rules and a veterinarian. */
public record Caution(String words, Source source) {}
