package haywright.outlook;

import haywright.forage.Analyte;
import haywright.forage.FeedClass;
import haywright.forage.book.FeedBook;
import haywright.forage.lab.LabReport;
import haywright.forage.lab.ReportCheck;
import haywright.forage.lab.Tested;
import haywright.ranch.Lot;
import haywright.ranch.Ranch;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collections;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.jspecify.annotations.Nullable;

/**
 * The ranch's own feed book, as it grows from its own reports: what its tested lots of each class have had. A lot counts
 * once, by the mean of its results as printed; what a laboratory calculated is in none of it. Nothing is merged with the
 * published rows, and no estimate starts from it yet.
 */
public record OwnBook(List<Row> rows) {
    public OwnBook {
        rows = List.copyOf(rows);
    }

    /**
     * @param lots tested of this class
     * @param last the day of the newest report; null where none says its day
     */
    public record Row(
            FeedClass feedClass, int lots, @Nullable LocalDate last, Map<Analyte, Figure> figures) {}

    /**
     * One analyte over the lots of a class.
     *
     * @param lots that have a result of it
     * @param sd between lots, with sampling and laboratory in it; empty with one lot, which tells nothing of spread
     */
    public record Figure(int lots, double mean, OptionalDouble sd, double least, double most) {
        private static Figure of(List<Double> values) {
            double mean = values.stream().mapToDouble(v -> v).average().orElseThrow();
            double squares =
                    values.stream().mapToDouble(v -> (v - mean) * (v - mean)).sum();
            return new Figure(
                    values.size(),
                    mean,
                    values.size() < 2
                            ? OptionalDouble.empty()
                            : OptionalDouble.of(Math.sqrt(squares / (values.size() - 1))),
                    Collections.min(values),
                    Collections.max(values));
        }
    }

    public static OwnBook of(Ranch ranch) {
        var byClass = new EnumMap<FeedClass, List<Lot>>(FeedClass.class);
        for (var lot : ranch.lots().values()) {
            if (!ranch.reportsOn(lot.id()).isEmpty()) {
                byClass.computeIfAbsent(lot.feedClass(), c -> new ArrayList<>()).add(lot);
            }
        }
        var rows = new ArrayList<Row>();
        byClass.forEach((feedClass, lots) -> rows.add(row(ranch, feedClass, lots)));
        return new OwnBook(rows);
    }

    /** What the ranch's other tested lots of a lot's class have had; empty where there are none. */
    public static Optional<Row> beside(Ranch ranch, Lot lot) {
        var others = ranch.lots().values().stream()
                .filter(l -> l.feedClass() == lot.feedClass() && !l.id().equals(lot.id()))
                .filter(l -> !ranch.reportsOn(l.id()).isEmpty())
                .toList();
        return others.isEmpty() ? Optional.empty() : Optional.of(row(ranch, lot.feedClass(), others));
    }

    private static Row row(Ranch ranch, FeedClass feedClass, List<Lot> lots) {
        var values = new EnumMap<Analyte, List<Double>>(Analyte.class);
        LocalDate last = null;
        for (var lot : lots) {
            var ofLot = new EnumMap<Analyte, List<Double>>(Analyte.class);
            for (var report : ranch.reportsOn(lot.id())) {
                measured(lot, report)
                        .forEach((analyte, value) -> ofLot.computeIfAbsent(analyte, a -> new ArrayList<>())
                                .add(value));
                var day = report.reported() == null ? report.sampled() : report.reported();
                last = day != null && (last == null || day.isAfter(last)) ? day : last;
            }
            ofLot.forEach((analyte, results) -> values.computeIfAbsent(analyte, a -> new ArrayList<>())
                    .add(results.stream().mapToDouble(v -> v).average().orElseThrow()));
        }
        var figures = new EnumMap<Analyte, Figure>(Analyte.class);
        values.forEach((analyte, all) -> figures.put(analyte, Figure.of(all)));
        return new Row(feedClass, lots.size(), last, Collections.unmodifiableMap(figures));
    }

    private static Map<Analyte, Double> measured(Lot lot, LabReport report) {
        var row = FeedBook.published().rowFor(lot.bookRow(), lot.feedClass());
        return Tested.measured(ReportCheck.check(lot.feedClass(), row, report.readings()));
    }
}
