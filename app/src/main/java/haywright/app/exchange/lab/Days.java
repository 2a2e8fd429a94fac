package haywright.app.exchange.lab;

import haywright.app.words.Parse;
import haywright.workings.Refused;
import java.time.DateTimeException;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Pattern;

/**
 * Days as laboratories print them: as people here write them, with two figures for the year, with the time behind them,
 * and with points, which put the day first. Whether 8/9/26 is in August or in September is told by the other days of
 * its sheet, or not at all.
 */
public final class Days {
    private static final Pattern POINTED = Pattern.compile("([0-9]{1,2})\\. ?([0-9]{1,2})\\. ?([0-9]{4}|[0-9]{2})");
    private static final Pattern SLASHED = Pattern.compile("([0-9]{1,2})[/-]([0-9]{1,2})[/-]([0-9]{4}|[0-9]{2})");
    private static final Pattern YEAR_FIRST = Pattern.compile("([0-9]{4})[/.-]?([0-9]{2})[/.-]?([0-9]{2})");
    private static final Pattern NAMED = Pattern.compile(
            "(?i)(?:([0-9]{1,2})[ .-]+(\\p{L}{3,9})|(\\p{L}{3,9})[ .-]+([0-9]{1,2}))\\.?,?[ .-]+'?([0-9]{4}|[0-9]{2})");
    private static final Pattern IN_TEXT =
            Pattern.compile("(?<![0-9/.-])([0-9]{1,2})/([0-9]{1,2})/(?:[0-9]{4}|[0-9]{2})(?![0-9/])");
    private static final Pattern WEEKDAY =
            Pattern.compile("(?i)^(?:mon|tues?|wed(?:nes)?|thu(?:rs?)?|fri|sat(?:ur)?|sun)(?:day)?[.,]?\\s+");
    private static final Pattern TIME =
            Pattern.compile("(?i)(?:[ T,]+|\\s+at\\s+)[0-9]{1,2}:[0-9]{2}(?::[0-9]{2})?\\s*(?:[ap]\\.?m\\.?)?Z?$");

    private static final int MOST_WORDS = 5;

    private Days() {}

    /** Which stands first, the month or the day. */
    public enum Order {
        MONTH_FIRST,
        DAY_FIRST,
        UNTOLD
    }

    /** What the days of a sheet together show of their order. */
    public static Order order(String sheet) {
        boolean month = false;
        boolean day = false;
        var found = IN_TEXT.matcher(sheet);
        while (found.find()) {
            int first = Integer.parseInt(found.group(1));
            int second = Integer.parseInt(found.group(2));
            month |= second > 12 && first <= 12;
            day |= first > 12 && second <= 12;
        }
        return month == day ? Order.UNTOLD : month ? Order.MONTH_FIRST : Order.DAY_FIRST;
    }

    /** The day or days it can be; empty where it is no day, or half of one. */
    public static List<LocalDate> all(String text, Order order) {
        var plain = TIME.matcher(WEEKDAY.matcher(text.strip()).replaceFirst("")).replaceFirst("");
        var days = new ArrayList<LocalDate>();
        var slashed = SLASHED.matcher(plain);
        if (slashed.matches()) {
            if (order != Order.DAY_FIRST) {
                add(days, slashed.group(3), slashed.group(1), slashed.group(2));
            }
            if (order != Order.MONTH_FIRST) {
                add(days, slashed.group(3), slashed.group(2), slashed.group(1));
            }
            return days.stream().distinct().toList();
        }
        var pointed = POINTED.matcher(plain);
        if (pointed.matches()) {
            add(days, pointed.group(3), pointed.group(2), pointed.group(1));
            return days;
        }
        var yearFirst = YEAR_FIRST.matcher(plain);
        if (yearFirst.matches()) {
            add(days, yearFirst.group(1), yearFirst.group(2), yearFirst.group(3));
            return days;
        }
        var named = NAMED.matcher(plain);
        try {
            days.add(Parse.date(
                    "",
                    named.matches()
                            ? "%s %s, %s"
                                    .formatted(
                                            named.group(2) == null ? named.group(3) : named.group(2),
                                            named.group(1) == null ? named.group(4) : named.group(1),
                                            year(named.group(5)))
                            : plain));
        } catch (Refused | DateTimeException e) {
            return List.of();
        }
        return days;
    }

    private static void add(List<LocalDate> days, String year, String month, String day) {
        try {
            days.add(LocalDate.of(year(year), Integer.parseInt(month), Integer.parseInt(day)));
        } catch (DateTimeException e) {
            // there is no such day: 13/21/26 in this order
        }
    }

    /** Sheets of this century. */
    private static int year(String written) {
        int year = Integer.parseInt(written);
        return written.length() == 2 ? 2000 + year : year;
    }

    /** Empty where it is no day, half of one, or could be two. */
    public static Optional<LocalDate> read(String text, Order order) {
        var all = all(text, order);
        return all.size() == 1 ? Optional.of(all.get(0)) : Optional.empty();
    }

    /**
     * The one day among these words: "Tue, 03 Nov 2026 14:22:07 -0700" has 03 Nov 2026. The words as they are where there
     * are two days; empty where there is none.
     */
    public static Optional<String> in(String words) {
        if (isDay(words)) {
            return Optional.of(words);
        }
        var all = words.strip().split("\\s+");
        var days = new ArrayList<String>();
        for (int from = 0; from < all.length; from++) {
            for (int to = Math.min(all.length, from + MOST_WORDS); to > from; to--) {
                var some =
                        String.join(" ", Arrays.asList(all).subList(from, to)).replaceAll("^[(\\[]+|[)\\],;.]+$", "");
                if (isDay(some)) {
                    days.add(some);
                    from = to - 1;
                    break;
                }
            }
        }
        return days.isEmpty()
                ? Optional.empty()
                : Optional.of(days.stream().distinct().count() == 1 ? days.get(0) : words);
    }

    /** Whether it is written as a day, whichever one it is. */
    public static boolean isDay(String text) {
        return !all(text.toLowerCase(Locale.ROOT), Order.UNTOLD).isEmpty();
    }
}
