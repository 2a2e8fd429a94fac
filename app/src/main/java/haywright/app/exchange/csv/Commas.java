package haywright.app.exchange.csv;

import java.util.regex.Pattern;

/**
 * What the commas of a text part: cells, or a name from its unit and thousands from the rest of a figure. A comma inside
 * a figure that parts a cell would leave its end alone, 776 of 1,776.
 */
final class Commas {
    private static final Pattern FIGURE_ALONE =
            Pattern.compile("(?:^|,)\\s*\"?\\s*[<≤]?\\s*[-−+]?[0-9]*[.,]?[0-9]+[^,\\p{L}0-9]{0,4}(?:,|$)");

    /** Behind words or another figure in the same cell a figure with a comma in it: "Iron, ppm  1,140". */
    private static final Pattern INSIDE = Pattern.compile(
            "(?<=[\\p{L}%:=)°²³]|[^,\\s\"][\\s<≤]{1,40})[0-9]{1,3}(?:[.,’' ][0-9]{3})*(?:,[0-9]+)?(?![0-9])");

    /** Words or another figure, and behind them the figure at the end of the line: "ADF, %  38.0". */
    private static final Pattern BEHIND =
            Pattern.compile("[^,\\s][\\s<≤:=.]{1,40}[0-9][0-9.,’']*\\s*(?:%|\\p{L}{1,6}(?:/\\p{L}{1,4})?)?\\s*$");

    /** "Sept 12, 2026": the year is no cell. */
    private static final Pattern DAY = Pattern.compile(
            "(?i)((?:jan|feb|mar|apr|may|jun|jul|aug|sep|oct|nov|dec)\\p{L}*\\.? [0-9]{1,2}(?:st|nd|rd|th)?),(?= ?[0-9]{4})");

    private Commas() {}

    /** Whether more lines have a figure in a cell of its own than have one behind words. */
    static boolean partCells(String text) {
        long alone = 0;
        long behind = 0;
        for (var line : text.lines().toList()) {
            var whole = INSIDE.matcher(DAY.matcher(line).replaceAll("$1"))
                    .replaceAll(figure -> figure.group().replace(",", ""));
            if (FIGURE_ALONE.matcher(whole).find()) {
                alone++;
            } else if (BEHIND.matcher(whole).find()) {
                behind++;
            }
        }
        return alone > 0 && alone >= behind;
    }
}
