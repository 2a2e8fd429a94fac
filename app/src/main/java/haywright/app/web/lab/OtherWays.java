package haywright.app.web.lab;

import haywright.app.words.Show;
import haywright.forage.Analyte;
import haywright.forage.Composition;
import haywright.forage.FeedClass;
import haywright.forage.HayMarketClass;
import haywright.forage.energy.NonFiber;
import haywright.forage.energy.WaysToTdn;
import haywright.workings.Source;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;
import java.util.function.Function;

/**
 * What the other published ways make of what was measured, the stricter first: TDN by every equation that was made for
 * such a feed, what is left for sugars and starch, the class a hay market would put it in.
 *
 * @param title what it comes to
 */
public record OtherWays(String title, List<HazardView.Line> says, String then) {
    /** @param toTdn as the lot's own choice of TDN has them, so that a page gives one set of figures */
    static List<OtherWays> of(FeedClass feedClass, Composition made, List<WaysToTdn.Way> toTdn) {
        Function<Analyte, OptionalDouble> measured = HazardView.measured(made)::value;
        var ways = new ArrayList<OtherWays>();
        tdn(toTdn, ways);
        nonFiber(measured, ways);
        market(feedClass, measured, ways);
        return ways;
    }

    private static void tdn(List<WaysToTdn.Way> found, List<OtherWays> ways) {
        if (found.size() < 2) {
            return;
        }
        var least = found.get(0).tdn().percent();
        var most = found.get(found.size() - 1).tdn().percent();
        ways.add(new OtherWays(
                "TDN by the equations for such feed: %s to %s"
                        .formatted(Show.number(least, 1), Figures.say(Analyte.TDN, most)),
                found.stream()
                        .map(way -> new HazardView.Line(
                                "%s by %s%s"
                                        .formatted(
                                                Figures.say(
                                                        Analyte.TDN, way.tdn().percent()),
                                                way.name(),
                                                way.tdn()
                                                        .residual()
                                                        .map(r -> ", give or take %s points".formatted(r.said()))
                                                        .orElse("")),
                                HazardView.from(source(way))))
                        .toList(),
                "They differ by more than laboratories do. Compare two hays by the same one."));
    }

    static Source source(WaysToTdn.Way way) {
        var lines = way.tdn().lines();
        return lines.get(lines.size() - 1).source();
    }

    private static void nonFiber(Function<Analyte, OptionalDouble> measured, List<OtherWays> ways) {
        NonFiber.of(measured).ifPresent(counted -> {
            double whole = Math.max(0, counted.whole());
            ways.add(new OtherWays(
                    "Sugar, starch and pectin (NFC): %s to %s"
                            .formatted(Show.number(whole, 1), Figures.say(Analyte.NFC, counted.free())),
                    List.of(
                            new HazardView.Line(
                                    Figures.say(Analyte.NFC, whole) + " with the whole NDF taken off",
                                    HazardView.from(NonFiber.WHOLE)),
                            new HazardView.Line(
                                    Figures.say(Analyte.NFC, counted.free())
                                            + " with the protein in the NDF counted once"
                                            + (counted.ndicp().isEmpty() ? ", taken for 7 % of NDF" : ""),
                                    HazardView.from(NonFiber.FREE))),
                    ""));
        });
    }

    private static void market(FeedClass feedClass, Function<Analyte, OptionalDouble> measured, List<OtherWays> ways) {
        var classes = HayMarketClass.of(feedClass, measured);
        if (classes.isEmpty()) {
            return;
        }
        ways.add(new OtherWays(
                "On a hay market: " + classes.get(0).grade().words().toLowerCase(Locale.ROOT),
                classes.stream()
                        .map(c -> new HazardView.Line(
                                "%s by its %s"
                                        .formatted(
                                                c.grade().words(),
                                                c.figure().words().toLowerCase(Locale.ROOT)),
                                HazardView.from(c.source())))
                        .toList(),
                "Buyers look at color, mold and weeds too, and a class is no price."));
    }
}
