package haywright.app.exchange.lab;

import java.util.Arrays;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;

/**
 * Who reads a sheet: what tells this ranch's figures from those of others on it.
 *
 * @param ranch its name; empty where nobody is known
 * @param lots their names
 */
public record Ours(String ranch, List<String> lots) {
    public static final Ours NOBODY = new Ours("", List.of());

    /** Words of many names, which make two ranches none. */
    private static final Set<String> COMMON = Set.of(
            "ranch",
            "ranches",
            "farm",
            "farms",
            "cattle",
            "livestock",
            "co",
            "company",
            "inc",
            "llc",
            "ltd",
            "land",
            "and",
            "the",
            "of",
            "sons",
            "bros",
            "brothers",
            "family",
            "dairy",
            "hay");

    public Ours {
        lots = List.copyOf(lots);
    }

    /** Whether a customer on a sheet is this ranch, by the words that tell its name from others: "Bent Gate". */
    public boolean is(String customer) {
        var own = words(ranch);
        return !own.isEmpty() && words(customer).containsAll(own);
    }

    private static Set<String> words(String name) {
        return Arrays.stream(Heading.key(name).split("[^\\p{L}\\p{N}]+"))
                .filter(word -> !word.isEmpty() && !COMMON.contains(word))
                .collect(Collectors.toSet());
    }

    /** Whether a lot here bears this name. */
    public boolean hasLot(String name) {
        var key = Heading.key(name);
        return lots.stream().anyMatch(lot -> Heading.key(lot).equals(key));
    }
}
