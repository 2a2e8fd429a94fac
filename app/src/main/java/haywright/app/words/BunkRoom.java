package haywright.app.words;

import haywright.cattle.AnimalClass;
import haywright.diet.WayOfFeeding;
import haywright.feeding.Offers;
import haywright.forage.FeedClass;
import haywright.ranch.Wishes;
import java.util.Optional;

/**
 * Room at the bunk for all at once, where grain, cake or a limited feed goes into one: the strong ones eat what the others
 * have no room for.
 *
 * @see "High Grain Rations, National Drought Mitigation Center, University of Nebraska: 24 to 36 inches a cow (read)"
 */
public final class BunkRoom {
    private static final int LEAST_INCHES = 24;
    private static final int MOST_INCHES = 36;

    /** Of weaned calves; common practice, from memory. */
    private static final int LEAST_OF_CALVES = 18;

    private static final int MOST_OF_CALVES = 22;
    private static final double INCHES_A_FOOT = 12;

    private BunkRoom() {}

    /** {@code Bunk room for all at once: 24 to 36 inches a head, at least 90 feet for 45 head.}; empty for most. */
    public static Optional<String> words(Offers offers) {
        var group = offers.group();
        var ranch = offers.yard().ranch();
        var wishes = ranch.wishes().getOrDefault(group.id(), Wishes.none(group.id()));
        boolean isLimited = wishes.way() == WayOfFeeding.LIMIT_FED;
        boolean inBunks = ranch.outfit().feedsInBunks() || wishes.isInABunk();
        boolean isConcentrate = offers.sure().or(offers::now).stream()
                .flatMap(offer -> offer.mix().portions().stream())
                .map(portion -> portion.feed().feed())
                .anyMatch(feed -> !feed.feedClass().isForage() && feed.feedClass() != FeedClass.MINERAL);
        boolean isGrowing = group.animals() == AnimalClass.GROWING;
        return isLimited || inBunks && isConcentrate
                ? Optional.of("Bunk room for all at once: %d to %d inches a head, at least %s feet for %s head."
                        .formatted(
                                isGrowing ? LEAST_OF_CALVES : LEAST_INCHES,
                                isGrowing ? MOST_OF_CALVES : MOST_INCHES,
                                Show.number(feet(group.head(), isGrowing), 0),
                                Show.number(group.head(), 0)))
                : Optional.empty();
    }

    /** Feet that so many head need at least. */
    static double feet(int head, boolean isGrowing) {
        return Math.ceil(head * (isGrowing ? LEAST_OF_CALVES : LEAST_INCHES) / INCHES_A_FOOT);
    }
}
