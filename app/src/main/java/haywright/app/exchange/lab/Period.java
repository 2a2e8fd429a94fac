package haywright.app.exchange.lab;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/**
 * A time that a heading speaks of: a year, a season, a month or a day.
 *
 * @param year of this century, the later one of "2025-26"; null where only a month or a season is said, or where
 *     "10/26" may be a month of 2026 as well as a day
 * @param within the year, as it is written, in lower case; empty where only the year is said
 * @param rest the other words of the heading, without those that any heading of a time may have
 */
record Period(@Nullable Integer year, String within, String rest) {
    private static final String MONTH =
            "(?:jan(?:uary)?|feb(?:ruary)?|mar(?:ch)?|apr(?:il)?|may|june?|july?|aug(?:ust)?|sept?(?:ember)?|oct(?:ober)?|nov(?:ember)?|dec(?:ember)?)\\.?";
    private static final String SEASON = "(?:early |late |mid-? ?)?(?:spring|summer|fall|autumn|winter)";
    private static final String LONG_YEAR = "(20[0-9]{2})";
    private static final String YEAR = "['’‘]?((?:20)?[0-9]{2})";
    private static final String SIGN = "[\\s.,/'’-]*";

    /** Each has the year in its last group that is not empty; the first that is found counts. */
    private static final List<Pattern> SAID = List.of(
            of(LONG_YEAR + "[-/.][0-9]{1,2}[-/.][0-9]{1,2}"),
            of("[0-9]{1,2}[-/.][0-9]{1,2}[-/.]" + YEAR),
            of("[0-9]{1,2}(?:st|nd|rd|th)?" + SIGN + MONTH + SIGN + LONG_YEAR),
            of(MONTH + "\\s*[0-9]{1,2}(?:st|nd|rd|th)?,?\\s+" + YEAR),
            of("20[0-9]{2} ?[-–/] ?((?:20)?[0-9]{2})"),
            of(MONTH + SIGN + YEAR),
            of(LONG_YEAR + SIGN + MONTH),
            of(YEAR + "[-/]" + MONTH),
            of("(?:0?[1-9]|1[0-2])[-/]" + LONG_YEAR),
            of(LONG_YEAR + "[-/](?:0[1-9]|1[0-2])"),
            of("(?:" + SEASON + ")" + SIGN + YEAR),
            of(LONG_YEAR + SIGN + SEASON),
            of("(?:fy|cy|my|crop(?: year)?|year|yr\\.?|harvest|season)" + SIGN + YEAR),
            of("(?:fy|cy|my)?" + LONG_YEAR),
            of("['’‘]([0-9]{2})"),
            of("(?:0?[1-9]|1[0-2])/[0-9]{1,2}"),
            of(MONTH + "(?: [0-9]{1,2}(?:st|nd|rd|th)?)?"),
            of(SEASON));

    /** Words that say no more of a column than that figures stand in it, or that a time does. */
    private static final Pattern PLAIN = Pattern.compile(
            "(?iu)\\b(?:results?|samples?|sampled|crops?|hay|forage|feed|seasons?|tests?|tested|reports?|reported|analys[ie]s|analyzed|values?|figures?|data|year|yr|harvest(?:ed)?|cut(?:ting)?|cored|taken|received|date|dated|your|our|the|in|of|for|from|on|at|fy|cy|my)\\b\\.?");

    /** Of months and seasons alone, only what is said with nothing else; "Spring Creek" is a place. */
    private static final int FIRST_WITHOUT_YEAR = SAID.size() - 3;

    private static Pattern of(String middle) {
        return Pattern.compile("(?iu)(?<![\\p{L}\\p{N}/.,-])" + middle + "(?![\\p{L}\\p{N}]|[/.,-][0-9])");
    }

    /** Empty where the heading speaks of none. */
    static Optional<Period> in(String heading) {
        var text = heading.strip();
        for (int at = 0; at < SAID.size(); at++) {
            var found = SAID.get(at).matcher(text);
            if (!found.find()) {
                continue;
            }
            var rest = plain(text.substring(0, found.start()) + " " + text.substring(found.end()));
            if (at >= FIRST_WITHOUT_YEAR) {
                return rest.isEmpty()
                        ? Optional.of(new Period(null, found.group().toLowerCase(Locale.ROOT), ""))
                        : Optional.empty();
            }
            int year = Integer.parseInt(found.group(1));
            var within = found.group().toLowerCase(Locale.ROOT).replaceAll("\\s+", " ");
            boolean isYearAlone = within.replaceAll("^(?:fy|cy|my|crop|year|yr|harvest|season| |\\W)+", "")
                    .equals(found.group(1));
            return Optional.of(new Period(year < 100 ? 2000 + year : year, isYearAlone ? "" : within, rest));
        }
        return Optional.empty();
    }

    /** Without the words that any heading has, and the signs between them. */
    static String plain(String text) {
        return Heading.key(PLAIN.matcher(text).replaceAll(" ").replaceAll("[^\\p{L}\\p{N}]+", " "))
                .strip();
    }
}
