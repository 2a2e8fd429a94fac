package haywright.forage;

import haywright.workings.Refused;
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
        if (sampled != null && reported != null && reported.isBefore(sampled)) {
            throw new Refused(
                    "reported",
                    LotComposition.DAY.format(reported),
                    "a report is not older than its sample, taken on " + LotComposition.DAY.format(sampled),
                    "Are the two days swapped?");
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
