package haywright.app.exchange.gpx;

import haywright.sampling.field.FieldShape;
import haywright.sampling.field.FieldWalk;
import java.util.List;
import java.util.Locale;

/**
 * A field walk as GPX 1.1: stops as waypoints S01, S02, …, the walk as a route; where a field has zones, a walk in each.
 *
 * @param name of the field
 * @see "GPX 1.1 Schema Documentation, Topografix"
 */
public record Gpx(String name, List<FieldWalk> walks) {
    public Gpx {
        walks = List.copyOf(walks);
    }

    public String text() {
        var all = new StringBuilder("""
                <?xml version="1.0" encoding="UTF-8"?>
                <gpx xmlns="http://www.topografix.com/GPX/1/1" version="1.1" creator="Haywright">
                <metadata><name>%s</name></metadata>
                """.formatted(escaped(name)));
        int number = 0;
        for (var walk : walks) {
            for (var stop : walk.stops()) {
                number++;
                all.append("<wpt %s><name>S%02d</name></wpt>\n".formatted(at(stop), number));
            }
        }
        for (var walk : walks) {
            all.append("<rte><name>%s</name>\n".formatted(escaped("Walk, " + name)));
            points(all, walk.path());
            all.append("</rte>\n");
        }
        return all.append("</gpx>\n").toString();
    }

    private static void points(StringBuilder all, List<FieldShape.Corner> corners) {
        for (var corner : corners) {
            all.append("<rtept %s/>\n".formatted(at(corner)));
        }
    }

    /** Seven digits are a centimeter. */
    private static String at(FieldShape.Corner corner) {
        var c = corner.onTheGlobe();
        double longitude = Math.rint(c.longitude() * 1e7) / 1e7;
        // The format ends below 180, which is written as −180.
        return String.format(
                Locale.ROOT, "lat=\"%.7f\" lon=\"%.7f\"", c.latitude(), longitude >= 180 ? -180 : longitude);
    }

    /** Signs that XML has no place for are left out. */
    private static String escaped(String words) {
        return words.replaceAll("[^\\x20-\\uD7FF\\uE000-\\uFFFD\\x{10000}-\\x{10FFFF}]", " ")
                .replace("&", "&amp;")
                .replace("<", "&lt;")
                .replace(">", "&gt;");
    }
}
