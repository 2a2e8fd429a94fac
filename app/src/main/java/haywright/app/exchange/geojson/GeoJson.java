package haywright.app.exchange.geojson;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.exc.StreamConstraintsException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import haywright.app.document.BoundedJson;
import haywright.sampling.field.FieldShape;
import haywright.sampling.field.FieldWalk;
import haywright.sampling.field.Polygon;
import haywright.workings.Problem;
import haywright.workings.Refused;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/** Fields as people type or paste them, and walks as other programs read them. */
public final class GeoJson {
    private static final int LONGEST_TEXT = 100_000;
    /** A position takes four to six: many times the corners that a field may have. */
    private static final long MOST_PARTS = 200_000;

    private static final int MOST_ZONES = 200;
    private static final JsonMapper JSON = BoundedJson.mapper(LONGEST_TEXT, MOST_PARTS);
    private static final String NUMBER = "([-+]?[0-9]{1,12}(?:\\.[0-9]{0,20})?)\\s*°?";
    private static final String DEGREES = "(?:([NSEW])\\s*" + NUMBER + "|" + NUMBER + "\\s*([NSEW])?)";
    /** Two of them; a height after them is left out. */
    private static final Pattern CORNER =
            Pattern.compile(DEGREES + "[,;\\s]+" + DEGREES + "(?:[,;\\s]+[-+]?[0-9]{1,9}(?:\\.[0-9]{0,20})?)?[,;]?");

    private GeoJson() {}

    /**
     * Lines of two numbers, longitude first unless letters of the compass say otherwise; or a GeoJSON polygon, a
     * feature of one, or a collection of just one.
     */
    public static List<List<List<Double>>> rings(String typed) {
        if (typed.stripLeading().startsWith("{")) {
            return polygon(json(typed));
        }
        var ring = new ArrayList<List<Double>>();
        for (var line : typed.replace('−', '-')
                .lines()
                .map(String::strip)
                .filter(l -> !l.isEmpty())
                .toList()) {
            ring.add(corner(line));
        }
        return List.of(ring);
    }

    private static List<Double> corner(String line) {
        var found = CORNER.matcher(line.toUpperCase(Locale.ROOT));
        if (!found.matches()) {
            throw new Refused(
                    "field",
                    line,
                    "a corner is two numbers: longitude, latitude",
                    "Write it as -109.5012, 44.5031, or as 44.5031 N, 109.5012 W.");
        }
        var first = letter(found, 1);
        var second = letter(found, 5);
        boolean isSwapped = first.matches("[NS]") || second.matches("[EW]");
        if (isSwapped && (first.matches("[EW]") || second.matches("[NS]"))) {
            throw new Refused(
                    "field",
                    line,
                    "a corner has one number north or south and one east or west",
                    "Write it as 44.5031 N, 109.5012 W.");
        }
        double one = degrees(found, 1, first);
        double other = degrees(found, 5, second);
        return isSwapped ? List.of(other, one) : List.of(one, other);
    }

    private static String letter(Matcher found, int from) {
        return orEmpty(found.group(from)) + orEmpty(found.group(from + 3));
    }

    private static double degrees(Matcher found, int from, String letter) {
        double written = Double.parseDouble(orEmpty(found.group(from + 1)) + orEmpty(found.group(from + 2)));
        return letter.matches("[SW]") ? -Math.abs(written) : written;
    }

    private static String orEmpty(@Nullable String group) {
        return group == null ? "" : group;
    }

    /** As {@link #rings} reads it: a line a corner, or JSON where the field has holes. */
    public static String typed(Polygon polygon) {
        if (polygon.coordinates().size() > 1) {
            var json = JSON.createObjectNode().put("type", "Polygon");
            json.set("coordinates", JSON.valueToTree(polygon.coordinates()));
            return json.toString();
        }
        var ring = polygon.coordinates().get(0);
        return ring.subList(0, ring.size() - 1).stream()
                .map(p -> p.get(0) + ", " + p.get(1))
                .collect(Collectors.joining("\n"));
    }

    private static JsonNode json(String typed) {
        try {
            return JSON.readTree(typed);
        } catch (JsonProcessingException e) {
            var problem = BoundedJson.problem("field", e);
            throw new Refused(
                    "field",
                    problem.value(),
                    e instanceof StreamConstraintsException
                            ? problem.rule()
                            : "a GeoJSON file starts with { and is whole",
                    "Export the field again.");
        }
    }

    private static List<List<List<Double>>> polygon(JsonNode json) {
        return switch (json.path("type").asText()) {
            case "Polygon" -> rings(json.path("coordinates"));
            case "MultiPolygon" -> {
                if (json.path("coordinates").size() != 1) {
                    throw new Refused(
                            "field",
                            json.path("coordinates").size() + " parts",
                            "one field is one polygon",
                            "Send one part at a time, or as a field of its own.");
                }
                yield rings(json.path("coordinates").get(0));
            }
            case "Feature" -> polygon(json.path("geometry"));
            case "FeatureCollection" -> {
                if (json.path("features").size() != 1) {
                    throw new Refused(
                            "field",
                            json.path("features").size() + " features",
                            "one field is one polygon",
                            "Send one field at a time.");
                }
                yield polygon(json.path("features").get(0));
            }
            default ->
                throw new Refused(
                        "field", json.path("type").asText(), "a field is a GeoJSON Polygon", "Export it as one.");
        };
    }

    private static List<List<List<Double>>> rings(JsonNode coordinates) {
        var rings = new ArrayList<List<List<Double>>>();
        for (var ring : coordinates) {
            var positions = new ArrayList<List<Double>>();
            for (var position : ring) {
                if (!position.path(0).isNumber() || !position.path(1).isNumber()) {
                    throw new Refused(
                            "field", position.toString(), "a corner is two numbers", "Export the polygon again.");
                }
                positions.add(
                        List.of(position.get(0).doubleValue(), position.get(1).doubleValue()));
            }
            rings.add(positions);
        }
        return rings;
    }

    /** Several polygons: a collection, or blocks of corners with empty lines between them. */
    public static List<FieldShape> zones(String typed) {
        var zones = new ArrayList<FieldShape>();
        try {
            if (!typed.stripLeading().startsWith("{")) {
                // browsers end a line with two characters, which are one end of line all the same
                var blocks = List.of(
                        typed.strip().replace("\r\n", "\n").replace('\r', '\n').split("\n\\s*\n"));
                for (var block : few(blocks.size(), blocks)) {
                    zones.add(FieldShape.of(rings(block)));
                }
                return zones;
            }
            var json = json(typed);
            if (json.path("type").asText().equals("FeatureCollection")) {
                for (var feature : few(json.path("features").size(), json.path("features"))) {
                    zones.add(FieldShape.of(polygon(feature)));
                }
                return zones;
            }
            return List.of(FieldShape.of(polygon(json)));
        } catch (Refused e) {
            throw new Refused(e.problems().stream()
                    .map(p -> new Problem("zones", p.value(), p.rule(), p.fix()))
                    .toList());
        }
    }

    private static <T> T few(int zones, T all) {
        if (zones > MOST_ZONES) {
            throw new Refused("zones", zones + " zones", "a field has at most " + MOST_ZONES, "Is it the right file?");
        }
        return all;
    }

    /** The walks as lines and their stops as points, numbered through. */
    public static String write(List<FieldWalk> walks) {
        var all = JSON.createObjectNode().put("type", "FeatureCollection");
        var features = all.putArray("features");
        int number = 0;
        for (var walk : walks) {
            var line = features.addObject().put("type", "Feature");
            line.putObject("properties").put("name", "walk");
            positions(line.putObject("geometry").put("type", "LineString").putArray("coordinates"), walk.path());
            for (var stop : walk.stops()) {
                number++;
                var at = stop.onTheGlobe();
                var point = features.addObject().put("type", "Feature");
                point.putObject("properties").put("name", "S%02d".formatted(number));
                point.putObject("geometry")
                        .put("type", "Point")
                        .putArray("coordinates")
                        .add(at.longitude())
                        .add(at.latitude());
            }
        }
        return all.toPrettyString();
    }

    private static void positions(ArrayNode to, List<FieldShape.Corner> corners) {
        for (var corner : corners) {
            var at = corner.onTheGlobe();
            to.addArray().add(at.longitude()).add(at.latitude());
        }
    }
}
