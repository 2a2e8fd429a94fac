package haywright.sampling;

/**
 * The probe that is really there.
 *
 * @param boreMeters inside diameter of the tip
 * @param depthMeters how deep it goes into the feed
 */
public record Probe(double boreMeters, double depthMeters) {}
