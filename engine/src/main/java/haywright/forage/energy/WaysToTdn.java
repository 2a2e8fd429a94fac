package haywright.forage.energy;

import haywright.forage.Analyte;
import haywright.forage.FeedClass;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.OptionalDouble;
import java.util.function.Function;

/**
 * TDN of one feed by every published equation that what was measured of it allows. They differ by more than laboratories
 * do, so a report's TDN means little until somebody says which one it is.
 */
public final class WaysToTdn {
    private WaysToTdn() {}

    /**
     * @param id as a document and a topic write it: {@code grass-98}, {@code nrc-2001-summative}
     * @param name the equation in words: "the line “Grass, Penn State”"
     */
    public record Way(String id, String name, Tdn tdn) {}

    /**
     * By the equations that were made for such a feed, the least first: what is promised by it is promised by all.
     *
     * @param measured of the feed on dry matter, in each analyte's unit
     */
    public static List<Way> fitting(FeedClass feedClass, Function<Analyte, OptionalDouble> measured) {
        return of(
                feedClass,
                measured,
                AdfEquation.published().stream()
                        .filter(line -> line.fits().contains(feedClass))
                        .toList());
    }

    /** By any equation at all: a laboratory may take one that was made for another feed. */
    public static List<Way> any(FeedClass feedClass, Function<Analyte, OptionalDouble> measured) {
        return of(feedClass, measured, AdfEquation.published());
    }

    private static List<Way> of(
            FeedClass feedClass, Function<Analyte, OptionalDouble> measured, List<AdfEquation> lines) {
        var ways = new ArrayList<Way>();
        measured.apply(Analyte.ADF)
                .ifPresent(adf -> lines.forEach(
                        line -> ways.add(new Way(line.id(), "the line “" + line.name() + "”", new AdfTdn(line, adf)))));
        summative(feedClass, measured, ways);
        ways.sort(Comparator.comparingDouble(way -> way.tdn().percent()));
        return ways;
    }

    private static void summative(FeedClass feedClass, Function<Analyte, OptionalDouble> measured, List<Way> ways) {
        var known = Fractions.of(measured);
        if (known.isEmpty()) {
            return;
        }
        var fractions = known.get();
        var kind = feedClass.isForage() ? SummativeTdn.Kind.FORAGE : SummativeTdn.Kind.CONCENTRATE;
        ways.add(new Way(
                "nrc-2001-summative", "the summative equation of NRC 2001", new SummativeTdn(fractions, kind, 1)));
        var ndfd = measured.apply(Analyte.NDFD);
        if (ndfd.isPresent()) {
            ways.add(new Way(
                    "nrc-2001-summative-ndfd",
                    "the summative equation of NRC 2001 with the fiber’s own digestibility",
                    new SummativeTdn(fractions, kind, 1, ndfd)));
        }
        ways.add(new Way("weiss-1992", "the summative equation of Weiss 1992", new WeissTdn(fractions)));
    }
}
