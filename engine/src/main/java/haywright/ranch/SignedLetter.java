package haywright.ranch;

import haywright.workings.Refused;
import java.time.LocalDate;
import java.util.List;
import java.util.UUID;

/**
 * A feed letter as somebody signed it. It stays when the group's letter is worked out anew, and when the group goes.
 *
 * @param letter as it was, word for word
 * @param by who signed
 * @param reports laboratory reports that its feeds rest on, each by laboratory, sample code and day
 * @param overrides what somebody decided in place of the usual: limits, choices of a figure, words
 */
public record SignedLetter(
        UUID id, Letter letter, String by, LocalDate on, List<String> reports, List<String> overrides) {
    public SignedLetter {
        reports = List.copyOf(reports);
        overrides = List.copyOf(overrides);
        if (by.isBlank()) {
            throw new Refused("by", "nothing", "a signed letter has a name under it", "Enter who signs it.");
        }
    }
}
