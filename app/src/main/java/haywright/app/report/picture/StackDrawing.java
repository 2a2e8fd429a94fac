package haywright.app.report.picture;

import haywright.app.words.Show;
import haywright.sampling.stock.Layout;
import haywright.sampling.stock.Place;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;

/**
 * The faces of a stack as one walks past them, the bales to core numbered in walking order; hatched what is out of reach.
 * One string for page and paper: attributes, no style sheet.
 *
 * @param picks numbers of bales in walking order
 */
public record StackDrawing(Layout layout, List<Integer> picks) {
    public static final String KEY =
            "Black number: core it, in that order. Hatched: out of reach from the ground. Gray: a corner bale, on the"
                    + " list by its other face.";

    private static final int WIDE = 640;
    private static final int LABEL = 22;
    private static final int LARGEST = 26;
    private static final int SMALLEST = 10;
    private static final int A_LINE = 24;
    private static final String CORNER = "#d9d5cc";
    private static final int MOST_DRAWN = 1500;

    /** Empty where a drawing would be too small to read; the list says it all then. */
    public String svg() {
        var faces = faces();
        int longest = faces.entrySet().stream()
                .mapToInt(f -> f.getValue().stream()
                        .mapToInt(p -> column(f.getKey(), p))
                        .max()
                        .orElse(1))
                .max()
                .orElse(1);
        int cell = Math.min(LARGEST, (WIDE - 4) / longest);
        int wide = Math.max(230, longest * cell + 4);
        if (cell < SMALLEST || layout.count() > MOST_DRAWN) {
            return "";
        }
        var numbered = new HashMap<Integer, Integer>();
        for (int i = 0; i < picks.size(); i++) {
            numbered.put(picks.get(i), i + 1);
        }
        var body = new StringBuilder();
        int y = 0;
        for (var face : faces.entrySet()) {
            int rows =
                    face.getValue().stream().mapToInt(StackDrawing::line).max().orElse(1);
            body.append(text(0, y + LABEL - 7, 13, "start", "600", "#000000", name(face.getKey())));
            y += LABEL;
            for (var place : face.getValue()) {
                int x = 2 + (column(face.getKey(), place) - 1) * cell;
                int top = y + (upward(place) ? rows - line(place) : line(place) - 1) * cell;
                body.append(bale(place, numbered.get(place.number()), x, top, cell, place.side() == face.getKey()));
            }
            y += rows * cell + 8;
        }
        return """
                <svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 %d %d" width="%d" height="%d" role="img" \
                aria-labelledby="stack-title stack-desc" font-family="Source Sans 3 Pictures, Source Sans 3" font-style="normal">
                <title id="stack-title">Which bales to core</title>
                <desc id="stack-desc">%s</desc>
                <defs><pattern id="reach" width="5" height="5" patternUnits="userSpaceOnUse">\
                <path d="M0 5 L5 0" stroke="#6b6459" stroke-width="0.8"/></pattern></defs>
                %s</svg>
                """.formatted(wide, y, wide, y, describe(), body);
    }

    private String describe() {
        return "%d of %d bales, numbered in walking order; the list beside tells where each is."
                .formatted(picks.size(), layout.count());
    }

    /** Every bale a face shows, the corner bales that are named by another face too. */
    private Map<Place.Side, List<Place>> faces() {
        var places = layout.places();
        var faces = new TreeMap<Place.Side, List<Place>>();
        for (var place : places) {
            if (place.side() != Place.Side.INSIDE) {
                faces.computeIfAbsent(place.side(), s -> new ArrayList<>());
            }
        }
        faces.forEach(
                (side, shown) -> places.stream().filter(p -> isOn(side, p)).forEach(shown::add));
        return faces;
    }

    private boolean isOn(Place.Side face, Place place) {
        if (place.side() == face) {
            return true;
        }
        if (layout instanceof Layout.Pyramid p) {
            return face == Place.Side.RIGHT && place.column() == p.base() - place.tier() + 1;
        }
        return layout instanceof Layout.Block b
                && switch (face) {
                    case FRONT -> place.row() == 1;
                    case RIGHT -> place.column() == b.columns();
                    case BACK -> place.row() == b.rows();
                    case LEFT -> place.column() == 1;
                    case ROW, INSIDE -> false;
                };
    }

    private static String name(Place.Side side) {
        return side == Place.Side.ROW ? "In walking order" : Show.capital(side.words()) + ", as you face it";
    }

    /** From the left as one stands before the face. */
    private int column(Place.Side face, Place place) {
        return switch (face) {
            case ROW -> (place.number() - 1) % A_LINE + 1;
            case BACK -> mostColumns() + 1 - place.column();
            case LEFT -> mostRows() + 1 - place.row();
            case RIGHT -> place.row();
            case FRONT, INSIDE -> place.column();
        };
    }

    private int mostColumns() {
        return layout instanceof Layout.Block b ? b.columns() : 1;
    }

    private int mostRows() {
        return layout instanceof Layout.Block b ? b.rows() : layout instanceof Layout.Pyramid p ? p.length() : 1;
    }

    private static int line(Place place) {
        return place.side() == Place.Side.ROW ? (place.number() - 1) / A_LINE + 1 : place.tier();
    }

    private static boolean upward(Place place) {
        return place.side() != Place.Side.ROW;
    }

    private static String bale(Place place, @Nullable Integer pick, int x, int y, int cell, boolean isNamedHere) {
        var fill = !isNamedHere ? CORNER : pick != null ? "#1d1b17" : place.reachable() ? "#ffffff" : "url(#reach)";
        var box =
                "<rect x=\"%d\" y=\"%d\" width=\"%d\" height=\"%d\" fill=\"%s\" stroke=\"#1d1b17\" stroke-width=\"1\"/>\n"
                        .formatted(x, y, cell - 2, cell - 2, fill);
        return pick == null
                ? box
                : box
                        + text(
                                x + (cell - 2) / 2,
                                y + cell / 2 + cell / 6,
                                Math.max(7, cell / 2),
                                "middle",
                                "700",
                                isNamedHere ? "#ffffff" : "#000000",
                                String.valueOf(pick));
    }

    private static String text(int x, int y, int size, String anchor, String weight, String fill, String words) {
        return "<text x=\"%d\" y=\"%d\" font-size=\"%d\" text-anchor=\"%s\" font-weight=\"%s\" fill=\"%s\">%s</text>\n"
                .formatted(x, y, size, anchor, weight, fill, words);
    }
}
