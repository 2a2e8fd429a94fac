package haywright.sampling;

import haywright.workings.PublishedTable;
import haywright.workings.Refused;
import haywright.workings.Source;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;

/**
 * How far results scatter, as variances of one analyte.
 *
 * @param between from one unit (bale, scoop, plot) to the next, V_b
 * @param within from one core to the next in one unit, V_w
 * @param laboratory one laboratory repeating the same sample, V_l
 * @param laboratoryBias what one laboratory's results share and repeats cannot average away; said apart, never counted
 *     as sampling
 * @param ofValue true when the variances are of percent of the value, for minerals and nitrate
 * @param cores separate analyses that {@code between} was estimated from; 0 when it comes from the book
 */
public record Spread(
        double between,
        double within,
        double laboratory,
        double laboratoryBias,
        boolean ofValue,
        int cores,
        Source source) {
    private static final PublishedTable WITHIN_LOT = PublishedTable.read(Spread.class, "within_lot.csv");
    /** Asked for every figure of every lot, so not searched each time. */
    private static final Map<String, PublishedTable.Row> OF_LOT =
            WITHIN_LOT.rows().stream().collect(Collectors.toMap(r -> r.text("crop") + " " + r.text("analyte"), r -> r));

    /** Half of the book's standard deviation: judged, for no source says how even a lot can be. */
    static final double LEAST_OF_BOOK = 0.25;

    private static final PublishedTable LABORATORY = PublishedTable.read(Spread.class, "laboratory.csv");

    public Spread {
        var names = List.of("between", "within", "laboratory", "laboratoryBias");
        var values = List.of(between, within, laboratory, laboratoryBias);
        for (int i = 0; i < values.size(); i++) {
            if (!(values.get(i) >= 0 && Double.isFinite(values.get(i)))) {
                throw new Refused(
                        names.get(i),
                        String.valueOf(values.get(i)),
                        "a variance is 0 or more",
                        "If it is a standard deviation, enter its square.");
            }
        }
        if (cores < 0 || cores == 1) {
            throw new Refused(
                    "cores",
                    String.valueOf(cores),
                    "one analysis shows no spread",
                    "Have at least two cores tested alone, or use the book's.");
        }
    }

    /** Variances entered, as the topic has them. */
    public static Spread of(double between, double within, double laboratory) {
        return new Spread(between, within, laboratory, 0, false, 0, Source.ARITHMETIC);
    }

    /**
     * The book's spread: half of it between units and half inside them, because sources disagree which is larger.
     *
     * @param analyte id of the analyte: "cp"
     */
    public static Spread ofBook(Crop crop, String analyte) {
        var row = Optional.ofNullable(OF_LOT.get(crop.name() + " " + analyte))
                .orElseThrow(() -> new Refused(
                        "analyte",
                        analyte,
                        "the book has no spread within one lot of " + crop.words(),
                        "Choose one of " + analytes(crop) + ", or have cores tested alone."));
        var laboratory = LABORATORY.row("analyte", analyte);
        boolean ofValue = row.number("sd").isEmpty();
        double sd =
                ofValue ? row.number("cv_pct").orElseThrow() : row.number("sd").orElseThrow();
        double half = sd * sd / 2;
        // A laboratory's error is kept on the scale of the lot's: percent of the value only where both are.
        return of(half, laboratory, ofValue, source(row));
    }

    /**
     * What wet chemistry scatters by, with nothing of the lot in it.
     *
     * @param analyte id of the analyte; empty where the book has no laboratory's spread of it
     */
    public static Optional<Spread> ofLaboratory(String analyte) {
        return LABORATORY.rows().stream()
                .filter(r -> r.text("analyte").equals(analyte))
                .findFirst()
                .map(r -> of(0, r, r.number("same_sd").isEmpty(), source(r)));
    }

    private static Spread of(double half, PublishedTable.Row laboratory, boolean ofValue, Source source) {
        double same = laboratory.number(ofValue ? "same_cv_pct" : "same_sd").orElse(0);
        double across =
                laboratory.number(ofValue ? "between_cv_pct" : "between_sd").orElse(same);
        return new Spread(half, half, same * same, across * across - same * same, ofValue, 0, source);
    }

    /** Whether the book says how far an analyte scatters within one lot. */
    public static boolean isInBook(Crop crop, String analyte) {
        return OF_LOT.containsKey(crop.name() + " " + analyte);
    }

    public static String analytes(Crop crop) {
        return WITHIN_LOT.rows().stream()
                .filter(r -> r.text("crop").equals(crop.name()))
                .map(r -> r.text("analyte"))
                .collect(Collectors.joining(", "));
    }

    /**
     * From this ranch's own cores, one from each of {@code results.size()} units, analyzed apart. What they scatter by,
     * less the laboratory's own repeats, parted between and within units as in the book. A few cores agree by chance now
     * and then, so the variance is never below {@link #LEAST_OF_BOOK} of the book's.
     */
    public static Spread ofOwnCores(List<Double> results, Spread book) {
        if (results.size() < 2) {
            throw new Refused(
                    "results",
                    results.size() + " results",
                    "it takes at least two cores tested alone",
                    "Send more cores, each in its own bag.");
        }
        for (var result : results) {
            if (!(result >= 0 && Double.isFinite(result))) {
                throw new Refused("results", String.valueOf(result), "a result is 0 or more", "Check the number.");
            }
        }
        double mean = results.stream().mapToDouble(x -> x).average().orElseThrow();
        double scale = book.ofValue ? 100 / mean : 1;
        double observed = results.stream()
                        .mapToDouble(x -> Math.pow((x - mean) * scale, 2))
                        .sum()
                / (results.size() - 1);
        double whole = book.between + book.within;
        double lot = Math.max(LEAST_OF_BOOK * whole, observed - book.laboratory);
        double share = whole > 0 ? book.between / whole : 0.5;
        return new Spread(
                lot * share,
                lot * (1 - share),
                book.laboratory,
                book.laboratoryBias,
                book.ofValue,
                results.size(),
                Source.judgment("this ranch's own " + results.size() + " cores tested alone"));
    }

    private static Source source(PublishedTable.Row row) {
        var cite = row.text("source");
        return Optional.of(row.text("tier"))
                .filter(t -> t.equals("judgment"))
                .map(t -> Source.judgment(cite))
                .orElseGet(() -> Source.read(cite));
    }
}
