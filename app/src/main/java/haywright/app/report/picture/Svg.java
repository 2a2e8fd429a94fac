package haywright.app.report.picture;

import java.util.List;
import java.util.Locale;

/**
 * The strokes that a picture is drawn with. Text stays text; areas differ by hatch, never by hue; nothing is styled from
 * outside, so that page and paper show the same string.
 */
public final class Svg {
    static final String INK = "#1d1b17";

    private static final String EDGE =
            " stroke=\"#fff\" stroke-width=\"4\" stroke-linejoin=\"round\" paint-order=\"stroke\"";

    private Svg() {}

    /** @param id begins the names of what is inside, so that pictures can share a page */
    static String picture(String id, int width, int height, String title, String words, List<String> drawn) {
        return """
                <svg xmlns="http://www.w3.org/2000/svg" class="picture" viewBox="0 0 %d %d" role="img" \
                aria-labelledby="%s-title %3$s-words" font-family="Source Sans 3, sans-serif" font-size="13" fill="%s">\
                <title id="%3$s-title">%s</title><desc id="%3$s-words">%s</desc><defs>\
                <pattern id="%3$s-due" width="5" height="5" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">\
                <rect width="5" height="5" fill="#fff"/><rect width="1.4" height="5" fill="%4$s"/></pattern>\
                <pattern id="%3$s-dots" width="5" height="5" patternUnits="userSpaceOnUse">\
                <rect width="5" height="5" fill="#fff"/><circle cx="2.5" cy="2.5" r="1" fill="%4$s"/></pattern></defs>\
                %s</svg>""".formatted(width, height, id, INK, escape(title), escape(words), String.join("", drawn));
    }

    /**
     * The same for a page that is printed: the writer of those knows no edge behind letters, and fonts by one name only.
     *
     * @param millimeters wide
     */
    public static String onPaper(String picture, int millimeters) {
        return picture.replace(EDGE, "")
                .replace(
                        "font-family=\"Source Sans 3, sans-serif\"",
                        "style=\"width: %dmm\" font-family=\"Source Sans 3 Pictures, Source Sans 3\" font-style=\"normal\""
                                .formatted(millimeters));
    }

    static String box(double x, double y, double width, double height, String fill) {
        return "<rect x=\"%s\" y=\"%s\" width=\"%s\" height=\"%s\" fill=\"%s\" stroke=\"%s\"/>"
                .formatted(at(x), at(y), at(width), at(height), fill, INK);
    }

    static String line(double x1, double y1, double x2, double y2) {
        return "<line x1=\"%s\" y1=\"%s\" x2=\"%s\" y2=\"%s\" stroke=\"%s\"/>"
                .formatted(at(x1), at(y1), at(x2), at(y2), INK);
    }

    /** A line of the grid behind what is drawn. */
    static String faint(double x1, double y1, double x2, double y2) {
        return "<line x1=\"%s\" y1=\"%s\" x2=\"%s\" y2=\"%s\" stroke=\"%s\" stroke-opacity=\"0.22\"/>"
                .formatted(at(x1), at(y1), at(x2), at(y2), INK);
    }

    static String thick(double x1, double y1, double x2, double y2) {
        return "<line x1=\"%s\" y1=\"%s\" x2=\"%s\" y2=\"%s\" stroke=\"%s\" stroke-width=\"2.6\" stroke-linecap=\"round\"/>"
                .formatted(at(x1), at(y1), at(x2), at(y2), INK);
    }

    /** For what would be, beside a thick line for what is to be done. */
    static String dashed(double x1, double y1, double x2, double y2) {
        return "<line x1=\"%s\" y1=\"%s\" x2=\"%s\" y2=\"%s\" stroke=\"%s\" stroke-width=\"2\" stroke-dasharray=\"6 4\"/>"
                .formatted(at(x1), at(y1), at(x2), at(y2), INK);
    }

    static String dot(double x, double y, double radius, String fill) {
        return "<circle cx=\"%s\" cy=\"%s\" r=\"%s\" fill=\"%s\" stroke=\"%s\" stroke-width=\"1.6\"/>"
                .formatted(at(x), at(y), at(radius), fill, INK);
    }

    /** @param points "x,y x,y …" */
    static String area(String points, String fill) {
        return "<polygon points=\"%s\" fill=\"%s\" stroke=\"%s\" stroke-width=\"1.2\" stroke-linejoin=\"round\"/>"
                .formatted(points, fill, INK);
    }

    /** With a white edge, so that it can be read on a hatch. */
    static String text(double x, double y, String anchor, boolean bold, String words) {
        return "<text x=\"%s\" y=\"%s\" text-anchor=\"%s\" font-weight=\"%s\"%s>%s</text>"
                .formatted(at(x), at(y), anchor, bold ? "600" : "400", EDGE, escape(words));
    }

    static String point(double x, double y) {
        return at(x) + "," + at(y);
    }

    private static String at(double value) {
        return String.format(Locale.ROOT, "%.1f", value);
    }

    static String escape(String words) {
        return words.replace("&", "&amp;")
                .replace("<", "&lt;")
                .replace(">", "&gt;")
                .replace("\"", "&quot;");
    }
}
