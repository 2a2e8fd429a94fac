package haywright.app.report.picture;

import haywright.sampling.field.FieldShape;
import haywright.sampling.field.FieldWalk;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;

/** A field from above, north up, with its walk and stops; no map behind it, so that it needs no signal. */
public record FieldDrawing(FieldShape field, List<FieldWalk> walks) {
    public FieldDrawing {
        walks = List.copyOf(walks);
    }

    private static final double WIDE = 640;
    private static final double TALL = 520;
    private static final double EDGE = 16;

    public String svg() {
        var all = field.outer();
        double west =
                all.stream().mapToDouble(FieldShape.Corner::longitude).min().orElseThrow();
        double east =
                all.stream().mapToDouble(FieldShape.Corner::longitude).max().orElseThrow();
        double south =
                all.stream().mapToDouble(FieldShape.Corner::latitude).min().orElseThrow();
        double north =
                all.stream().mapToDouble(FieldShape.Corner::latitude).max().orElseThrow();
        double narrower = Math.cos(Math.toRadians((south + north) / 2));
        double scale = Math.min((WIDE - 2 * EDGE) / ((east - west) * narrower), (TALL - 2 * EDGE) / (north - south));
        var on = new Onto(west, north, narrower * scale, scale);
        double tall = (north - south) * scale + 2 * EDGE;
        var body = new StringBuilder();
        body.append("<path d=\"%s\" fill=\"#ffffff\" fill-rule=\"evenodd\" stroke=\"#1d1b17\" stroke-width=\"2\"/>\n"
                .formatted(
                        field.rings().stream().map(ring -> on.line(ring) + " Z").collect(Collectors.joining(" "))));
        int number = 0;
        for (var walk : walks) {
            if (!walk.field().equals(field)) {
                body.append("<path d=\"%s Z\" fill=\"none\" stroke=\"#1d1b17\" stroke-width=\"1\"/>\n"
                        .formatted(on.line(walk.field().outer())));
            }
            body.append(
                    "<path d=\"%s\" fill=\"none\" stroke=\"#1b4560\" stroke-width=\"2\" stroke-dasharray=\"6 4\"/>\n"
                            .formatted(on.line(walk.path())));
            for (var stop : walk.stops()) {
                number++;
                body.append(
                        "<circle cx=\"%s\" cy=\"%s\" r=\"11\" fill=\"#1d1b17\"/>\n".formatted(on.x(stop), on.y(stop)));
                body.append(
                        "<text x=\"%s\" y=\"%s\" dy=\"4\" font-size=\"12\" font-weight=\"700\" text-anchor=\"middle\" fill=\"#ffffff\">%d</text>\n"
                                .formatted(on.x(stop), on.y(stop), number));
            }
        }
        return """
                <svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 %d %d" width="%d" height="%d" role="img" \
                aria-labelledby="field-title field-desc" font-family="Source Sans 3 Pictures, Source Sans 3" font-style="normal">
                <title id="field-title">The walk across the field</title>
                <desc id="field-desc">North is up. %d stops, numbered as they are walked.</desc>
                %s</svg>
                """.formatted((int) WIDE, (int) tall, (int) WIDE, (int) tall, number, body);
    }

    private record Onto(double west, double north, double perLongitude, double perLatitude) {
        String x(FieldShape.Corner c) {
            return one(EDGE + (c.longitude() - west) * perLongitude);
        }

        String y(FieldShape.Corner c) {
            return one(EDGE + (north - c.latitude()) * perLatitude);
        }

        String line(List<FieldShape.Corner> corners) {
            return "M" + corners.stream().map(c -> x(c) + " " + y(c)).collect(Collectors.joining(" L"));
        }

        private static String one(double pixels) {
            return String.format(Locale.ROOT, "%.1f", pixels);
        }
    }
}
