package haywright.forage.lab;

import haywright.forage.Analyte;
import haywright.forage.lab.Tested.Method;
import haywright.workings.Refused;
import java.time.LocalDate;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/**
 * A laboratory's report on one lot.
 *
 * @param laboratory its name as typed; empty when not given
 * @param sampleCode the code on the bag; empty when not given
 * @param sampled the day the sample was taken, if known
 * @param reported the day of the report, if known
 * @param howSampled how the sample was taken; decides later how far the result speaks for the lot
 * @param readings as printed, both columns where both were typed
 * @param confirmed unusual things that somebody was asked about and confirmed, by {@code Issue} rule id
 * @param method how the laboratory measured what does not say otherwise itself; null where the report does not say
 * @param notMeasured what it prints as less than a limit, not detected or not tested
 */
public record LabReport(
        UUID id,
        UUID lot,
        String laboratory,
        String sampleCode,
        @Nullable LocalDate sampled,
        @Nullable LocalDate reported,
        HowSampled howSampled,
        List<Reading> readings,
        List<String> confirmed,
        @Nullable Method method,
        List<NotMeasured> notMeasured) {
    public static final DateTimeFormatter DAY = DateTimeFormatter.ofPattern("MMM d, uuuu", Locale.US);

    public LabReport {
        readings = List.copyOf(readings);
        confirmed = List.copyOf(confirmed);
        notMeasured = List.copyOf(notMeasured);
        if (sampled != null && reported != null && reported.isBefore(sampled)) {
            throw new Refused(
                    "reported",
                    DAY.format(reported),
                    "a report is not older than its sample, taken on " + DAY.format(sampled),
                    "Are the two days swapped?");
        }
    }

    /** A report that prints a figure for everything, and not how the laboratory worked. */
    public LabReport(
            UUID id,
            UUID lot,
            String laboratory,
            String sampleCode,
            @Nullable LocalDate sampled,
            @Nullable LocalDate reported,
            HowSampled howSampled,
            List<Reading> readings,
            List<String> confirmed) {
        this(id, lot, laboratory, sampleCode, sampled, reported, howSampled, readings, confirmed, null, List.of());
    }

    /**
     * What the lot's figures are taken from: the readings and, for a danger printed as "less than", the limit, which is
     * the stricter way. A "less than" of anything else is no figure.
     */
    public List<Reading> counted() {
        return counted(readings, notMeasured);
    }

    /** As {@link #counted()}, of a report that is not whole yet. */
    public static List<Reading> counted(List<Reading> readings, List<NotMeasured> notMeasured) {
        var counted = new ArrayList<>(readings);
        for (var one : NotMeasured.printedFirst(notMeasured)) {
            // the three forms of nitrate are one danger: a figure or a limit of one of them is enough
            boolean isSaid = counted.stream().anyMatch(r -> one.isSameDanger(r.analyte()));
            if (!isSaid) {
                one.counted().ifPresent(counted::add);
            }
        }
        return counted;
    }

    /**
     * How single figures were measured where the sheet says so, by what they count as: the method printed beside
     * nitrogen is that of protein, beside any form of nitrate that of nitrate nitrogen, beside moisture that of dry
     * matter.
     */
    public Map<Analyte, Method> methods() {
        var said = new EnumMap<Analyte, Method>(Analyte.class);
        readings.forEach(r -> note(said, r.analyte(), r.method()));
        notMeasured.forEach(n -> note(said, n.analyte(), n.method()));
        var counted = new EnumMap<>(said);
        said.forEach((analyte, own) -> {
            switch (analyte) {
                case N -> counted.putIfAbsent(Analyte.CP, own);
                case NO3, KNO3 -> counted.putIfAbsent(Analyte.NO3N, own);
                case MOISTURE -> counted.putIfAbsent(Analyte.DM, own);
                default -> {}
            }
        });
        return counted;
    }

    /** NIR has no calibration for nitrate that holds: such a figure is no measurement. */
    public boolean isNitrateByNir() {
        var own = methods().get(Analyte.NO3N);
        return (own == null ? method : own) == Method.NIR;
    }

    private static void note(Map<Analyte, Method> said, Analyte analyte, @Nullable Method own) {
        if (own != null) {
            said.putIfAbsent(analyte, own);
        }
    }

    public enum HowSampled {
        PLAN("cored by a plan, many places"),
        GRAB("grabbed by hand, a few places"),
        UNKNOWN("not known");

        private final String words;

        HowSampled(String words) {
            this.words = words;
        }

        public String words() {
            return words;
        }
    }
}
