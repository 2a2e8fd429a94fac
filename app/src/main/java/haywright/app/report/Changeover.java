package haywright.app.report;

import haywright.app.words.Feeding;
import haywright.app.words.Show;
import haywright.feeding.Offer;
import haywright.feeding.Offers;
import haywright.ration.Portion;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Function;

/**
 * What a group is put out while it changes over from what it gets now to its ration: a quarter of the ration in place of a
 * quarter of what it gets now every three days, so that the rumen keeps up (common practice, no source).
 *
 * @param rows a feed each, the ration's first
 */
public record Changeover(List<Row> rows) {
    /** Over the columns of {@link Row#pounds}. */
    public static final List<String> DAYS = List.of("Days 1–3", "Days 4–6", "Days 7–9", "Day 10 on");

    /** New feeds that a sentence names; of more the table has the names. */
    private static final int MOST_NAMED = 2;

    public Changeover {
        rows = List.copyOf(rows);
    }

    /** @param pounds a day for the whole group, by {@link #DAYS} */
    public record Row(String feed, List<String> pounds) {
        public Row {
            pounds = List.copyOf(pounds);
        }
    }

    /**
     * Empty where nothing in the ration is new to the group, nobody said what it gets now, or what it gets now has to stop
     * today.
     */
    static Optional<Changeover> of(Offers offers) {
        var now = offers.now();
        var then = offers.sure();
        if (now.isEmpty() || then.isEmpty() || !now.get().mix().notAllowed().isEmpty()) {
            return Optional.empty();
        }
        int head = offers.group().head();
        var before = pounds(now.get(), head);
        var after = pounds(then.get(), head);
        if (before.keySet().containsAll(after.keySet())) {
            return Optional.empty();
        }
        var feeds = new LinkedHashMap<>(after);
        before.forEach(feeds::putIfAbsent);
        var rows = new ArrayList<Row>();
        feeds.forEach((feed, ignored) -> {
            double from = before.getOrDefault(feed, 0.0);
            double to = after.getOrDefault(feed, 0.0);
            var pounds = new ArrayList<String>();
            for (int step = 1; step <= DAYS.size(); step++) {
                double share = (double) step / DAYS.size();
                pounds.add(Show.number((1 - share) * from + share * to, 0));
            }
            rows.add(new Row(feed, pounds));
        });
        return Optional.of(new Changeover(rows));
    }

    /** The same in sentences, for a page without that table; empty where nothing in the ration is new to them. */
    static List<String> words(Offers offers, Function<Portion, String> called) {
        var then = offers.sure();
        if (then.isEmpty()) {
            return List.of();
        }
        var now = offers.now();
        if (now.isEmpty()) {
            return List.of(
                    "Take ten days to change over: a quarter more of this every three days.",
                    "Cut what they get now by a quarter every three days.");
        }
        var before = now.get().mix().portions().stream()
                .map(portion -> portion.feed().feed().id())
                .toList();
        var fresh = then.get().mix().portions().stream()
                .filter(portion -> !portion.feed().feed().isLooseMineral()
                        && !before.contains(portion.feed().feed().id()))
                .map(called)
                .toList();
        if (fresh.isEmpty()) {
            return List.of();
        }
        if (!now.get().mix().notAllowed().isEmpty()) {
            return List.of("New: %s. What they get now must stop, and a change takes days: call first."
                    .formatted(PlainLimits.list(fresh)));
        }
        return List.of((fresh.size() > MOST_NAMED
                        ? "Most of these feeds are new to them."
                        : "New: %s.".formatted(PlainLimits.list(fresh)))
                + " Change over in ten days: every three days trade a quarter of the old for new.");
    }

    /** Of all head a day as printed, by name; a loose mineral is no change. */
    private static Map<String, Double> pounds(Offer offer, int head) {
        var pounds = new LinkedHashMap<String, Double>();
        for (Portion portion : offer.mix().portions()) {
            if (!portion.feed().feed().isLooseMineral()) {
                pounds.merge(
                        portion.feed().feed().name(),
                        new Feeding(portion.kgPutOut(), head, OptionalDouble.empty()).groupPounds(),
                        Double::sum);
            }
        }
        return pounds;
    }
}
