package haywright.season.given;

import haywright.diet.Diet;
import haywright.forage.Analyte;
import haywright.forage.Made;
import java.util.List;

/**
 * Energy and protein of every feed of a season, in its order: as expected, or one of the ways the feeds may be made.
 *
 * @param nem Mcal in a kg of dry matter. @param neg Mcal. @param cp share of dry matter
 */
@SuppressWarnings("ArrayRecordComponent")
public record Energies(double[] nem, double[] neg, double[] cp) {
    public static Energies expected(List<SeasonFeed> feeds) {
        return of(
                feeds,
                feeds.stream()
                        .map(feed -> (Made) feed.priced().feed().composition())
                        .toList());
    }

    public static Energies of(List<SeasonFeed> feeds, List<? extends Made> made) {
        var nem = new double[feeds.size()];
        var neg = new double[feeds.size()];
        var cp = new double[feeds.size()];
        for (int f = 0; f < nem.length; f++) {
            var feed = feeds.get(f).priced().feed();
            nem[f] = Diet.value(feed, made.get(f), Analyte.NEM);
            neg[f] = Diet.value(feed, made.get(f), Analyte.NEG);
            cp[f] = Diet.value(feed, made.get(f), Analyte.CP) / 100;
        }
        return new Energies(nem, neg, cp);
    }
}
