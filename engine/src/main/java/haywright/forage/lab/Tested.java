package haywright.forage.lab;

import haywright.forage.Analyte;
import haywright.forage.FeedClass;
import haywright.forage.book.FeedBook;
import haywright.forage.hazard.Nitrate;
import haywright.sampling.Design;
import haywright.workings.Refused;
import java.util.ArrayList;
import java.util.Collections;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * What a laboratory measured of a lot, with how its sample was taken: an observation. What a laboratory calculates is
 * not among the values.
 *
 * @param laboratory its name; reports without one count as of one laboratory, so that no bias is averaged away unseen
 * @param method how the laboratory measured what {@code methods} does not name
 * @param composite the code of the bag: results of one bag share the error of its sampling; empty for a bag of its own
 * @param design what the sample was made of; {@link #ONE_GRAB} where nobody knows
 * @param lotUnits units in the lot, 0 where they cannot be counted
 * @param values as measured, on dry matter in each analyte's unit
 * @param methods how single figures were measured where the sheet says so: fiber by NIR, minerals by wet chemistry
 * @param below what it found to be less than a limit: the limit, likewise; nothing that is among the values
 */
public record Tested(
        String laboratory,
        Method method,
        String composite,
        Design design,
        int lotUnits,
        Map<Analyte, Double> values,
        Map<Analyte, Method> methods,
        Map<Analyte, Double> below) {
    /** A grab speaks for one place; a sample of unknown origin is trusted no further. */
    public static final Design ONE_GRAB = Design.of(1, 1, 1);

    /** How the laboratory worked. Unknown counts as halfway between, variance for variance. */
    public enum Method {
        WET,
        NIR,
        UNKNOWN
    }

    /** All figures by one method, and none of them less than a limit. */
    public Tested(
            String laboratory,
            Method method,
            String composite,
            Design design,
            int lotUnits,
            Map<Analyte, Double> values) {
        this(laboratory, method, composite, design, lotUnits, values, Map.of(), Map.of());
    }

    public Tested {
        if (lotUnits != 0 && design.units() > lotUnits) {
            throw new Refused(
                    "units",
                    design.units() + " of " + lotUnits,
                    "no more units can be sampled than the lot has",
                    "How many bales, loads or places were there?");
        }
        values = values.isEmpty() ? Map.of() : Collections.unmodifiableMap(new EnumMap<>(values));
        methods = methods.isEmpty() ? Map.of() : Collections.unmodifiableMap(new EnumMap<>(methods));
        var limits = new EnumMap<Analyte, Double>(Analyte.class);
        limits.putAll(below);
        limits.keySet().removeAll(values.keySet());
        below = Collections.unmodifiableMap(limits);
        for (var analyte : Stream.concat(values.keySet().stream(), limits.keySet().stream())
                .toList()) {
            if (!analyte.isMeasured()) {
                throw new IllegalArgumentException(analyte + " is calculated from other figures, not measured");
            }
        }
    }

    /**
     * What a report says of the lot that its sample was taken from: one road for a ranch's reports and for those of a request.
     *
     * @param row the row of the feed book that the feed is held against; empty when there is none
     * @param lotUnits units in the lot, 0 where they cannot be counted
     */
    public static Tested of(
            FeedClass feedClass,
            Optional<FeedBook.Row> row,
            LabReport report,
            String composite,
            Design design,
            int lotUnits) {
        return new Tested(
                report.laboratory(),
                Objects.requireNonNullElse(report.method(), Method.UNKNOWN),
                composite,
                design,
                lotUnits,
                measured(ReportCheck.check(feedClass, row, report.readings())),
                report.methods(),
                below(feedClass, row, report.readings(), report.notMeasured()));
    }

    /** The same without what was only found to be less than a limit. */
    public Tested measuredOnly() {
        return new Tested(laboratory, method, composite, design, lotUnits, values, methods, Map.of());
    }

    /** What it says of an analyte, a figure or a limit. */
    public double figure(Analyte analyte, double otherwise) {
        return values.getOrDefault(analyte, below.getOrDefault(analyte, otherwise));
    }

    /**
     * The limits that a report prints in place of figures, on dry matter in each analyte's unit, nitrate as NO3-N. "Not
     * detected" without a limit says nothing but of nitrate, and what cannot be carried to dry matter neither.
     */
    public static Map<Analyte, Double> below(
            FeedClass feedClass, Optional<FeedBook.Row> row, List<Reading> readings, List<NotMeasured> notMeasured) {
        var limits = new ArrayList<Reading>();
        readings.stream()
                .filter(r -> r.analyte() == Analyte.DM || r.analyte() == Analyte.MOISTURE)
                .forEach(limits::add);
        NotMeasured.printedFirst(notMeasured)
                .forEach(one -> one.asLimit()
                        .filter(limit -> !one.isUsualLimitTaken()
                                || limits.stream().noneMatch(r -> one.isSameDanger(r.analyte())))
                        .ifPresent(limits::add));
        var below = new EnumMap<Analyte, Double>(Analyte.class);
        if (limits.isEmpty()) {
            return below;
        }
        var carried = ReportCheck.check(feedClass, row, limits).values();
        for (var one : notMeasured) {
            var as = one.asLimit().map(Reading::analyte).orElse(one.analyte());
            var limit = carried.get(as);
            if (limit != null && limit > 0 && as.isMeasured()) {
                below.merge(as, limit, Math::min);
            }
            if (limit != null && (as == Analyte.NO3 || as == Analyte.KNO3)) {
                below.putIfAbsent(Analyte.NO3N, Nitrate.of(as, carried).no3n());
            }
        }
        return below;
    }

    /**
     * The figures of a report that are measurements: no error stands beside them, and nothing in them was calculated.
     * Protein comes from nitrogen and nitrate nitrogen from the other forms where only those are printed.
     */
    public static Map<Analyte, Double> measured(CheckedReport report) {
        var measured = new EnumMap<Analyte, Double>(Analyte.class);
        report.sound().forEach((analyte, value) -> {
            if (analyte.isMeasured()) {
                measured.put(analyte, value);
            }
        });
        var nitrogen = report.sound().get(Analyte.N);
        if (nitrogen != null) {
            measured.putIfAbsent(Analyte.CP, new ProteinFromNitrogen(nitrogen).percent());
        }
        Nitrate.strictest(report.sound())
                .ifPresent(form -> measured.putIfAbsent(
                        Analyte.NO3N, Nitrate.of(form, report.sound()).no3n()));
        return measured;
    }

    /** How a figure was measured. */
    public Method method(Analyte analyte) {
        return methods.getOrDefault(analyte, method);
    }
}
