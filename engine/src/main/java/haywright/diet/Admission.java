package haywright.diet;

import haywright.cattle.Need;
import haywright.forage.Analyte;
import haywright.forage.FeedClass;
import java.util.Optional;

/** Which feeds may be in a diet at all. */
final class Admission {
    private Admission() {}

    static Optional<LeftOut> reasonToLeaveOut(Feed feed, Need need, DietOptions options) {
        var found = feed.composition().value(Analyte.NO3N).orElse(0);
        double lot = feed.composition().dangerOfLot(Analyte.NO3N).orElse(0);
        double unit = feed.composition().dangerOfUnit(Analyte.NO3N).orElse(0);
        if (feed.nitrateDanger() && !feed.composition().knows(Analyte.NO3N)) {
            return Optional.of(new LeftOut(
                    feed,
                    true,
                    "%s is left out because its nitrate is not known".formatted(feed.name()),
                    "Sample it and ask the laboratory for nitrate before any goes to cattle; ask your veterinarian about"
                            + " limits where you are."));
        }
        if (lot > PracticeLimits.NITRATE_DO_NOT_FEED) {
            return Optional.of(new LeftOut(
                    feed,
                    true,
                    "%s is left out because its nitrate%s is in the strictest published do-not-feed class, however it is mixed"
                            .formatted(feed.name(), atTheTop(found, lot, "one such lot")),
                    "Talk with your veterinarian and the laboratory before any of it is fed."));
        }
        if (!options.mixed() && unit > PracticeLimits.nitrateLimit(need)) {
            return Optional.of(new LeftOut(
                    feed,
                    true,
                    "%s is left out because its nitrate%s is too high to feed alone, and there is no mixer wagon to dilute it"
                            .formatted(feed.name(), atTheTop(found, unit, "one bale or load")),
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

    /** What was found may lie well below what is there. */
    private static String atTheTop(double found, double most, String one) {
        return most > found
                ? ", found at %,.0f ppm and more than %,.0f in %s of a hundred,".formatted(found, most, one)
                : "";
    }

    private static LeftOut unknown(Feed feed, String what) {
        return new LeftOut(
                feed,
                false,
                "%s is left out because nothing says its %s".formatted(feed.name(), what),
                "Put in a report, the feed tag, or choose a row of the feed book that has it.");
    }
}
