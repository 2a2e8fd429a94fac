package haywright.diet;

import haywright.diet.DietRow.Sense;

/** Which row of a diet it is: what is limited, or which feed. */
public sealed interface RowId {
    /** As documents and programs write it: {@code cp}, {@code feed_least_3f…}. */
    String id();

    /** Of the whole diet. */
    record Nutrient(String id) implements RowId {}

    /** Of one feed in it. @param feed its id */
    record OfFeed(String feed, Sense sense) implements RowId {
        @Override
        public String id() {
            return "feed_%s_%s".formatted(sense == Sense.AT_LEAST ? "least" : "most", feed);
        }
    }

    /** What there is of one feed: no row of a diet, but a bound that can stand in its way. @param feed its id */
    record OnHand(String feed) implements RowId {
        @Override
        public String id() {
            return "on_hand_" + feed;
        }
    }
}
