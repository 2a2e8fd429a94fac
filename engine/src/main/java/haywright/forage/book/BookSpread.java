package haywright.forage.book;

import haywright.forage.Analyte;
import haywright.forage.Marginal;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/**
 * How far lots of a feed differ where no kind of lot stands for it: by the standard deviation between samples that a row
 * of the feed book prints. Samples of all makers and years, with sampling and laboratory noise in them, so it is rather
 * too wide than too narrow for one lot. How the figures hang together is not printed: each is taken alone.
 */
public final class BookSpread {
    /** Parts that are never below 0 and can be next to nothing: on the logarithm, as in the kinds. */
    private static final Set<Analyte> ON_LOGARITHM =
            EnumSet.of(Analyte.CA, Analyte.P, Analyte.LIGNIN, Analyte.FAT, Analyte.STARCH);

    private BookSpread() {}

    public static Optional<Prior> prior(FeedBook.Row row) {
        return lender(row)
                .map(lender -> {
                    var cells = new ArrayList<Prior.Cell>();
                    for (var spread : lender.spread().entrySet()) {
                        var known = row.composition().values().get(spread.getKey());
                        var theirs = lender.composition().values().get(spread.getKey());
                        if (known != null && theirs != null && known.value() > 0 && theirs.value() > 0) {
                            cells.add(cell(spread, known.value(), theirs.value(), row, lender));
                        }
                    }
                    return Prior.ofBook(row, cells);
                })
                .filter(prior -> !prior.cells().isEmpty());
    }

    /** The row itself, else the first of the same feed whose source prints spreads. */
    private static Optional<FeedBook.Row> lender(FeedBook.Row row) {
        return row.spread().isEmpty()
                ? FeedBook.published().rows(row.feedClass()).stream()
                        .filter(r ->
                                r.group().equals(row.group()) && !r.spread().isEmpty())
                        .findFirst()
                : Optional.of(row);
    }

    private static Prior.Cell cell(
            Map.Entry<Analyte, Double> spread, double middle, double theirs, FeedBook.Row row, FeedBook.Row lender) {
        var analyte = spread.getKey();
        boolean log = ON_LOGARITHM.contains(analyte);
        double relative = spread.getValue() / theirs;
        double sd = log ? Math.sqrt(StrictMath.log1p(relative * relative)) : spread.getValue();
        var count = lender.samples().isPresent()
                ? " of %.0f samples".formatted(lender.samples().getAsDouble())
                : "";
        return new Prior.Cell(
                analyte,
                Marginal.ofScale(new Marginal(middle, sd, log).withMean(middle), sd, log),
                "feed book%s: spread%s".formatted(lender == row ? "" : " row " + lender.id(), count),
                "feed book row " + lender.id(),
                lender.source());
    }
}
