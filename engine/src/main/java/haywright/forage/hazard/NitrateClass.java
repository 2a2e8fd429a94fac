package haywright.forage.hazard;

import haywright.workings.PublishedTable;
import haywright.workings.Source;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * One class of nitrate for cattle as one source publishes it, a row of {@code nitrate_classes.csv}. The sources disagree
 * by a factor of two, so they are shown together and the strictest is the default.
 *
 * @param name the class: "safe", "caution", "limit", "do not feed"
 * @param lower ppm NO3-N of dry matter; belongs to the class below, as "over" is printed
 * @param upper ppm NO3-N of dry matter; belongs to the class; null for no end
 * @param words what the source says of it
 * @param pregnantRule what it says of pregnant cattle; empty when nothing apart
 * @param printed as printed, before conversion to NO3-N
 */
public record NitrateClass(
        Source source,
        String name,
        double lower,
        @Nullable Double upper,
        String words,
        String pregnantRule,
        String printed) {

    /** Every class of the strictest source from the bottom up, then of the next. */
    public static List<NitrateClass> published() {
        return Table.ALL;
    }

    /** One of each source, the strictest source first. */
    static List<NitrateClass> of(double no3n) {
        return Table.ALL.stream()
                .filter(c -> (c.lower == 0 || no3n > c.lower) && (c.upper == null || no3n <= c.upper))
                .toList();
    }

    /** The strictest class safe for pregnant cattle: its upper end is the limit for them. */
    public static NitrateClass safeForPregnant() {
        return Table.SAFE_PREGNANT;
    }

    /** The strictest class called safe for all by a source that treats pregnant cattle apart. */
    public static NitrateClass safeForOthers() {
        return Table.SAFE_OTHER;
    }

    /** The strictest class that is not to be fed: a lot above its lower end is refused, however diluted. */
    public static NitrateClass doNotFeed() {
        return Table.DO_NOT_FEED;
    }

    /** The class, after the safe one, that is safe for cattle that are not pregnant. */
    public static NitrateClass safeForOpen() {
        return Table.SAFE_OPEN;
    }

    /** Its upper end, ppm NO3-N: at or below it a composite is in this class or a safer one. */
    public double safeUpTo() {
        return upper == null ? Double.POSITIVE_INFINITY : upper;
    }

    double width() {
        return upper == null ? Double.POSITIVE_INFINITY : upper - lower;
    }

    /** Read when first asked for. */
    private static final class Table {
        static final List<NitrateClass> ALL;
        static final NitrateClass SAFE_PREGNANT;
        static final NitrateClass SAFE_OTHER;
        static final NitrateClass SAFE_OPEN;
        static final NitrateClass DO_NOT_FEED;

        static {
            var all = new ArrayList<NitrateClass>();
            var rows = PublishedTable.read(NitrateClass.class, "nitrate_classes.csv");
            for (var row : rows.rows()) {
                all.add(of(row));
            }
            ALL = all.stream()
                    .sorted(Comparator.comparingDouble(c -> safeUpTo(all, c.source)))
                    .toList();
            SAFE_PREGNANT = of(rows.row("role", "safe_pregnant"));
            SAFE_OTHER = of(rows.row("role", "safe_other"));
            SAFE_OPEN = of(rows.row("role", "safe_open"));
            DO_NOT_FEED = of(rows.row("role", "do_not_feed"));
        }

        /** ppm that a source calls safe: the less, the stricter. */
        private static double safeUpTo(List<NitrateClass> all, Source source) {
            return all.stream()
                    .filter(c -> c.source.equals(source) && c.lower == 0)
                    .mapToDouble(NitrateClass::width)
                    .min()
                    .orElse(Double.POSITIVE_INFINITY);
        }

        private static NitrateClass of(PublishedTable.Row row) {
            var upper = row.number("upper_no3n_ppm");
            return new NitrateClass(
                    Source.read(row.text("source")),
                    row.text("class"),
                    row.number("lower_no3n_ppm").orElseThrow(),
                    upper.isPresent() ? upper.getAsDouble() : null,
                    row.text("words"),
                    row.text("pregnant_rule"),
                    row.text("printed"));
        }
    }
}
