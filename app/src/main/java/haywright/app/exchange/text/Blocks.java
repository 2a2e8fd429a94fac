package haywright.app.exchange.text;

import haywright.app.exchange.lab.Whose;
import haywright.app.exchange.line.TextLine;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.TreeMap;

/**
 * Lines under each other that a word over them or in the margin calls by a year, or by whose they are: what is of others
 * is listed, and where nothing tells which is this sample's, all of it is.
 */
final class Blocks {
    private static final int MOST_WORDS = 5;
    private static final int LONGEST = 40;

    private Blocks() {}

    /**
     * The places of lines with figures of others. A word in the margin that says so is taken out of its line, and read
     * as no part of a name.
     *
     * @param figures the places of lines with figures
     */
    static Set<Integer> ofOthers(List<TextLine> lines, List<Integer> figures) {
        var labels = new TreeMap<Integer, String>();
        for (int at = 0; at < lines.size(); at++) {
            var line = lines.get(at);
            var label = figures.contains(at) ? margin(line) : title(line);
            if (!label.isEmpty() && (figures.contains(at) || isOverFigures(lines, at, figures))) {
                labels.put(at, label);
            }
        }
        var said = labels.values().stream().distinct().toList();
        if (said.size() < 2) {
            return Set.of();
        }
        labels.keySet().stream().filter(figures::contains).forEach(at -> lines.set(at, withoutMargin(lines.get(at))));
        var whose = Whose.of(said);
        var others = new HashSet<Integer>();
        for (int at : figures) {
            var label = labels.floorEntry(at);
            var is = label == null ? Whose.UNSAID : whose.get(said.indexOf(label.getValue()));
            if (is == Whose.OTHERS || is == Whose.ASKED) {
                others.add(at);
            }
        }
        return others;
    }

    private static TextLine withoutMargin(TextLine line) {
        return new TextLine(
                line.number(),
                line.page(),
                line.text(),
                line.words().subList(line.cells().get(0).size(), line.words().size()));
    }

    private static String margin(TextLine line) {
        var cells = line.cells();
        if (!line.isAligned() || cells.size() < 3) {
            return "";
        }
        var first = TextLine.join(cells.get(0)).text();
        return isLabel(first) && cells.get(1).get(0).text().matches("\\p{L}.*") ? first : "";
    }

    private static String title(TextLine line) {
        if (line.isBlank() || line.cells().size() != 1 || line.words().size() > MOST_WORDS) {
            return "";
        }
        var text = TextLine.join(line.words()).text().replaceAll("[:.]$", "");
        boolean isDay =
                Head.of(line).stream().anyMatch(field -> field.told().isDay()); // of a report, not of its figures
        return isLabel(text) && !isDay ? text : "";
    }

    private static boolean isLabel(String text) {
        return text.length() <= LONGEST
                && Whose.isOnly(text)
                && !text.matches("(?iu)(?:results?|analys[ie]s|min\\.?|max\\.?|low|high|range)");
    }

    /** The next line that is not empty has figures, or headings with figures under them. */
    private static boolean isOverFigures(List<TextLine> lines, int at, List<Integer> figures) {
        var next = new ArrayList<Integer>();
        for (int below = at + 1; below < lines.size() && next.size() < 2; below++) {
            if (!lines.get(below).isBlank()) {
                next.add(below);
            }
        }
        return next.stream().anyMatch(figures::contains);
    }
}
