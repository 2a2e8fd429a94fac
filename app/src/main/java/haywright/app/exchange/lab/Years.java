package haywright.app.exchange.lab;

import java.util.List;
import java.util.OptionalInt;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Pattern;

/** Years over columns or in a column of their own: of several the newest is the sheet's own, and the others are listed. */
public final class Years {
    private static final Pattern YEAR = Pattern.compile(
            "(?iu)(?:(?:results?|samples?|crop|hay|season|tests?|reports?|your|in|of|for|from|year|the|fall|winter|summer|spring)[\\s:,'’]*)*"
                    + "\\(?(20[0-9]{2})\\)?(?:[\\s:,]*(?:results?|samples?|crop|hay|season|tests?|reports?|harvest))*");

    private static final Pattern COLUMN = Pattern.compile(
            "(?i)(?:(?:sample|test|report|results?)[ _]?)?years?(?:[ _](?:sampled|tested|of (?:sample|test|report)))?");

    private Years() {}

    /** The year that a heading says and nothing else; empty where it says none. */
    public static OptionalInt of(String heading) {
        var year = YEAR.matcher(heading.strip());
        return year.matches() ? OptionalInt.of(Integer.parseInt(year.group(1))) : OptionalInt.empty();
    }

    /** Whether years stand under this heading, line by line. */
    public static boolean isColumn(String heading) {
        return COLUMN.matcher(heading.strip()).matches();
    }

    /** The newest of at least two; empty where there are no two. */
    public static OptionalInt newest(List<String> headings) {
        Set<Integer> years = new TreeSet<>();
        headings.forEach(heading -> of(heading).ifPresent(years::add));
        return years.size() < 2
                ? OptionalInt.empty()
                : years.stream().mapToInt(year -> year).max();
    }
}
