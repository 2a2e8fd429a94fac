package haywright.sampling;

import haywright.workings.Problem;
import haywright.workings.Refused;
import java.time.DateTimeException;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;

/**
 * What came back of a sheet for weights or scores, as one line of text: sheet, day, numbers, check letter.
 *
 * @param sheet its code
 * @param numbers pounds of each bale, or tenths of each score, in the sheet's order without what was left out
 */
public record CountLine(String sheet, LocalDate on, List<Integer> numbers) {
    public CountLine {
        numbers = List.copyOf(numbers);
        var problems = new ArrayList<Problem>();
        if (numbers.isEmpty() || numbers.size() > 400) {
            problems.add(new Problem(
                    "line",
                    numbers.size() + " numbers",
                    "a sheet brings 1 to 400 numbers",
                    "Check that it is the right line."));
        }
        Refused.unlessEmpty(problems);
    }

    public String text() {
        var line = new StringBuilder(sheet + "-" + SheetDay.write(on));
        numbers.forEach(n -> line.append('-').append(n));
        return CheckLetter.add(line.append('-').toString());
    }

    /** @throws Refused when a character was changed, or the line is none of ours */
    public static CountLine read(String text) {
        var parts = CheckLetter.read(text).split("-");
        try {
            var on = SheetDay.read(parts[1]);
            var numbers = new ArrayList<Integer>();
            for (int i = 2; i < parts.length; i++) {
                numbers.add(Integer.valueOf(parts[i]));
            }
            return new CountLine(parts[0], on, numbers);
        } catch (ArrayIndexOutOfBoundsException | NumberFormatException | DateTimeException e) {
            throw new Refused(
                    "line",
                    text.strip(),
                    "it is complete, but not a line from a weight or score sheet: sheet, day, numbers",
                    "It may be a bag code.");
        }
    }
}
