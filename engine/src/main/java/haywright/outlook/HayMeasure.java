package haywright.outlook;

import haywright.cattle.need.Need;
import haywright.diet.Feed;
import haywright.forage.Analyte;
import haywright.forage.FeedClass;
import haywright.forage.book.FeedBook;
import haywright.forage.lot.LotComposition;
import haywright.ranch.Lot;
import haywright.ranch.Ranch;
import haywright.ration.PricedFeed;
import haywright.sampling.stock.Stock;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/**
 * A hay of the ranch to measure energy by, as a rancher does.
 * <pre>
 * kg put out = (NEmn/NEm + NEgn/NEg)·k
 * </pre>
 * Energy only: what it takes of this hay alone, whether or not they could hold so much of it.
 *
 * @param id of the lot; empty for the book's
 * @param nem Mcal/kg of dry matter
 * @param neg Mcal/kg of dry matter
 * @param putOut kg as fed that go out for a kg of dry matter eaten, with what is lost in feeding
 */
public record HayMeasure(String id, String name, double nem, double neg, double putOut) {
    /** The lots of hay of a ranch with their energy, the one of most tons first; where there is none, the book's hay. */
    public static List<HayMeasure> of(Yard yard) {
        var own = own(yard);
        return own.isEmpty() ? of(book(yard)).stream().toList() : own;
    }

    /** The hays of a ranch mixed by the tons it has of each; where there is none, the book's hay. */
    static HayMeasure mixed(Yard yard) {
        var hays = of(yard);
        var tons =
                hays.stream().mapToDouble(hay -> kilograms(yard.ranch(), hay)).toArray();
        double all = Arrays.stream(tons).sum();
        if (hays.size() == 1 || !(all > 0)) {
            return hays.get(0);
        }
        double putOut = 0;
        double nem = 0;
        double neg = 0;
        double eaten = 0;
        for (int i = 0; i < tons.length; i++) {
            var hay = hays.get(i);
            double kilograms = tons[i] / hay.putOut;
            eaten += kilograms;
            putOut += tons[i];
            nem += kilograms * hay.nem;
            neg += kilograms * hay.neg;
        }
        return new HayMeasure("", "the hays of this ranch, by their tons", nem / eaten, neg / eaten, putOut / eaten);
    }

    private static double kilograms(Ranch ranch, HayMeasure hay) {
        return ranch.lots().values().stream()
                .filter(lot -> lot.id().toString().equals(hay.id))
                .mapToDouble(lot -> lot.stock().asFedKg().orElse(0))
                .sum();
    }

    private static PricedFeed book(Yard yard) {
        var kind = FeedClass.GRASS_HAY;
        var composition = LotComposition.ofTag(kind, FeedBook.published().usual(kind), "feed book", List.of());
        var feed = new Feed("", "the book’s usual grass hay", kind, composition.composition(), false);
        return eaten(yard, feed);
    }

    private static List<HayMeasure> own(Yard yard) {
        return yard.ranch().lots().values().stream()
                .filter(lot -> lot.feedClass().isHay() && !(lot.stock() instanceof Stock.Standing))
                .map(lot -> eaten(yard, yard.feed(lot)))
                .sorted((a, b) -> Double.compare(kilograms(yard.ranch(), b), kilograms(yard.ranch(), a)))
                .map(HayMeasure::of)
                .flatMap(Optional::stream)
                .toList();
    }

    /** Energy has no price: any does. */
    private static PricedFeed eaten(Yard yard, Feed feed) {
        return new PricedFeed(
                feed, 1, PricedFeed.dryMatterOf(feed), yard.ranch().settings().hayLossPercent());
    }

    private static Optional<Lot> lot(Ranch ranch, PricedFeed feed) {
        return ranch.lots().values().stream()
                .filter(lot -> lot.id().toString().equals(feed.feed().id()))
                .findFirst();
    }

    private static double kilograms(Ranch ranch, PricedFeed feed) {
        return lot(ranch, feed).orElseThrow().stock().asFedKg().orElse(0);
    }

    private static Optional<HayMeasure> of(PricedFeed feed) {
        var composition = feed.feed().composition();
        var nem = composition.value(Analyte.NEM);
        var neg = composition.value(Analyte.NEG);
        return nem.isEmpty() || neg.isEmpty()
                ? Optional.empty()
                : Optional.of(new HayMeasure(
                        feed.feed().id(), feed.feed().name(), nem.orElseThrow(), neg.orElseThrow(), feed.putOut(1)));
    }

    /** Kilograms put out for so many Mcal of NEm. */
    public double forMaintenance(double mcal) {
        return mcal / nem * putOut;
    }

    /** Kilograms put out for so many Mcal of NEg. */
    public double forGain(double mcal) {
        return mcal / neg * putOut;
    }

    /** Kilograms put out a head and day. */
    public double of(Need need) {
        return forMaintenance(need.nem()) + (need.neg() > 0 ? forGain(need.neg()) : 0);
    }
}
