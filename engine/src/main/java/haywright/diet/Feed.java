package haywright.diet;

import haywright.forage.Analyte;
import haywright.forage.Composition;
import haywright.forage.FeedClass;
import haywright.forage.Made;
import haywright.forage.lot.LotDistribution;
import haywright.forage.lot.Spread;
import haywright.workings.Origin;
import java.util.Optional;
import java.util.function.ToDoubleFunction;
import java.util.regex.Pattern;
import java.util.stream.DoubleStream;
import java.util.stream.Stream;

/**
 * A feed as a diet sees it.
 *
 * @param id the lot's or bought feed's id, unique in a diet
 * @param composition as it is expected
 * @param nitrateDanger a class or a year in which nitrate is a danger until it is tested
 * @param lot all that it may be made of; empty where its figures were given as they stand
 */
public record Feed(
        String id,
        String name,
        FeedClass feedClass,
        Composition composition,
        boolean nitrateDanger,
        Optional<LotDistribution> lot) {
    /**
     * Whether it is a mineral mix that they eat free choice, and no single salt or rock: two of calcium, phosphorus,
     * magnesium and sodium, none of them a quarter of it.
     */
    public boolean isLooseMineral() {
        var shares = Stream.of(Analyte.CA, Analyte.P, Analyte.MG, Analyte.NA)
                .flatMapToDouble(a -> composition.value(a).stream())
                .filter(share -> share > 0)
                .toArray();
        return feedClass == FeedClass.MINERAL
                && shares.length >= 2
                && DoubleStream.of(shares).allMatch(share -> share < PURE);
    }

    /** Wheat, rye or triticale, by its name or the row of the feed book that it is figured by. */
    public boolean isFastStarch() {
        return feedClass == FeedClass.GRAIN
                && (FAST.matcher(name).find()
                        || composition.values().values().stream()
                                .map(Composition.Known::origin)
                                .anyMatch(origin -> origin instanceof Origin.Published book
                                        && FAST.matcher(book.source().cite()).find()));
    }

    /** Percent as fed, or the usual of its kind where nothing says it. */
    double dryMatterPercent() {
        return composition.value(Analyte.DM).orElse(feedClass.usualDryMatterPercent());
    }

    /** How far one of its figures may lie; not at all where its figures were given as they stand. */
    public Spread spread(ToDoubleFunction<Made> figure) {
        return lot.map(all -> all.of(figure)).orElseGet(() -> Spread.certain(figure.applyAsDouble(composition)));
    }

    private static final Pattern FAST =
            Pattern.compile("\\b(wheat|rye|triticale)\\b(?! midd| mill| bran| straw| hay)", Pattern.CASE_INSENSITIVE);

    /** Percent of one element above which it is that salt or rock. */
    private static final double PURE = 25;

    /** Whose figures were given as they stand. */
    public Feed(String id, String name, FeedClass feedClass, Composition composition, boolean nitrateDanger) {
        this(id, name, feedClass, composition, nitrateDanger, Optional.empty());
    }
}
