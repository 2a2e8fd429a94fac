package haywright.diet;

import haywright.cattle.need.Need;
import haywright.workings.Problem;
import haywright.workings.Refused;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;

/**
 * What the ranch may choose about a diet.
 *
 * @param limitsOff ids of practice limits that are switched off; dangers cannot be
 * @param feedLimits limits on single feeds
 * @param grainFeedingsADay over how many feedings a day grain is spread; the published limit is for one
 * @param mixing whether the feeds are mixed in a wagon; a danger is diluted only by real mixing, never on alternate days
 * @param water what their water adds
 * @param way how they are fed
 * @param shortOfHay whether the least forage that published advice has for a hay shortage is enough
 * @param isCareful whether the careful one of two published limits counts where they part
 * @param leastHarm whether they are held to what they would eat, and to the least hay that published advice has, whatever
 *     else goes short: for cattle that are fed where hay is short
 * @param grainPutOut kg of grain put out for a kg counted as eaten, 1 or more: limits on grain hold for what lies there,
 *     since some may eat it all
 * @param straw what practice gives these cattle no straw of, by feed id: {@code straw_for} lets it in
 */
public record DietOptions(
        Set<String> limitsOff,
        List<FeedLimit> feedLimits,
        int grainFeedingsADay,
        Mixing mixing,
        Water water,
        WayOfFeeding way,
        boolean shortOfHay,
        boolean isCareful,
        boolean leastHarm,
        double grainPutOut,
        Set<String> straw) {
    /** Everything on, no feed limited, put out once a day, mixed, water that adds nothing. */
    public static final DietOptions USUAL = new DietOptions(Set.of(), List.of(), 1, Mixing.MIXES);

    /** Not held to what they would eat. */
    public DietOptions(
            Set<String> limitsOff,
            List<FeedLimit> feedLimits,
            int grainFeedingsADay,
            Mixing mixing,
            Water water,
            WayOfFeeding way,
            boolean shortOfHay,
            boolean isCareful) {
        this(limitsOff, feedLimits, grainFeedingsADay, mixing, water, way, shortOfHay, isCareful, false, 1, Set.of());
    }

    /** Put out daily; water that adds nothing. */
    public DietOptions(Set<String> limitsOff, List<FeedLimit> feedLimits, int grainFeedingsADay, Mixing mixing) {
        this(limitsOff, feedLimits, grainFeedingsADay, mixing, Water.CLEAN, WayOfFeeding.PUT_OUT_DAILY, false, true);
    }

    public DietOptions {
        limitsOff = Set.copyOf(limitsOff);
        feedLimits = List.copyOf(feedLimits);
        straw = Set.copyOf(straw);
        if (grainFeedingsADay < 1 || grainFeedingsADay > 6) {
            throw new Refused(
                    "grainFeedingsADay",
                    grainFeedingsADay + " feedings a day",
                    "grain is fed one to six times a day",
                    "How often is feed put out?");
        }
        if (!(grainPutOut >= 1) || !Double.isFinite(grainPutOut)) {
            throw new IllegalArgumentException("no less grain is put out than eaten: " + grainPutOut);
        }
    }

    public DietOptions with(Water other) {
        return new DietOptions(
                limitsOff,
                feedLimits,
                grainFeedingsADay,
                mixing,
                other,
                way,
                shortOfHay,
                isCareful,
                leastHarm,
                grainPutOut,
                straw);
    }

    public DietOptions with(WayOfFeeding other) {
        return new DietOptions(
                limitsOff,
                feedLimits,
                grainFeedingsADay,
                mixing,
                water,
                other,
                shortOfHay,
                isCareful,
                leastHarm,
                grainPutOut,
                straw);
    }

    public DietOptions with(List<FeedLimit> other) {
        return new DietOptions(
                limitsOff,
                other,
                grainFeedingsADay,
                mixing,
                water,
                way,
                shortOfHay,
                isCareful,
                leastHarm,
                grainPutOut,
                straw);
    }

    /** Where so much grain is put out for a kg that is counted as eaten. */
    public DietOptions losing(double kgPutOutPerKg) {
        return new DietOptions(
                limitsOff,
                feedLimits,
                grainFeedingsADay,
                mixing,
                water,
                way,
                shortOfHay,
                isCareful,
                leastHarm,
                kgPutOutPerKg,
                straw);
    }

    /** Where practice gives them none of this straw: what the limits of feeds ask for stays. */
    public DietOptions withoutStraw(Set<String> feeds) {
        var asked = feedLimits.stream()
                .filter(limit -> limit.amount() > 0)
                .map(FeedLimit::feed)
                .collect(Collectors.toSet());
        return new DietOptions(
                limitsOff,
                feedLimits,
                grainFeedingsADay,
                mixing,
                water,
                way,
                shortOfHay,
                isCareful,
                leastHarm,
                grainPutOut,
                feeds.stream().filter(feed -> !asked.contains(feed)).collect(Collectors.toSet()));
    }

    /** By the limits for a shortage. */
    public DietOptions whereHayIsShort() {
        return new DietOptions(
                limitsOff,
                feedLimits,
                grainFeedingsADay,
                mixing,
                water,
                way,
                true,
                false,
                leastHarm,
                grainPutOut,
                straw);
    }

    /** Held to what they would eat and to the least hay. */
    public DietOptions atLeastHarm() {
        return new DietOptions(
                limitsOff,
                feedLimits,
                grainFeedingsADay,
                mixing,
                water,
                way,
                shortOfHay,
                isCareful,
                true,
                grainPutOut,
                straw);
    }

    /** With one practice limit more switched off. */
    public DietOptions without(String row) {
        var off = new HashSet<>(limitsOff);
        off.add(row);
        return new DietOptions(
                off,
                feedLimits,
                grainFeedingsADay,
                mixing,
                water,
                way,
                shortOfHay,
                isCareful,
                leastHarm,
                grainPutOut,
                straw);
    }

    /** By the looser of two published limits. */
    public DietOptions withoutCare() {
        return new DietOptions(
                limitsOff,
                feedLimits,
                grainFeedingsADay,
                mixing,
                water,
                way,
                shortOfHay,
                false,
                leastHarm,
                grainPutOut,
                straw);
    }

    /** Whether practice gives these cattle none of it; who takes the limit off straw asked for straw. */
    boolean isStrawOut(Feed feed) {
        return straw.contains(feed.id()) && isOn("straw") && isOn("straw_for");
    }

    /** Whether a practice limit counts. */
    boolean isOn(String row) {
        return !limitsOff.contains(row);
    }

    /**
     * What their water adds to what they eat.
     *
     * @param nitrate mg of nitrogen (NO3-N) a liter; 0 where nobody tested it
     * @param sulfate mg a liter; 0 where nobody tested it
     */
    public record Water(double nitrate, double sulfate) {
        public static final Water CLEAN = new Water(0, 0);

        public Water {
            var problems = new ArrayList<Problem>();
            check(problems, "waterNitrate", nitrate, "nitrate", "As NO3-N, in mg a liter (the same as ppm).");
            check(problems, "waterSulfate", sulfate, "sulfate", "In mg a liter (the same as ppm).");
            Refused.unlessEmpty(problems);
        }

        /** mg of NO3-N a day; what they drink is asked only where there is some. */
        double nitrateADay(Need need) {
            return nitrate == 0 ? 0 : nitrate * need.water();
        }

        private static void check(List<Problem> problems, String field, double value, String what, String fix) {
            if (!(value >= 0) || !Double.isFinite(value)) {
                problems.add(new Problem(field, value + " mg/L", what + " of water is 0 or more", fix));
            }
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
                        "amount", String.valueOf(amount), "a limit on a feed is zero or more", "Enter a number.");
            }
        }
    }
}
