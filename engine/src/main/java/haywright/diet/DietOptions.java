package haywright.diet;

import haywright.workings.Refused;
import java.util.List;
import java.util.Set;

/**
 * What the ranch may choose about a diet.
 *
 * @param limitsOff ids of practice limits that are switched off; dangers cannot be
 * @param feedLimits limits on single feeds
 * @param grainFeedingsADay over how many feedings a day grain is spread; the published limit is for one
 * @param mixing whether the feeds are mixed in a wagon; a danger is diluted only by real mixing, never on alternate days
 * @param waterNitrate nitrate of the water, mg of nitrogen (NO3-N) a liter; 0 where nobody tested it
 */
public record DietOptions(
        Set<String> limitsOff, List<FeedLimit> feedLimits, int grainFeedingsADay, Mixing mixing, double waterNitrate) {
    /** Everything on, no feed limited, fed once a day, mixed, water without nitrate. */
    public static final DietOptions USUAL = new DietOptions(Set.of(), List.of(), 1, Mixing.MIXES);

    /** Water without nitrate. */
    public DietOptions(Set<String> limitsOff, List<FeedLimit> feedLimits, int grainFeedingsADay, Mixing mixing) {
        this(limitsOff, feedLimits, grainFeedingsADay, mixing, 0);
    }

    public DietOptions {
        limitsOff = Set.copyOf(limitsOff);
        feedLimits = List.copyOf(feedLimits);
        if (grainFeedingsADay < 1 || grainFeedingsADay > 6) {
            throw new Refused(
                    "grainFeedingsADay",
                    grainFeedingsADay + " feedings a day",
                    "grain is fed one to six times a day",
                    "How often is feed put out?");
        }
        if (!(waterNitrate >= 0) || !Double.isFinite(waterNitrate)) {
            throw new Refused(
                    "waterNitrate",
                    waterNitrate + " mg/L",
                    "nitrate of water is 0 or more",
                    "As NO3-N, in mg a liter (the same as ppm).");
        }
    }

    /**
     * A limit on one feed, a head and day.
     *
     * @param amount as {@code per} says
     * @param perKgEaten for {@code KG_PUT_OUT}, kg as fed put out for a kg of dry matter eaten; 1 otherwise
     */
    public record FeedLimit(String feed, DietRow.Sense sense, Per per, double amount, double perKgEaten) {
        public enum Per {
            /** As fed, what is wasted included. */
            KG_PUT_OUT,
            /** Eaten. */
            KG_DRY_MATTER,
            SHARE_PCT,
            BODY_WEIGHT_PCT
        }

        public FeedLimit(String feed, DietRow.Sense sense, Per per, double amount) {
            this(feed, sense, per, amount, 1);
        }

        public FeedLimit {
            if (!(amount >= 0) || !Double.isFinite(amount)) {
                throw new Refused(
                        "amount", String.valueOf(amount), "a limit on a feed is zero or more", "Put in a number.");
            }
        }
    }
}
