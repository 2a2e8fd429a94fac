package haywright.app.exchange.csv;

import haywright.app.words.Show;
import haywright.workings.Refused;
import java.util.List;

/**
 * A table as somebody keeps it in a spreadsheet: saved as CSV, or copied from its cells. Its first line has the headings.
 *
 * @param headings as they stand there
 * @param lines the others
 */
public record TableIn(List<String> headings, List<Line> lines) {
    public TableIn {
        headings = List.copyOf(headings);
        lines = List.copyOf(lines);
    }

    /** @param number of its line in the file. @param cells as many as there are, with or without a heading over them */
    public record Line(long number, List<String> cells) {
        public Line {
            cells = List.copyOf(cells);
        }
    }

    /** @throws Refused where it is no table, or one that is larger than a ranch has use for */
    public static TableIn of(String text) {
        var whole = text.replace("\ufeff", "");
        var lines = Records.of(whole, Records.separator(whole)).stream()
                .map(line -> new Line(
                        line.number(), line.cells().stream().map(TableCsv::in).toList()))
                .toList();
        if (lines.size() < 2) {
            throw new Refused(
                    "text",
                    Show.count(lines.size(), "line"),
                    "a table has its headings and at least one line under them",
                    "Copy the headings too.");
        }
        return new TableIn(lines.get(0).cells(), lines.subList(1, lines.size()));
    }
}
