package haywright.app.exchange.lab;

import haywright.app.words.Parse;
import haywright.workings.Refused;
import java.time.DateTimeException;
import java.time.LocalDate;
import java.util.Optional;
import java.util.regex.Pattern;

/** Days as laboratories print them: as people here write them, and with points, which put the day first. */
public final class Days {
    private static final Pattern POINTED = Pattern.compile("([0-9]{1,2})\\. ?([0-9]{1,2})\\. ?([0-9]{4})");

    private Days() {}

    /** Empty where it is no day, or half of one. */
    public static Optional<LocalDate> read(String text) {
        var pointed = POINTED.matcher(text.strip());
        try {
            return Optional.of(
                    pointed.matches()
                            ? LocalDate.of(
                                    Integer.parseInt(pointed.group(3)),
                                    Integer.parseInt(pointed.group(2)),
                                    Integer.parseInt(pointed.group(1)))
                            : Parse.date("", text));
        } catch (Refused | DateTimeException e) {
            return Optional.empty();
        }
    }
}
