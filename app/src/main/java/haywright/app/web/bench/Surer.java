package haywright.app.web.bench;

import haywright.app.words.Show;
import haywright.app.words.ration.LimitWords;
import haywright.outlook.Yard;
import haywright.ration.Doubts;
import haywright.ration.PricedFeed;
import haywright.ration.Ration;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.UUID;

/** What would make a ration surer: its least sure limit, then what its doubt is made of, the most of it first. */
final class Surer {
    /** Sentences beside the first. */
    private static final int MOST = 2;

    /** Of the doubt, percent, below which it is not worth a sentence. */
    private static final double LEAST = 5;

    private Surer() {}

    static List<String> of(Yard yard, Ration ration) {
        var all = Doubts.of(ration);
        if (all.isEmpty()) {
            return List.of();
        }
        var least = all.get(0);
        var name = LimitWords.start(least.row());
        var words = new ArrayList<String>();
        words.add("%s is the least sure: met %s times in 100.".formatted(name, Show.number(least.surePercent(), 0)));
        var shrinks = new EnumMap<Doubts.Shrinks, Double>(Doubts.Shrinks.class);
        least.parts().forEach(part -> shrinks.merge(part.shrinks(), part.sharePercent(), Double::sum));
        var told = new ArrayList<Doubts.Shrinks>();
        for (var part : least.parts()) {
            // the ways to TDN have one remedy and are told as one
            boolean together = part.shrinks() == Doubts.Shrinks.CONDITION_SCORES;
            double share = together ? shrinks.getOrDefault(part.shrinks(), 0.0) : part.sharePercent();
            if (words.size() <= MOST && share >= LEAST && !(together && told.contains(part.shrinks()))) {
                words.add("%s %% of that doubt is %s".formatted(Show.number(share, 0), says(yard, part)));
                told.add(part.shrinks());
            }
        }
        return words;
    }

    private static String says(Yard yard, Doubts.Doubt doubt) {
        return switch (doubt.shrinks()) {
            case SAMPLE -> doubt.feed().map(feed -> sample(yard, feed)).orElse("");
            case OTHER_LABORATORY ->
                "how far all results of one laboratory may be off. A test at another laboratory would shrink it.";
            case CONDITION_SCORES ->
                "the way TDN is figured. No test shrinks it: score their condition through the winter.";
        };
    }

    private static String sample(Yard yard, PricedFeed feed) {
        var name = feed.feed().name().substring(0, 1).toLowerCase(Locale.ROOT)
                + feed.feed().name().substring(1);
        boolean tested =
                !yard.ranch().reportsOn(UUID.fromString(feed.feed().id())).isEmpty();
        return !feed.own()
                ? "how loads of %s differ. A test of the load would shrink it.".formatted(name)
                : tested
                        ? "the %s itself. Another sample of it would shrink it.".formatted(name)
                        : "the %s, which was not tested. A test would shrink it.".formatted(name);
    }
}
