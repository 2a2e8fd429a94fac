package haywright.sampling;

/**
 * The probe that is really there.
 *
 * @param boreMetres inside diameter of the tip
 * @param depthMetres how deep it goes into the feed
 */
public record Probe(double boreMetres, double depthMetres) {}
