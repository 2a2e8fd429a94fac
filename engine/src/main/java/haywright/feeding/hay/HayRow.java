package haywright.feeding.hay;

import haywright.diet.CheckedNeed;
import haywright.feeding.ColdSnap;
import haywright.forage.FeedClass;
import haywright.quantity.Unit;
import haywright.ration.PricedFeed;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import org.jspecify.annotations.Nullable;

/**
 * What one head gets on each of some days, all of it on the same day. Its pounds are those that are printed, so that head
 * times pounds times days are its tons with a pencil.
 *
 * @param inMilk whether it is for those that have calved, or for the others
 * @param head whole head on an average day of these
 * @param from the first of these days. @param until the last
 * @param feeds kg as fed a head and day, waste included
 * @param below by row, the share that it is below a usual limit of the bench, and of what is fed beyond one how far beyond;
 *     empty where it keeps them all
 * @param inTwoFeedings whether it has more grain than one feeding may have
 * @param changes how they come onto it; empty where nothing that has to be stepped rises
 * @param onlyMixed lots that may not be fed to them alone for their nitrate
 * @param nitrate share of the line of these cattle that the whole of it comes to
 * @param isStretched whether it is for mature cows in good condition, whose hay is limited or grained for it
 * @param magnesium where these feeds may have too little of it, or of those about to calve the feeds after it; else null
 * @param isLimited whether their hay is limited
 * @param cold what colder days take on top; null where it is not known
 */
public record HayRow(
        boolean inMilk,
        int head,
        LocalDate from,
        LocalDate until,
        Map<PricedFeed, Double> feeds,
        Map<String, Double> below,
        boolean inTwoFeedings,
        List<HayChange> changes,
        List<PricedFeed> onlyMixed,
        double nitrate,
        boolean isStretched,
        @Nullable CheckedNeed magnesium,
        boolean isLimited,
        @Nullable ColdSnap cold) {
    private static final int TENTHS = 10;

    /** Of a tenth, for what is one but for its last digit. */
    private static final double ROUND = 1e-6;

    public HayRow {
        changes = List.copyOf(changes);
        onlyMixed = List.copyOf(onlyMixed);
    }

    HayRow withMagnesium(CheckedNeed need) {
        return new HayRow(
                inMilk,
                head,
                from,
                until,
                feeds,
                below,
                inTwoFeedings,
                changes,
                onlyMixed,
                nitrate,
                isStretched,
                need,
                isLimited,
                cold);
    }

    /** What may be fed alone by its report, though single bales of its kind may be over the line. */
    public List<PricedFeed> baleByBale() {
        return feeds.keySet().stream()
                .filter(feed -> feed.feed().feedClass().isHay() && ColdSnap.gathersNitrate(feed))
                .filter(feed -> !onlyMixed.contains(feed) && pounds(Objects.requireNonNull(feeds.get(feed))) > 0)
                .toList();
    }

    /** kg of grain a head and day. */
    public double grain() {
        return HayChange.grain(feeds);
    }

    /** Days that it is fed. */
    public int days() {
        return (int) from.until(until, ChronoUnit.DAYS) + 1;
    }

    /** As printed, to a tenth and never over: what is at a limit, or takes the last of a lot, stays so. */
    public static double pounds(double kg) {
        return Math.floor(TENTHS * Unit.POUND.fromBase(kg) + ROUND) / TENTHS;
    }

    /** As printed, to a tenth. */
    public static double ounces(double kg) {
        return Math.rint(TENTHS * Unit.OUNCE.fromBase(kg)) / TENTHS;
    }

    /** Of a feed, whatever is lost of it here, to all head on all days, by the pounds or ounces that are printed. */
    public double tons(PricedFeed feed) {
        double kg = feeds.entrySet().stream()
                .filter(e -> e.getKey().feed().id().equals(feed.feed().id()))
                .mapToDouble(Map.Entry::getValue)
                .sum();
        double each = isInOunces(feed) ? Unit.OUNCE.toBase(ounces(kg)) : Unit.POUND.toBase(pounds(kg));
        return Unit.TON.fromBase(head * days() * each);
    }

    /** Whether it is printed in ounces. */
    public static boolean isInOunces(PricedFeed feed) {
        return feed.feed().feedClass() == FeedClass.MINERAL;
    }
}
