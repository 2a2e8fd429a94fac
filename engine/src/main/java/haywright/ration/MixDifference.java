package haywright.ration;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.IntStream;

/**
 * Why one mix costs more or less than another, feed by feed: 3.1 lb less barley, 21 cents; 2 lb more hay, 10 cents. The
 * dollars of the parts are the whole difference, and so are their cents: those are rounded together, the largest
 * remainders up, so that they add up with a pencil.
 *
 * @param parts feeds of which there is another amount or that cost another price, what moves the cost most first
 * @param cents a head and day that the second mix costs more; below zero less
 */
public record MixDifference(List<Part> parts, long cents) {
    public MixDifference {
        parts = List.copyOf(parts);
    }

    /**
     * @param kgPutOut as fed, a head and day, that the second mix has more; below zero less
     * @param dollars a head and day that it costs more for it
     * @param cents the same, so that all parts add up
     */
    public record Part(PricedFeed feed, double kgPutOut, double dollars, long cents) {}

    public double dollars() {
        return parts.stream().mapToDouble(Part::dollars).sum();
    }

    /** From one mix to another, each feed at most once in each. */
    public static MixDifference between(List<Portion> from, List<Portion> to) {
        Map<String, Portion> before = new LinkedHashMap<>();
        Map<String, Portion> all = new LinkedHashMap<>();
        Map<String, Portion> after = new LinkedHashMap<>();
        from.forEach(p -> before.put(p.feed().feed().id(), p));
        to.forEach(p -> after.put(p.feed().feed().id(), p));
        all.putAll(before);
        all.putAll(after);
        var parts = new ArrayList<Part>();
        all.forEach((id, portion) -> {
            var was = before.get(id);
            var is = after.get(id);
            double kg = (is == null ? 0 : is.kgPutOut()) - (was == null ? 0 : was.kgPutOut());
            double dollars = (is == null ? 0 : is.cost()) - (was == null ? 0 : was.cost());
            if (kg != 0 || dollars != 0) {
                parts.add(new Part(portion.feed(), kg, dollars, 0));
            }
        });
        parts.sort(Comparator.comparingDouble((Part p) -> Math.abs(p.dollars())).reversed());
        return inCents(parts);
    }

    private static MixDifference inCents(List<Part> parts) {
        long whole = Math.round(100 * parts.stream().mapToDouble(Part::dollars).sum());
        var cents = parts.stream()
                .mapToLong(p -> (long) Math.floor(100 * p.dollars()))
                .toArray();
        long left = whole
                - IntStream.range(0, cents.length).mapToLong(i -> cents[i]).sum();
        IntStream.range(0, cents.length)
                .boxed()
                .sorted(Comparator.comparingDouble(
                        i -> cents[i] - 100 * parts.get(i).dollars()))
                .limit(left)
                .forEach(i -> cents[i]++);
        return new MixDifference(
                IntStream.range(0, cents.length)
                        .mapToObj(i -> new Part(
                                parts.get(i).feed(),
                                parts.get(i).kgPutOut(),
                                parts.get(i).dollars(),
                                cents[i]))
                        .toList(),
                whole);
    }
}
