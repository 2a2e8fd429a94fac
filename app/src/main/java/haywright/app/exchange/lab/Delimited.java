package haywright.app.exchange.lab;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.regex.Pattern;
import java.util.stream.Collectors;

/**
 * Cells that a sign parts: tabs, and the strokes of a table drawn in text, with or without those at its edges. Where
 * there is such a sign it alone tells which cell a figure stands in, an empty one before it or not.
 */
public final class Delimited {
    /** Stands between two cells of a line that was laid out. */
    public static final char CUT = '\u001f';

    private static final int WIDEST = 80;
    private static final int MOST_CELLS = 400;
    private static final Pattern STROKE = Pattern.compile("[|│¦║┃]");
    private static final Pattern RULE = Pattern.compile("[\\s|│¦║┃:+=_–—─═╪╞╡┌┬┐├┼┤└┴┘╔╦╗╠╬╣╚╩╝-]*");
    /** Two figures with room between them, or a name and a figure: the strokes round them are a frame, and part no cells. */
    private static final Pattern FRAMED =
            Pattern.compile("[0-9] {2,}[<.]?[0-9]|^[^|│¦║┃]*\\p{L}[^|│¦║┃]*\\S {2,}[<.]?[0-9][0-9.,]*\\s*[|│¦║┃]");

    private Delimited() {}

    /** A page as a mail or a browser copies it, with its marks: each row of a table a line, strokes between its cells. */
    public static String plain(String raw) {
        var text = Formulas.plain(raw);
        if (!Pattern.compile("(?i)<t[dh]\\b").matcher(text).find()) {
            return text;
        }
        var rows = text.replaceAll("(?i)<(?:script|style)\\b[^>]*>[^<]*", " ")
                .replaceAll("[\\r\\n]+", " ")
                .replaceAll("(?i)</t[dh]>\\s*</tr>|</tr>", " |\n")
                .replaceAll("(?i)<t[dh]\\b[^>]*\\bcolspan=[\"']?2\\b[^>]*>([^<]*)", "| $1 | ")
                .replaceAll("(?i)<t[dh]\\b[^>]*>", "| ")
                .replaceAll("(?i)</?(?:p|div|h[1-6]|li|table|tr|br)\\b[^>]*>", "\n")
                .replaceAll("<[/a-zA-Z!][^>]*>", "");
        return rows.replaceAll("&(?:nbsp|#160);", " ")
                .replaceAll("&(?:lt|#60);", "<")
                .replaceAll("&(?:gt|#62);", ">")
                .replaceAll("&(?:plusmn|#177);", "±")
                .replaceAll("&(?:micro|#181);", "µ")
                .replaceAll("&(?:ndash|mdash|minus|#821[12]|#8722);", "-")
                .replaceAll("&(?:sup2|sup3|#17[89]);", "")
                .replaceAll("&(?:quot|#34);", "\"")
                .replaceAll("&(?:amp|#38);", "&");
    }

    /** Whether strokes part the columns of this text, whatever commas stand in it beside. */
    public static boolean isPiped(String text) {
        var lines = text.lines().filter(line -> !RULE.matcher(line).matches()).toList();
        var piped = lines.stream().filter(line -> STROKE.matcher(line).find()).toList();
        long framed = piped.stream().filter(line -> FRAMED.matcher(line).find()).count();
        long others = lines.stream()
                .filter(line -> !STROKE.matcher(line).find())
                .filter(line ->
                        line.indexOf(';') >= 0 || line.indexOf('\t') >= 0 || line.indexOf(',') < line.lastIndexOf(','))
                .count();
        return piped.size() > 1 && 3 * framed < piped.size() && piped.size() > others;
    }

    /** Line by line its cells, rules left out; a line without a stroke is one cell. */
    public static List<List<String>> piped(String text) {
        return cells(text.lines().toList(), true);
    }

    /** The same lines, as many of them, the cells under each other and {@link #CUT} between them. */
    public static List<String> laidOut(List<String> lines) {
        boolean isPiped = isPiped(String.join("\n", lines));
        var cells = cells(lines, isPiped);
        var widths = new ArrayList<Integer>();
        for (var line : cells) {
            for (int i = 0; i < line.size() && line.size() > 1; i++) {
                int width = Math.min(WIDEST, line.get(i).length()) + 3;
                if (i == widths.size()) {
                    widths.add(width);
                } else {
                    widths.set(i, Math.max(widths.get(i), width));
                }
            }
        }
        var laid = new ArrayList<String>();
        for (int i = 0; i < lines.size(); i++) {
            laid.add(cells.get(i).size() < 2 ? bare(lines.get(i), isPiped) : laidOut(cells.get(i), widths));
        }
        return laid;
    }

    private static String bare(String line, boolean isPiped) {
        return isPiped ? STROKE.matcher(line).replaceAll(" ") : line;
    }

    private static List<List<String>> cells(List<String> lines, boolean isPiped) {
        var all = new ArrayList<List<String>>();
        boolean hasEdges = false;
        for (int i = 0; i < lines.size(); i++) {
            var line = lines.get(i);
            if (isPiped && RULE.matcher(line).matches()) {
                all.add(List.of());
            } else if (isPiped && STROKE.matcher(line).find()) {
                boolean isFirst = i == 0 || !STROKE.matcher(lines.get(i - 1)).find();
                hasEdges = isFirst ? hasEdges(lines, i) : hasEdges;
                all.add(parted(hasEdges ? STROKE.matcher(line.strip()).replaceFirst("") : line, STROKE));
            } else {
                all.add(parted(line, Pattern.compile("\t")));
            }
        }
        return all;
    }

    /** Whether all lines of a table begin with a stroke; one that does among others has an empty cell there. */
    private static boolean hasEdges(List<String> lines, int from) {
        for (int i = from; i < lines.size() && STROKE.matcher(lines.get(i)).find(); i++) {
            boolean isEdge = STROKE.matcher(lines.get(i).strip()).lookingAt();
            if (!isEdge && !RULE.matcher(lines.get(i)).matches()) {
                return false;
            }
        }
        return true;
    }

    private static List<String> parted(String line, Pattern sign) {
        return Arrays.stream(sign.split(line, MOST_CELLS))
                .map(cell -> cell.strip().replaceAll("\\s+", " "))
                .collect(Collectors.toList());
    }

    private static String laidOut(List<String> cells, List<Integer> widths) {
        var laid = new StringBuilder();
        int from = 0;
        for (int i = 0; i < cells.size(); i++) {
            var cell = cells.get(i);
            int middle = i == 0 ? from : from + Math.max(0, widths.get(i) - 3 - cell.length()) / 2;
            laid.append(" ".repeat(Math.max(0, middle - laid.length()))).append(cell);
            from = Math.max(from + widths.get(i), laid.length() + 3);
            if (i + 1 < cells.size()) {
                laid.append(" ".repeat(from - 2 - laid.length())).append(CUT);
            }
        }
        return laid.toString();
    }
}
