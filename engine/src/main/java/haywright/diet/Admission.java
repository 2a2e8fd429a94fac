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
        return Optional.empty();
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
