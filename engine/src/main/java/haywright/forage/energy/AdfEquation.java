package haywright.forage.energy;

import haywright.forage.FeedClass;
import haywright.workings.PublishedTable;
import haywright.workings.Refused;
import haywright.workings.Source;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/**
 * A published line from ADF to TDN, a row of {@code tdn_from_adf.csv}. One step: TDN = intercept + slope·ADF. Two steps:
 * NEl = step.intercept + step.slope·ADF (Mcal/lb), TDN = intercept + slope·NEl.
 *
 * @param id as topics write it: {@code western-alfalfa}
 * @param name in words
 * @param forage what the source gives it for
 * @param fits the classes of feed that comes to
 * @param namedFor the classes that the source itself names
 * @param step the line from ADF to NEl where the source goes that way
 */
public record AdfEquation(
        String id,
        String name,
        String forage,
        Set<FeedClass> fits,
        Set<FeedClass> namedFor,
        double intercept,
        double slope,
        @Nullable Step step,
        Source source) {
    /** The first of two steps: NEl in Mcal/lb from ADF. */
    public record Step(double intercept, double slope) {}

    /** The line taken for a class of feed when nobody picks one, and why this one. */
    public record Usual(AdfEquation equation, String reason) {}

    /** Whether it was read in a source that names such feed, so that it may stand before a laboratory's own figure. */
    public boolean isReadFor(FeedClass feedClass) {
        return namedFor.contains(feedClass) && source.known() != Source.Known.FROM_MEMORY;
    }

    public static List<AdfEquation> published() {
        return Table.ALL;
    }

    /** @throws Refused for an unknown id, naming those there are */
    public static AdfEquation named(String id) {
        return Table.ALL.stream()
                .filter(e -> e.id.equals(id))
                .findFirst()
                .orElseThrow(() -> new Refused(
                        "equation",
                        id,
                        "no equation from ADF has this name",
                        "There are " + Table.ALL.stream().map(AdfEquation::id).collect(Collectors.joining(", "))
                                + "."));
    }

    /**
     * Empty for straw, residues, pasture, grain and by-products: no line was published for them, and those for hay hold
     * from about 20 to 50 % ADF.
     */
    public static Optional<Usual> usual(FeedClass feedClass) {
        return Optional.ofNullable(Table.USUAL.get(feedClass.id()));
    }

    /**
     * As {@link #usual(FeedClass)}, but a kind of lot within the class may have its own: hay of a native meadow is no
     * cool-season grass, for which the line of grass hay was printed.
     *
     * @param kind its id, where one stands for it
     */
    public static Optional<Usual> usual(FeedClass feedClass, Optional<String> kind) {
        return kind.map(Table.USUAL::get).or(() -> usual(feedClass));
    }

    /** Read when first asked for. */
    private static final class Table {
        static final List<AdfEquation> ALL;
        /** By id of the class or of the kind. */
        static final Map<String, Usual> USUAL;

        static {
            var all = new ArrayList<AdfEquation>();
            var usual = new HashMap<String, Usual>();
            for (var row :
                    PublishedTable.read(AdfEquation.class, "tdn_from_adf.csv").rows()) {
                var first = row.number("nel_intercept");
                var equation = new AdfEquation(
                        row.text("id"),
                        row.text("name"),
                        row.text("forage"),
                        row.some("fits").map(Table::classes).orElse(Set.of()),
                        row.some("named_for").map(Table::classes).orElse(Set.of()),
                        row.number("intercept").orElseThrow(),
                        row.number("slope").orElseThrow(),
                        first.isPresent()
                                ? new Step(
                                        first.getAsDouble(),
                                        row.number("nel_slope").orElseThrow())
                                : null,
                        row.source());
                all.add(equation);
                row.some("default_for").ifPresent(ids -> {
                    for (var one : ids.split(";")) {
                        usual.put(one, new Usual(equation, row.text("reason")));
                    }
                });
            }
            ALL = List.copyOf(all);
            USUAL = Map.copyOf(usual);
        }

        private static Set<FeedClass> classes(String ids) {
            var classes = EnumSet.noneOf(FeedClass.class);
            for (var id : ids.split(";")) {
                classes.add(FeedClass.valueOf(id.toUpperCase(Locale.ROOT)));
            }
            return classes;
        }
    }
}
