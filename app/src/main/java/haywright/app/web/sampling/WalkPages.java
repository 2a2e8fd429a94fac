package haywright.app.web.sampling;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import haywright.app.exchange.gpx.Gpx;
import haywright.app.report.FieldDrawing;
import haywright.app.web.Ask;
import haywright.app.web.Form;
import haywright.app.web.Page;
import haywright.app.web.Routes;
import haywright.app.words.Show;
import haywright.quantity.Unit;
import haywright.ranch.Field;
import haywright.sampling.FieldShape;
import haywright.sampling.FieldWalk;
import haywright.sampling.PlotYield;
import haywright.sampling.Polygon;
import haywright.workings.Refused;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/** Fields: their shape, the walk with its stops, and what clipped plots say of the yield. */
public final class WalkPages {
    public static final Ask NAME = Ask.text("name", "What the field is called", "");
    public static final Ask GROWS = Ask.text("grows", "What grows in it", "");
    public static final Ask CORNERS = Ask.text(
            "boundary",
            "Its corners",
            "One corner a line: longitude, latitude in degrees, as −109.5012, 44.5031. Or paste a GeoJSON polygon.");
    public static final Ask STOPS = Ask.number("stops", "Stops", "");
    public static final Ask SEED = Ask.number("seed", "Draw", "Another number starts the walk elsewhere.");
    public static final Ask UNEVEN = Ask.choice("uneven", "It is uneven: hills, wet ground, several soils", "");
    public static final Ask GRAMS =
            Ask.text("grams", "Each plot, grams as cut", "With blanks or lines between them; 0 for a bare plot.");
    public static final Ask FRAME =
            Ask.amount("areaM2", "Area of the frame", Unit.SQUARE_FOOT, "A hoop or a square frame; 1 ft² is common.");
    public static final Ask DRY_MATTER = new Ask("dryMatterPercent", "Dry matter of the cut", Unit.PERCENT, "", 6);
    public static final Ask USABLE = new Ask(
            "usablePercent",
            "Share that is got",
            Unit.PERCENT,
            "25 of range in season, 50 of dormant grass grazed hard.",
            6);

    private static final ObjectMapper JSON = new ObjectMapper();
    private static final String WALK = "haywright/app/web/sampling/walk.jte";
    private static final String FIELD = "haywright/app/web/sampling/field.jte";

    private WalkPages() {}

    static void routes(Routes on) {
        on.get("take/fields/new", page -> page.show(FIELD, page.form("take/fields/new", Map::of)));
        on.post("take/fields/new", WalkPages::add);
        on.get("take/fields/{field}", WalkPages::show);
        on.get(
                "take/fields/{field}/walk.gpx",
                page -> page.http()
                        .contentType("application/gpx+xml")
                        .header("Content-Disposition", "attachment; filename=\"walk.gpx\"")
                        .result(new Gpx(field(page).name(), walk(page).orElseThrow()).text()));
        on.get(
                "take/fields/{field}/walk.geojson",
                page -> page.http()
                        .contentType("application/geo+json")
                        .header("Content-Disposition", "attachment; filename=\"walk.geojson\"")
                        .result(geoJson(walk(page).orElseThrow())));
    }

    /** @param walk null while something asked for is wrong */
    public record View(
            Field field,
            Form form,
            @Nullable FieldWalk walk,
            String acres,
            String advice,
            String drawing,
            String says,
            String query,
            @Nullable PlotYield yield,
            String yielded) {}

    private static Field field(Page page) {
        return page.find(page.ranch().fields(), "field");
    }

    private static void add(Page page) {
        var form = page.posted("take/fields/new");
        var name = form.text(NAME, "What do you call it?");
        var grows = form.text(GROWS);
        var typed = form.text(CORNERS, "Three corners at least.");
        var field = form.build(() -> {
            var shape = FieldShape.of(corners(typed));
            var rings = shape.rings().stream().map(WalkPages::closed).toList();
            return new Field(UUID.randomUUID(), name, grows, new Polygon(rings));
        });
        if (field.isEmpty()) {
            page.reject(form, FIELD, form);
            return;
        }
        page.save(
                form,
                "Field added: " + name,
                ranch -> ranch.with(field.get()),
                "take/fields/" + field.get().id());
    }

    private static List<List<Double>> closed(List<FieldShape.Corner> ring) {
        var positions = new ArrayList<List<Double>>();
        ring.forEach(c -> positions.add(List.of(c.onTheGlobe().longitude(), c.latitude())));
        positions.add(positions.get(0));
        return positions;
    }

    /** Lines of two numbers, or a GeoJSON polygon, a feature of one, or a collection of just one. */
    static List<List<List<Double>>> corners(String typed) {
        if (typed.stripLeading().startsWith("{")) {
            try {
                return polygon(JSON.readTree(typed));
            } catch (JsonProcessingException e) {
                throw new Refused(
                        "boundary", "not JSON", "a GeoJSON file starts with { and is whole", "Paste it again.");
            }
        }
        var ring = new ArrayList<List<Double>>();
        for (var line : typed.replace('−', '-')
                .lines()
                .map(String::strip)
                .filter(l -> !l.isEmpty())
                .toList()) {
            var numbers = line.split("[,;\\s]+");
            try {
                ring.add(List.of(Double.valueOf(numbers[0]), Double.valueOf(numbers[1])));
            } catch (NumberFormatException | ArrayIndexOutOfBoundsException e) {
                throw new Refused(
                        "boundary",
                        line,
                        "a corner is two numbers: longitude, latitude",
                        "Write it as -109.5012, 44.5031.");
            }
        }
        return List.of(ring);
    }

    private static List<List<List<Double>>> polygon(JsonNode json) {
        return switch (json.path("type").asText()) {
            case "Polygon" -> rings(json.path("coordinates"));
            case "Feature" -> polygon(json.path("geometry"));
            case "FeatureCollection" -> {
                if (json.path("features").size() != 1) {
                    throw new Refused(
                            "boundary",
                            json.path("features").size() + " features",
                            "one field is one polygon",
                            "Send one field at a time.");
                }
                yield polygon(json.path("features").get(0));
            }
            default ->
                throw new Refused(
                        "boundary", json.path("type").asText(), "a field is a GeoJSON Polygon", "Export it as one.");
        };
    }

    private static List<List<List<Double>>> rings(JsonNode coordinates) {
        var rings = new ArrayList<List<List<Double>>>();
        for (var ring : coordinates) {
            var positions = new ArrayList<List<Double>>();
            for (var position : ring) {
                if (!position.path(0).isNumber() || !position.path(1).isNumber()) {
                    throw new Refused(
                            "boundary", position.toString(), "a corner is two numbers", "Export the polygon again.");
                }
                positions.add(
                        List.of(position.get(0).doubleValue(), position.get(1).doubleValue()));
            }
            rings.add(positions);
        }
        return rings;
    }

    private static Form asked(Page page, Field field) {
        var query = page.http().queryParamMap();
        return query.containsKey(STOPS.name())
                ? Form.posted("take/fields/" + field.id(), new LinkedHashMap<>(query))
                : Form.of(
                        "take/fields/" + field.id(),
                        Map.of(
                                STOPS.name(),
                                String.valueOf(advice(field, false).stops()),
                                SEED.name(),
                                "1",
                                FRAME.name(),
                                "1",
                                DRY_MATTER.name(),
                                "90",
                                USABLE.name(),
                                "25"));
    }

    private static FieldWalk.Advice advice(Field field, boolean uneven) {
        return FieldWalk.advised(acres(field), uneven);
    }

    private static double acres(Field field) {
        return Unit.SQUARE_METRE.to(Unit.ACRE, FieldShape.of(field.boundary()).squareMetres());
    }

    private static Optional<FieldWalk> walk(Page page) {
        var field = field(page);
        return read(asked(page, field), field);
    }

    private static Optional<FieldWalk> read(Form form, Field field) {
        int stops = form.count(STOPS, "10 to 20 are usual.");
        int seed = form.count(SEED, "1 will do.");
        return form.build(() -> FieldWalk.of(FieldShape.of(field.boundary()), stops, seed));
    }

    private static void show(Page page) {
        var field = field(page);
        var form = asked(page, field);
        var walk = read(form, field);
        var yield = form.isEmpty(GRAMS) ? Optional.<PlotYield>empty() : clipped(form);
        var query = page.http().queryString();
        page.show(
                WALK,
                new View(
                        field,
                        form,
                        walk.orElse(null),
                        Show.significant(acres(field), 3),
                        advice(field, form.isTicked(UNEVEN)).why(),
                        walk.map(w -> new FieldDrawing(FieldShape.of(field.boundary()), w).svg())
                                .orElse(""),
                        walk.map(WalkPages::says).orElse(""),
                        query == null ? "" : "?" + query,
                        yield.orElse(null),
                        yield.map(WalkPages::yielded).orElse("")));
    }

    private static String says(FieldWalk walk) {
        return ("The walk is %s ft long. No point of the field is farther than %s ft from a stop; of an even grid of as many"
                        + " it would be %s ft.%s")
                .formatted(
                        feet(walk.lengthMetres()),
                        feet(walk.farthestMetres()),
                        feet(walk.gridFarthestMetres()),
                        walk.outsideMetres() > 0
                                ? " %s ft of it go round a hole or outside: go round, not through."
                                        .formatted(feet(walk.outsideMetres()))
                                : "");
    }

    private static String feet(double metres) {
        return Show.significant(Unit.METRE.to(Unit.FOOT, metres), 2);
    }

    private static Optional<PlotYield> clipped(Form form) {
        var grams = Numbers.read(form, GRAMS, "Put in each plot.");
        var area = form.quantity(FRAME, "1 ft² is common.");
        double dryMatter = form.number(DRY_MATTER, "Dry a sample, or 90 for hay.");
        double usable = form.number(USABLE, "25 of range in season.");
        return form.build(() -> new PlotYield(grams, area.base(), dryMatter, 80, 20, usable));
    }

    private static String yielded(PlotYield yield) {
        return "%s, 8 times in 10; %s of it got. %s"
                .formatted(
                        Show.about(
                                pounds(yield.kgPerHa()), pounds(yield.low()), pounds(yield.high()), Unit.LB_PER_ACRE),
                        Show.significant(pounds(yield.usableKgPerHa()), 2) + " lb/acre",
                        yield.plotsNeeded() > yield.plots()
                                ? "For a fifth either way clip %d in all: %d more, then stop, whatever they say."
                                        .formatted(yield.plotsNeeded(), yield.plotsNeeded() - yield.plots())
                                : "That is enough plots for a fifth either way.");
    }

    private static double pounds(double kgPerHa) {
        return Unit.KG_PER_HA.to(Unit.LB_PER_ACRE, kgPerHa);
    }

    private static String geoJson(FieldWalk walk) {
        var all = JSON.createObjectNode().put("type", "FeatureCollection");
        var features = all.putArray("features");
        var line = features.addObject().put("type", "Feature");
        line.putObject("properties").put("name", "walk");
        positions(line.putObject("geometry").put("type", "LineString").putArray("coordinates"), walk.path());
        for (int i = 0; i < walk.stops().size(); i++) {
            var stop = features.addObject().put("type", "Feature");
            stop.putObject("properties").put("name", "S%02d".formatted(i + 1));
            var at = walk.stops().get(i).onTheGlobe();
            stop.putObject("geometry")
                    .put("type", "Point")
                    .putArray("coordinates")
                    .add(at.longitude())
                    .add(at.latitude());
        }
        return all.toPrettyString();
    }

    private static void positions(com.fasterxml.jackson.databind.node.ArrayNode to, List<FieldShape.Corner> corners) {
        for (var corner : corners) {
            var at = corner.onTheGlobe();
            to.addArray().add(at.longitude()).add(at.latitude());
        }
    }
}
