package haywright.diet;

/**
 * A feed that may not be in this diet.
 *
 * @param danger whether it stays out because it could hurt the cattle, not because something is unknown
 * @param why in the rancher's words
 * @param fix what would let it in
 */
public record LeftOut(Feed feed, boolean danger, String why, String fix) {}
