package haywright.sampling;

import haywright.workings.Source;

/**
 * One rule's answer: how much to take, how sure that makes it, what it costs, who says so.
 *
 * @param reached false when even this does not bring the half-width down to the one wanted
 * @param why in words, with what the rule leaves open
 */
public record Choice(
        Rule rule, Design design, Precision precision, double costUsd, boolean reached, String why, Source source) {
    public double halfWidth() {
        return precision.halfWidth();
    }
}
