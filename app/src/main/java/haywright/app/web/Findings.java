package haywright.app.web;

import haywright.app.words.Show;
import haywright.quantity.Quantity;
import haywright.workings.Problem;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.DoubleStream;
import java.util.stream.Stream;

/** What is wrong with a form, and what is doubted, each by the field it is beside. */
public final class Findings {
    private static final int LONGEST = 80;

    final List<Problem> problems = new ArrayList<>();
    final List<Doubt> doubts = new ArrayList<>();
    private final Map<String, String> labels = new LinkedHashMap<>();

    Findings() {}

    /** Something unusual that is kept once somebody says that it is right. */
    public record Doubt(String field, String question, String words, boolean isConfirmed) {}

    /** One message of the summary, with the field it links to; the label is empty where there is none. */
    public record Message(String field, String label, String words) {}

    /** The form has such a field, so the summary can name it and link to it. */
    void read(Ask ask) {
        labels.put(ask.name(), ask.label());
    }

    boolean areOpen() {
        return !problems.isEmpty() || doubts.stream().anyMatch(doubt -> !doubt.isConfirmed());
    }

    /** Each field once, with all that is wrong with it; what is asked about it comes once that is mended. */
    List<Message> messages() {
        var wrong = new LinkedHashMap<String, Set<String>>();
        problems.forEach(p ->
                wrong.computeIfAbsent(p.field(), f -> new LinkedHashSet<>()).add(sentence(p)));
        var asked = new LinkedHashMap<String, Set<String>>();
        doubts.stream()
                .filter(d -> !d.isConfirmed() && !wrong.containsKey(d.field()))
                .forEach(d -> asked.computeIfAbsent(d.field(), f -> new LinkedHashSet<>())
                        .add(d.words()));
        return Stream.of(wrong, asked)
                .flatMap(found -> found.entrySet().stream())
                .map(e -> message(e.getKey(), String.join(" ", e.getValue())))
                .toList();
    }

    private Message message(String field, String words) {
        return new Message(field, labels.getOrDefault(field, ""), words);
    }

    String beside(Ask ask) {
        return problems.stream()
                .filter(p -> p.field().equals(ask.name()))
                .map(Findings::sentence)
                .findFirst()
                .orElse("");
    }

    private static String sentence(Problem problem) {
        var rule = problem.rule();
        var start = problem.said().isBlank() ? Show.capital(rule) : "“" + shown(problem.said()) + "”: " + rule;
        return (start.replaceFirst("\\.$", "") + ". " + problem.fix()).strip();
    }

    /** What came in, as far as a sentence has room for it: a message is read, not scrolled, whatever was pasted. */
    public static String shown(String typed) {
        var one = typed.strip().replaceAll("\\s+", " ");
        int end = Math.min(one.length(), LONGEST);
        return one.length() <= LONGEST
                ? one
                : "%s… (%,d characters)"
                        .formatted(
                                one.substring(0, Character.isHighSurrogate(one.charAt(end - 1)) ? end - 1 : end),
                                one.length());
    }

    /** What to ask about a figure outside of what is usual; nothing where it is inside or no amount at all. */
    static Optional<String> unusual(Ask ask, Quantity now, Quantity low, Quantity high) {
        double value = now.base();
        if (value <= 0 || (value >= low.base() && value <= high.base())) {
            return Optional.empty();
        }
        var guess = DoubleStream.of(value < low.base() ? new double[] {10, 100} : new double[] {0.1, 0.01})
                .filter(f -> value * f >= low.base() && value * f <= high.base())
                .mapToObj(f -> " Did you mean %s?".formatted(Show.quantity(new Quantity(now.value() * f, now.unit()))))
                .findFirst()
                .orElse("");
        return Optional.of("%s is outside the usual %s to %s.%s"
                .formatted(
                        Show.quantity(now),
                        Show.significant(low.in(ask.unit()), 4),
                        Show.withUnit(Show.significant(high.in(ask.unit()), 4), ask.unit()),
                        guess));
    }
}
