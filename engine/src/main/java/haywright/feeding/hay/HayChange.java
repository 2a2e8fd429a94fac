package haywright.feeding.hay;

import haywright.feeding.ChangeDays;
import haywright.forage.FeedClass;
import haywright.quantity.Unit;
import haywright.ration.PricedFeed;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * How cattle come onto a row that has more grain, cake, by-product, straw or silage than they had: by quarters, as
 * {@link ChangeDays} has it. It begins as long before the row as it ends after its first day, so that what the quarters take
 * less of each feed is what they took more: the row’s tons stand. What they get now is changed from today on, and a cow’s at
 * calving from her own day.
 *
 * @param atCalving whether each cow changes from the day that she calves
 * @param from the first day of the first quarter; of one at calving the first that may be
 * @param each days of a quarter
 * @param grainBefore pounds a head. @param grain pounds a head once all is fed
 * @param more what they get over a pound more of than before, by name
 */
public record HayChange(
        boolean atCalving, LocalDate from, int each, double grainBefore, double grain, List<String> more) {
    public HayChange {
        more = List.copyOf(more);
    }

    /**
     * Empty where nothing that has to be stepped rises by more than a step.
     *
     * @param before kg put out by feed id. @param after kg put out
     * @param row its first day
     */
    static Optional<HayChange> of(
            boolean atCalving,
            Map<String, Double> before,
            Map<PricedFeed, Double> after,
            LocalDate row,
            LocalDate today,
            double grainBefore) {
        var more = after.entrySet().stream()
                .filter(e -> isStepped(e.getKey()))
                .filter(e -> Unit.POUND.fromBase(e.getValue()
                                - before.getOrDefault(e.getKey().feed().id(), 0.0))
                        > ChangeDays.MORE_GRAIN)
                .map(e -> e.getKey().feed().name())
                .toList();
        double grain = Unit.POUND.fromBase(grain(after));
        double was = Unit.POUND.fromBase(grainBefore);
        int each = ChangeDays.each(grain - was);
        var early = row.minusDays((ChangeDays.QUARTERS - 1) * each / 2);
        return more.isEmpty()
                ? Optional.empty()
                : Optional.of(new HayChange(
                        atCalving, atCalving ? row : early.isBefore(today) ? today : early, each, was, grain, more));
    }

    /** kg put out. */
    static double grain(Map<PricedFeed, Double> fed) {
        return fed.entrySet().stream()
                .filter(e -> e.getKey().feed().feedClass() == FeedClass.GRAIN)
                .mapToDouble(Map.Entry::getValue)
                .sum();
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
