package haywright.app.words;

import haywright.outlook.NextDate;
import java.time.LocalDate;
import java.time.format.TextStyle;
import java.util.Locale;

/** A day on which something changes, for the person who reads it. */
public final class DateWords {
    private DateWords() {}

    /** {@code Mar 15, 2027, in 110 days: calving starts (Mature cows)}. */
    public static String of(NextDate date) {
        return "%s: %s%s"
                .formatted(
                        when(date), what(date), date.who().isEmpty() ? "" : " (" + String.join("; ", date.who()) + ")");
    }

    /** {@code Mar 15, in 110 days: calving starts}; with the year where it is far ahead. */
    public static String brief(NextDate date) {
        var on = date.days() < 300 ? Show.day(date.on()) : Show.date(date.on());
        return "%s, %s: %s".formatted(on, in(date.days()), what(date));
    }

    /** With a capital, to begin a line. */
    public static String title(NextDate date) {
        return Show.capital(what(date));
    }

    /** {@code Mar 15, 2027, in 110 days}. */
    public static String when(NextDate date) {
        return Show.date(date.on()) + ", " + in(date.days());
    }

    private static String in(long days) {
        return days == 0 ? "today" : days == 1 ? "tomorrow" : "in " + Show.count(days, "day");
    }

    private static String what(NextDate date) {
        return switch (date.what()) {
            case CALVING -> "calving starts";
            case WEANING -> "calves are weaned";
            case TURNOUT -> "turnout";
        };
    }

    /** {@code early January}, {@code mid February}, {@code late March}: a day without a figure. */
    public static String part(LocalDate day) {
        int of = day.getDayOfMonth();
        return (of <= 10 ? "early " : of <= 20 ? "mid " : "late ")
                + day.getMonth().getDisplayName(TextStyle.FULL, Locale.US);
    }
}
