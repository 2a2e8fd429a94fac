package haywright.diet;

import haywright.cattle.Need;
import haywright.forage.Analyte;
import haywright.forage.FeedClass;
import java.util.Optional;

/** Which feeds may be in a diet at all. */
final class Admission {
    private Admission() {}

    static Optional<LeftOut> reasonToLeaveOut(Feed feed, Need need, DietOptions options) {
        var nitrate = feed.composition().value(Analyte.NO3N);
        if (nitrate.isEmpty() && feed.nitrateDanger()) {
            return Optional.of(new LeftOut(
                    feed,
                    true,
                    "%s is left out because its nitrate is not known".formatted(feed.name()),
                    "Sample it and ask the laboratory for nitrate before any goes to cattle; ask your veterinarian about"
                            + " limits where you are."));
        }
        if (nitrate.isPresent() && nitrate.getAsDouble() > PracticeLimits.NITRATE_DO_NOT_FEED) {
            return Optional.of(new LeftOut(
                    feed,
                    true,
                    "%s is left out because its nitrate is in the strictest published do-not-feed class, however it is"
                                    .formatted(feed.name())
                            + " mixed",
                    "Talk with your veterinarian and the laboratory before any of it is fed."));
        }
        if (nitrate.isPresent() && !options.mixed() && nitrate.getAsDouble() > PracticeLimits.nitrateLimit(need)) {
            return Optional.of(new LeftOut(
                    feed,
                    true,
                    "%s is left out because its nitrate is too high to feed alone, and there is no mixer wagon to dilute it"
                            .formatted(feed.name()),
                    "Only real mixing dilutes nitrate; feeding it on alternate days does not. Ask your veterinarian."));
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

    private static LeftOut unknown(Feed feed, String what) {
        return new LeftOut(
                feed,
                false,
                "%s is left out because nothing says its %s".formatted(feed.name(), what),
                "Put in a report, the feed tag, or choose a row of the feed book that has it.");
    }
}
