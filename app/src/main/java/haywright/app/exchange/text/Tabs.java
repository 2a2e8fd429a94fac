package haywright.app.exchange.text;

import java.util.ArrayList;
import java.util.List;

/** Cells parted by tabs, as a spreadsheet or a mail pastes them, laid under each other. */
final class Tabs {
    private static final int WIDEST = 80;

    private Tabs() {}

    static List<String> laidOut(List<String> lines) {
        var widths = new ArrayList<Integer>();
        for (var line : lines) {
            var cells = cells(line);
            for (int i = 0; i < cells.length && cells.length > 1; i++) {
                int width = Math.min(WIDEST, cells[i].strip().length()) + 3;
                if (i == widths.size()) {
                    widths.add(width);
                } else {
                    widths.set(i, Math.max(widths.get(i), width));
                }
            }
        }
        return widths.isEmpty()
                ? lines
                : lines.stream().map(line -> laidOut(line, widths)).toList();
    }

    private static String[] cells(String line) {
        return line.split("\t", 40);
    }

    private static String laidOut(String line, List<Integer> widths) {
        var cells = cells(line);
        if (cells.length < 2) {
            return line;
        }
        var laid = new StringBuilder();
        int from = 0;
        for (int i = 0; i < cells.length; i++) {
            var cell = cells[i].strip();
            int middle = i == 0 ? from : from + Math.max(0, widths.get(i) - 3 - cell.length()) / 2;
            laid.append(" ".repeat(Math.max(0, middle - laid.length()))).append(cell);
            from = Math.max(from + widths.get(i), laid.length() + 2);
        }
        return laid.toString();
    }
}
