package haywright.ration;

/**
 * A feed that the cheapest ration does without.
 *
 * @param worthBuyingBelow dollars a kg as fed under which it would come in
 */
public record NotUsed(PricedFeed feed, double worthBuyingBelow) {}
