package haywright.feeding.hay;

import haywright.feeding.ChangeDays;
import haywright.feeding.ColdSnap;
import haywright.forage.FeedClass;
import haywright.quantity.Unit;
import haywright.ration.PricedFeed;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Predicate;

/**
 * How cattle come onto a row that has more grain, cake, by-product, straw or silage than they had, or another kind of hay: by quarters, as
 * {@link ChangeDays} has it. It begins as long before the row as it ends after its first day, so that what the quarters take
 * less of each feed is what they took more: the row’s tons stand. What they get now is changed from today on, and a cow’s at
 * calving from her own day.
 *
 * @param atCalving whether each cow changes from the day that she calves
 * @param from the first day of the first quarter; of one at calving the first that may be
 * @param each days of a quarter
 * @param grainBefore pounds a head. @param grain pounds a head once all is fed
 * @param more what they get over a pound more of than before, by name
 * @param stops what they get now that is a danger to them, by name: it stays in for no day of the change
 */
public record HayChange(
        boolean atCalving,
        LocalDate from,
        int each,
        double grainBefore,
        double grain,
        List<String> more,
        List<String> stops) {
    /** Pounds of another kind of hay from which it is a change of feed (judgment). */
    private static final double MORE_HAY = 4;

    public HayChange {
        more = List.copyOf(more);
        stops = List.copyOf(stops);
    }

    /**
     * Empty where nothing that has to be stepped rises by more than a step, and nothing has to stop.
     *
     * @param before kg put out; empty where nobody said it. @param after kg put out
     * @param row its first day
     * @param stops names of what they get before and must not
     */
    static Optional<HayChange> of(
            boolean atCalving,
            Map<PricedFeed, Double> before,
            Map<PricedFeed, Double> after,
            LocalDate row,
            LocalDate today,
            List<String> stops) {
        var more = after.entrySet().stream()
                .filter(e -> {
                    var feed = e.getKey();
                    double rises = e.getValue()
                            - kg(
                                    before,
                                    one -> one.feed().id().equals(feed.feed().id()));
                    return isStepped(feed)
                            ? Unit.POUND.fromBase(rises) > ChangeDays.MORE_GRAIN
                            : feed.feed().feedClass().isHay()
                                    && Unit.POUND.fromBase(rises) > MORE_HAY
                                    && isAnother(feed, before, after);
                })
                .map(e -> e.getKey().feed().name())
                .toList();
        double grain = Unit.POUND.fromBase(grain(after));
        double was = Unit.POUND.fromBase(grain(before));
        int each = ChangeDays.each(grain - was);
        var early = row.minusDays((ChangeDays.QUARTERS - 1) * each / 2);
        return more.isEmpty() && stops.isEmpty()
                ? Optional.empty()
                : Optional.of(new HayChange(
                        atCalving,
                        atCalving ? row : early.isBefore(today) ? today : early,
                        each,
                        was,
                        grain,
                        more,
                        stops));
    }

    /** kg put out. */
    static double grain(Map<PricedFeed, Double> fed) {
        return kg(fed, feed -> feed.feed().feedClass() == FeedClass.GRAIN);
    }

    private static double kg(Map<PricedFeed, Double> fed, Predicate<PricedFeed> of) {
        return fed.entrySet().stream()
                .filter(e -> of.test(e.getKey()))
                .mapToDouble(Map.Entry::getValue)
                .sum();
    }

    /** Whether hay is of a kind that they had little of, or one whose nitrate they have to get used to. */
    private static boolean isAnother(PricedFeed hay, Map<PricedFeed, Double> before, Map<PricedFeed, Double> after) {
        Predicate<PricedFeed> alike =
                feed -> feed.feed().feedClass() == hay.feed().feedClass();
        return ColdSnap.gathersNitrate(hay)
                || !before.isEmpty() && Unit.POUND.fromBase(kg(after, alike) - kg(before, alike)) > MORE_HAY;
    }

    private static boolean isStepped(PricedFeed feed) {
        return HayQuestions.isBeside(feed)
                || feed.isHayOrSilage() && !feed.feed().feedClass().isHay();
    }

    /** The first day on which all of it is fed; of one at calving, of a cow that calves on the first. */
    public LocalDate full() {
        return from.plusDays(ChangeDays.all(each) - 1L);
    }
}
