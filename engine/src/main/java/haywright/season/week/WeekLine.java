package haywright.season.week;

import haywright.sampling.CheckLetter;
import haywright.sampling.SheetDay;
import haywright.workings.Refused;
import java.time.DateTimeException;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalInt;

/**
 * A week that came back of a phone, as one line of text: sheet, first day, one figure for each box in the sheet's order,
 * check letter. A box that was left empty has nothing between its dashes; empty ones at the end are left out.
 *
 * @param sheet its code
 * @param first day of the week
 * @param tenths of what was typed in each box: pounds, bales, tons, percent or a score
 */
public record WeekLine(String sheet, LocalDate first, List<OptionalInt> tenths) {
    private static final int MOST = 2_000;

    public WeekLine {
        tenths = List.copyOf(tenths);
        if (tenths.stream().noneMatch(OptionalInt::isPresent) || tenths.size() > MOST) {
            throw new Refused(
                    "line",
                    tenths.size() + " figures",
                    "a week brings 1 to %,d".formatted(MOST),
                    "Check that it is the right line.");
        }
    }

    private static int figure(String digits) {
        int figure = Integer.parseInt(digits);
        if (figure < 0) {
            throw new NumberFormatException(digits);
        }
        return figure;
    }

    public String text() {
        var line = new StringBuilder("%s-%02d%02d%02d"
                .formatted(sheet, first.getYear() % 100, first.getMonthValue(), first.getDayOfMonth()));
        tenths.forEach(n -> line.append('-').append(n.isPresent() ? String.valueOf(n.getAsInt()) : ""));
        return CheckLetter.add(line.append('-').toString());
    }

    /** @throws Refused when a character was changed, or the line is none of a week */
    public static WeekLine read(String text) {
        var parts = CheckLetter.read(text).split("-");
        try {
            var first = SheetDay.read(parts[1]);
            var tenths = new ArrayList<OptionalInt>();
            for (int i = 2; i < parts.length; i++) {
                tenths.add(parts[i].isEmpty() ? OptionalInt.empty() : OptionalInt.of(figure(parts[i])));
            }
            return new WeekLine(parts[0], first, tenths);
        } catch (ArrayIndexOutOfBoundsException | NumberFormatException | DateTimeException e) {
            throw new Refused(
                    "line",
                    text.strip(),
                    "it is complete, but not a week’s line: sheet, first day, figures",
                    "It may be of another sheet; those go back under Take it.");
        }
    }
}
