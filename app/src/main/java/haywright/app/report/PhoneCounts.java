package haywright.app.report;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Objects;

/**
 * A sheet for weights or scores as one HTML file for a phone that needs no signal.
 *
 * @param code of the sheet
 * @param scale what a number is multiplied by on the line that goes back: 10 for halves of a score
 * @param rows one number each, in words
 */
public record PhoneCounts(
        String title,
        String code,
        String about,
        String say,
        String unit,
        int scale,
        List<String> rows,
        String caution) {
    String page() {
        return Paper.text("haywright/app/report/phoneCounts.jte", this);
    }

    /** A file of this room, put into the one file that goes to a phone. */
    public String own(String name) {
        try (var in = Objects.requireNonNull(PhoneCounts.class.getResourceAsStream(name), name)) {
            return new String(in.readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
