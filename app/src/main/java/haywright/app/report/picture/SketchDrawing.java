package haywright.app.report.picture;

import haywright.app.words.Show;
import haywright.quantity.Unit;
import haywright.sampling.field.FieldShape;
import haywright.sampling.field.FieldSketch;
import haywright.sampling.field.FieldSketch.Point;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Base64;
import java.util.List;
import java.util.stream.Collectors;

/**
 * The sheet that a field is drawn on: a square of ten by ten squares, north up, with the corners so far. It is a picture
 * of a fixed size, so that a tap on it says where it was without any script.
 *
 * @param west of the sheet's left edge, meters east of the corner that is known
 * @param south of its lower edge, meters north of it
 * @param side meters
 * @param under outlines that are there already: the field that a zone is drawn in, and its other zones
 */
public record SketchDrawing(FieldSketch sketch, double west, double south, double side, List<FieldShape> under) {
    private static final int SQUARES = 10;

    public SketchDrawing {
        under = List.copyOf(under);
    }

    /** Where a tap landed, with the picture so many pixels wide and high. */
    public Point tapped(double x, double y, int pixels) {
        return new Point(west + x / pixels * side, south + (1 - y / pixels) * side);
    }

    /** As the address of an image. */
    public String address(int pixels) {
        return "data:image/svg+xml;base64,"
                + Base64.getEncoder().encodeToString(svg(pixels).getBytes(StandardCharsets.UTF_8));
    }

    /** "88 yd" */
    public String square() {
        return Show.significant(Unit.YARD.fromBase(side / SQUARES), 3) + " yd";
    }

    private String svg(int pixels) {
        var drawn = new ArrayList<String>();
        drawn.add("<rect width=\"%d\" height=\"%1$d\" fill=\"#fff\"/>".formatted(pixels));
        for (int i = 0; i <= SQUARES; i++) {
            double at = Math.min(pixels - 0.5, Math.max(0.5, (double) i / SQUARES * pixels));
            var stroke = i % 5 == 0 ? "#6b6250" : "#c9c0ac";
            drawn.add("<path d=\"M%s 0V%d M0 %1$sH%2$d\" stroke=\"%s\"/>".formatted(at, pixels, stroke));
        }
        for (var shape : under) {
            var outline = shape.rings().stream()
                    .map(ring -> path(ring.stream().map(sketch::at).toList(), pixels) + "Z")
                    .collect(Collectors.joining());
            drawn.add("<path d=\"%s\" fill=\"none\" stroke=\"#6b6250\" stroke-width=\"2\" stroke-dasharray=\"2 4\"/>"
                    .formatted(outline));
        }
        var all = sketch.corners();
        if (all.size() > 2) {
            drawn.add(
                    "<path d=\"%sZ\" fill=\"#1b4560\" fill-opacity=\".1\" stroke=\"#1b4560\" stroke-dasharray=\"6 4\"/>"
                            .formatted(path(all, pixels)));
        }
        if (!all.isEmpty()) {
            drawn.add("<path d=\"%s\" fill=\"none\" stroke=\"#1b4560\" stroke-width=\"2.5\"/>"
                    .formatted(path(all, pixels)));
        }
        for (int i = 0; i < all.size(); i++) {
            drawn.add(corner(all.get(i), i + 1, pixels));
        }
        double x = x(Point.START, pixels);
        double y = y(Point.START, pixels);
        drawn.add(
                "<path d=\"M%s %sh18m-9 -9v18\" stroke=\"#7a3016\" stroke-width=\"2\"/>".formatted(one(x - 9), one(y)));
        drawn.add("<text x=\"%d\" y=\"16\" font-size=\"13\" font-weight=\"700\" text-anchor=\"end\">N ↑</text>"
                .formatted(pixels - 5));
        return "<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"%d\" height=\"%1$d\" viewBox=\"0 0 %1$d %1$d\" font-family=\"sans-serif\" fill=\"#1d1b17\">%s</svg>"
                .formatted(pixels, String.join("", drawn));
    }

    private String corner(Point point, int number, int pixels) {
        var dot = number == 1
                ? "<rect x=\"%s\" y=\"%s\" width=\"12\" height=\"12\"/>"
                        .formatted(one(x(point, pixels) - 6), one(y(point, pixels) - 6))
                : "<circle cx=\"%s\" cy=\"%s\" r=\"5\"/>".formatted(one(x(point, pixels)), one(y(point, pixels)));
        double beside = x(point, pixels) > pixels - 30 ? -9 : 9;
        double below = y(point, pixels) < 24 ? 18 : -7;
        return dot
                + "<text x=\"%s\" y=\"%s\" font-size=\"14\" font-weight=\"700\" text-anchor=\"%s\" stroke=\"#fff\" stroke-width=\"3\" paint-order=\"stroke\">%d</text>"
                        .formatted(
                                one(x(point, pixels) + beside),
                                one(y(point, pixels) + below),
                                beside < 0 ? "end" : "start",
                                number);
    }

    private String path(List<Point> points, int pixels) {
        return "M"
                + points.stream()
                        .map(p -> one(x(p, pixels)) + " " + one(y(p, pixels)))
                        .collect(Collectors.joining("L"));
    }

    private double x(Point point, int pixels) {
        return (point.east() - west) / side * pixels;
    }

    private double y(Point point, int pixels) {
        return (1 - (point.north() - south) / side) * pixels;
    }

    private static String one(double value) {
        return String.format(java.util.Locale.ROOT, "%.1f", value);
    }
}
