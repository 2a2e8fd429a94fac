package haywright.diet;

import haywright.cattle.need.Need;
import haywright.forage.Analyte;
import haywright.forage.FeedClass;
import java.util.Optional;

/** Which feeds may be in a diet at all. */
final class Admission {
    private Admission() {}

    static Optional<LeftOut> reasonToLeaveOut(Feed feed, Need need, DietOptions options) {
        var danger = nitrate(feed, NitrateFed.of(feed, need, options), options)
                .or(() -> Toxins.reasonToLeaveOut(feed, need));
        if (danger.isPresent()) {
            return danger;
        }
        if (feed.feedClass() == FeedClass.NPN) {
            return Optional.of(new LeftOut(
                    feed,
                    true,
                    "%s is left out because limits for urea are not built yet".formatted(feed.name()),
                    "Use a natural protein, or ask a nutritionist."));
        }
        if (feed.feedClass() == FeedClass.MINERAL) {
            return Optional.empty();
        }
        if (!feed.composition().knows(Analyte.CP)) {
            return Optional.of(unknown(feed, "protein"));
        }
        if (!feed.composition().knows(Analyte.NEM)) {
            return Optional.of(unknown(feed, "energy"));
        }
        return options.isStrawOut(feed) ? Optional.of(straw(feed, need)) : Optional.empty();
    }

    /**
     * @see "Published straw rations: mature cows in good condition (Ontario, The Use of Straw and Grain), bred cows of score
     *     5 to 6 (Missouri, Feeding Wheat Straw, 2012); bulls on 24 to 30 lb of hay (BEEF magazine, Winter Bull Feeding)"
     */
    private static LeftOut straw(Feed feed, Need need) {
        return new LeftOut(
                feed,
                false,
                "%s is left out: %s"
                        .formatted(
                                feed.name(),
                                switch (need.animals()) {
                                    case BULL -> "no published ration gives bulls straw; they winter on hay";
                                    case MATURE_COW ->
                                        "published straw rations are for cows at score 5 or better, and these are thinner";
                                    case BRED_HEIFER, FIRST_CALF_HEIFER, GROWING ->
                                        "published straw rations are for mature cows in good condition, and these still grow";
                                }),
                "Ask your nutritionist before they get any. If it is agreed, set how much under your limits.");
    }

    static boolean hasEnergyAndProtein(Feed feed) {
        return feed.composition().knows(Analyte.CP) && feed.composition().knows(Analyte.NEM);
    }

    private static Optional<LeftOut> nitrate(Feed feed, NitrateFed fed, DietOptions options) {
        return switch (fed.how()) {
            case FREE, MIXED, SECOND -> Optional.empty();
            case UNKNOWN ->
                Optional.of(new LeftOut(
                        feed,
                        true,
                        "%s is left out because it was not tested for nitrate".formatted(feed.name()),
                        "Sample it and ask the laboratory for nitrate before any goes to cattle; ask your veterinarian about"
                                + " limits where you are."));
            case OUT ->
                Optional.of(new LeftOut(
                        feed,
                        true,
                        "%s is left out because its nitrate, %,.0f ppm NO3-N%s, is in the strictest published do-not-feed class, however it is mixed"
                                .formatted(feed.name(), fed.found(), withWater(fed)),
                        "Talk with your veterinarian and the laboratory before any of it is fed."));
            case NEEDS_A_MIXER ->
                Optional.of(
                        new LeftOut(
                                feed,
                                true,
                                "%s is left out because its nitrate, %,.0f ppm NO3-N%s, is too high to feed unmixed, and %s"
                                        .formatted(
                                                feed.name(),
                                                fed.found(),
                                                withWater(fed),
                                                options.mixing() == Mixing.NOT_SAID
                                                        ? "nobody said whether this outfit can mix"
                                                        : "there is no mixer wagon to dilute it"),
                                options.mixing() == Mixing.NOT_SAID
                                        ? "Say under the settings whether there is a mixer wagon. Only real mixing dilutes nitrate."
                                        : "Only real mixing dilutes nitrate; feeding it on alternate days does not. Ask your veterinarian."));
        };
    }

    private static String withWater(NitrateFed fed) {
        return fed.water() >= 1 ? " with %,.0f of it from the water".formatted(fed.water()) : "";
    }

    private static LeftOut unknown(Feed feed, String what) {
        return new LeftOut(
                feed,
                false,
                "%s is left out because nothing says its %s".formatted(feed.name(), what),
                "Enter a report, the feed tag, or choose a row of the feed book that has it.");
    }
}
