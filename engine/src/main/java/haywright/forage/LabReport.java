package haywright.forage;

import java.time.LocalDate;
import java.util.List;
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
        List<String> confirmed) {
    public LabReport {
        readings = List.copyOf(readings);
        confirmed = List.copyOf(confirmed);
    }

    public enum HowSampled {
        PLAN,
        GRAB,
        UNKNOWN
    }
}
