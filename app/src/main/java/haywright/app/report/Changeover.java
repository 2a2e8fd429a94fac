package haywright.app.report;

import static haywright.feeding.ChangeDays.MORE_GRAIN;
import static haywright.feeding.ChangeDays.QUARTERS;

import haywright.app.words.Feeding;
import haywright.app.words.NumberWords;
import haywright.app.words.Show;
import haywright.feeding.ChangeDays;
import haywright.feeding.Offer;
import haywright.feeding.Offers;
import haywright.forage.FeedClass;
import haywright.quantity.Unit;
import haywright.ration.Portion;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.IntStream;

/**
 * What a group is put out while it changes over from what it gets now to its ration: a quarter of the ration in place of a
 * quarter of what it gets now at a time, as {@link ChangeDays} has it.
 *
 * @param each days of a quarter
 * @param rows a feed each, the ration's first
 */
public record Changeover(int each, List<Row> rows) {
    /** New feeds that a sentence names; of more the table has the names. */
    private static final int MOST_NAMED = 2;

    /** Pounds of grain more whose steps are said: of less each quarter is but a handful. */
    private static final double SAID = 1.5;

    public Changeover {
        rows = List.copyOf(rows);
    }

    /** {@code Days 1–3}, over the columns of {@link Row#pounds}. */
    public List<String> days() {
        return IntStream.range(0, QUARTERS)
                .mapToObj(i -> i == QUARTERS - 1
                        ? "Day %d on".formatted(i * each + 1)
                        : "Days %d–%d".formatted(i * each + 1, (i + 1) * each))
                .toList();
    }

    /** @param pounds a day for the whole group, by {@link #days} */
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
        double grain = grain(then.get()) - grain(now.get());
        if (before.keySet().containsAll(after.keySet()) && grain <= MORE_GRAIN) {
            return Optional.empty();
        }
        var feeds = new LinkedHashMap<>(after);
        before.forEach(feeds::putIfAbsent);
        var rows = new ArrayList<Row>();
        feeds.forEach((feed, ignored) -> {
            double from = before.getOrDefault(feed, 0.0);
            double to = after.getOrDefault(feed, 0.0);
            var pounds = new ArrayList<String>();
            for (int step = 1; step <= QUARTERS; step++) {
                double share = (double) step / QUARTERS;
                pounds.add(Show.number((1 - share) * from + share * to, 0));
            }
            rows.add(new Row(feed, pounds));
        });
        return Optional.of(new Changeover(ChangeDays.each(grain), rows));
    }

    /** Pounds a head, as printed. */
    private static double grain(Offer offer) {
        return offer.mix().portions().stream()
                .filter(portion -> portion.feed().feed().feedClass() == FeedClass.GRAIN)
                .mapToDouble(portion -> Unit.POUND.fromBase(portion.kgPutOut()))
                .sum();
    }

    /** The same in sentences, for a page without that table; empty where nothing in the ration is new to them. */
    static List<String> words(Offers offers, Function<Portion, String> called) {
        var then = offers.sure();
        if (then.isEmpty()) {
            return List.of();
        }
        var now = offers.now();
        double before = now.map(Changeover::grain).orElse(0.0);
        double grain = grain(then.get()) - before;
        int each = ChangeDays.each(grain);
        var days = NumberWords.of(ChangeDays.all(each));
        var step = NumberWords.of(each);
        if (now.isEmpty()) {
            return List.of("If any of this is new to them, take %s days: trade a quarter every %s.%s"
                    .formatted(days, step, steps(before, grain)));
        }
        var fresh = called(then.get(), now.get(), called);
        if (fresh.isEmpty() && grain <= MORE_GRAIN) {
            return List.of();
        }
        if (!now.get().mix().notAllowed().isEmpty()) {
            return List.of("New: %s. What they get now must stop, and a change takes days: call first."
                    .formatted(PlainLimits.list(fresh)));
        }
        var stops = called(now.get(), then.get(), called);
        return List.of((fresh.isEmpty()
                        ? "More grain than now."
                        : fresh.size() > MOST_NAMED
                                ? "Most of these feeds are new to them."
                                : "New: %s.".formatted(PlainLimits.list(fresh)))
                + (stops.isEmpty()
                        ? ""
                        : " %s %s.".formatted(PlainLimits.list(stops), stops.size() > 1 ? "stop" : "stops"))
                + " Change over in %s days: trade a quarter every %s.".formatted(days, step)
                + steps(before, grain));
    }

    /** Feeds of one that the other has not, a loose mineral aside. */
    private static List<String> called(Offer one, Offer other, Function<Portion, String> called) {
        var known = other.mix().portions().stream()
                .map(portion -> portion.feed().feed().id())
                .toList();
        return one.mix().portions().stream()
                .filter(portion -> !portion.feed().feed().isLooseMineral()
                        && !known.contains(portion.feed().feed().id()))
                .map(called)
                .toList();
    }

    /** {@code  Grain in pounds: half, one, one and a half, then all.} In words: the page holds no more figures. */
    private static String steps(double before, double more) {
        if (more < SAID) {
            return "";
        }
        return IntStream.range(1, QUARTERS)
                .mapToObj(quarter ->
                        NumberWords.halves(Math.max(1, Math.floor(2 * (before + more * quarter / QUARTERS))) / 2))
                .map(words -> words.equals("half a") ? "half" : words)
                .distinct()
                .collect(Collectors.joining(", ", " Grain in pounds: ", ", then all."));
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
