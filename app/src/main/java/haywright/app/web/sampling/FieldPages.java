package haywright.app.web.sampling;

import haywright.app.exchange.geojson.GeoJson;
import haywright.app.web.Ask;
import haywright.app.web.Form;
import haywright.app.web.Page;
import haywright.app.web.Routes;
import haywright.app.words.Show;
import haywright.quantity.Unit;
import haywright.ranch.Field;
import haywright.sampling.field.FieldShape;
import haywright.sampling.field.Polygon;
import haywright.sampling.stock.Stock;
import haywright.workings.Problem;
import io.javalin.http.NotFoundResponse;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/** A field's name and outline, and the zones in it, from a file or typed. To draw them is {@link DrawPages}. */
public final class FieldPages {
    public static final Ask NAME = Ask.text("name", "Field name", "");
    public static final Ask GROWS = Ask.text("grows", "Crop", "");
    public static final Ask CORNERS = Ask.text(
            "field",
            "Its corners, typed",
            "One corner per line: longitude, latitude in degrees, −109.5012, 44.5031; or as a phone"
                    + " shows it: 44.5031 N, 109.5012 W. Or paste a GeoJSON polygon.");
    public static final Ask FILE = Ask.text("file", "Or a GeoJSON file", "One polygon; holes are fine.");
    public static final Ask ZONES = Ask.text(
            "zones",
            "Corners of zones, typed",
            "One corner per line: longitude, latitude; blank line between zones. Or paste a GeoJSON collection.");

    private static final String FIELD = "haywright/app/web/sampling/field.jte";
    private static final String ZONE = "haywright/app/web/sampling/zones.jte";
    private static final int MOST_BYTES = 1024 * 1024;
    private static final double MOST_ACRES = 5_000;
    private static final double LEAST_ACRES = 0.1;
    /** Degrees; beyond it there is hardly a cow. */
    private static final double POLAR = 66;
    /** Of latitude, at 69 miles each. */
    private static final double NEAR_DEGREES = 5;

    private FieldPages() {}

    static void routes(Routes on) {
        on.get("take/fields/new", page -> page.show(FIELD, view(page, null, page.form(key(null), Map::of))));
        on.post("take/fields/new", page -> save(page, null));
        on.get("take/fields/{field}/change", FieldPages::change);
        on.post("take/fields/{field}/change", page -> save(page, field(page)));
        on.post("take/fields/{field}/delete", FieldPages::delete);
        on.get("take/fields/{field}/zones", page -> page.show(ZONE, zones(page, page.form(zonesKey(page), Map::of))));
        on.post("take/fields/{field}/zones", FieldPages::addZones);
        on.post("take/fields/{field}/zones/{zone}/delete", FieldPages::dropZone);
    }

    /** @param field null for a new one */
    public record View(Form form, @Nullable Field field, String action, String standing) {}

    /** @param acres of each zone */
    public record ZonesView(Form form, Field field, List<String> acres, String action) {}

    static Field field(Page page) {
        return page.find(page.ranch().fields(), "field");
    }

    private static String key(@Nullable Field field) {
        return field == null ? "take/fields/new" : "take/fields/" + field.id() + "/change";
    }

    private static String zonesKey(Page page) {
        return "take/fields/" + field(page).id() + "/zones";
    }

    private static View view(Page page, @Nullable Field field, Form form) {
        return new View(form, field, page.at(key(field)), field == null ? "" : standing(page, field));
    }

    /** Lots that stand in the field, which cannot go before they do. */
    private static String standing(Page page, Field field) {
        return page.ranch().lots().values().stream()
                .filter(lot ->
                        lot.stock() instanceof Stock.Standing s && s.field().equals(field.id()))
                .map(lot -> lot.name())
                .collect(Collectors.joining(", "));
    }

    private static void change(Page page) {
        var field = field(page);
        page.show(FIELD, view(page, field, page.form(key(field), () -> known(field))));
    }

    private static Map<String, String> known(Field field) {
        var known = new LinkedHashMap<String, String>();
        known.put(NAME.name(), field.name());
        known.put(GROWS.name(), field.grows());
        known.put(CORNERS.name(), GeoJson.typed(field.boundary()));
        return known;
    }

    private static void save(Page page, @Nullable Field before) throws IOException {
        var typed = page.typed();
        var unread = putFile(page, typed, CORNERS);
        var form = page.posted(key(before), typed);
        unread.forEach(p -> form.refuse(p.field(), p.value(), p.rule(), p.fix()));
        form.text(FILE);
        var name = form.name(NAME, "Enter a name.");
        var grows = form.text(GROWS);
        var corners = unread.isEmpty()
                ? form.text(CORNERS, "Enter at least three corners, choose a file, or draw it.")
                : form.text(CORNERS);
        var shape = form.part(() -> FieldShape.of(GeoJson.rings(corners)));
        shape.ifPresent(s -> judge(page, form, CORNERS, s, before));
        var field = form.build(() -> new Field(
                before == null ? UUID.randomUUID() : before.id(),
                name,
                grows,
                polygon(shape.orElseThrow()),
                before == null ? List.of() : before.zones()));
        if (field.isEmpty()) {
            page.reject(form, FIELD, view(page, before, form));
            return;
        }
        keep(page, form, field.get(), before == null ? "Field added: " : "Field changed: ");
    }

    static void keep(Page page, Form form, Field field, String words) {
        page.save(form, words + field.name(), ranch -> ranch.with(field), "take/fields/" + field.id());
    }

    /** Asks about a size no field has, and about a place where this ranch cannot lie: numbers swapped, a minus lost. */
    static void judge(Page page, Form form, Ask ask, FieldShape shape, @Nullable Field before) {
        if (before != null && before.boundary().equals(polygon(shape))) {
            return;
        }
        double acres = Unit.ACRE.fromBase(shape.squareMeters());
        if (acres > MOST_ACRES || acres < LEAST_ACRES) {
            form.doubt(
                    ask,
                    "acres-unusual",
                    "It comes to %s acres, %s than most fields. Is a corner in the wrong place?"
                            .formatted(Show.significant(acres, 3), acres > MOST_ACRES ? "more" : "less"));
        }
        var at = shape.outer().get(0).onTheGlobe();
        var others = page.ranch().fields().values().stream()
                .filter(f -> before == null || !f.id().equals(before.id()))
                .map(f -> f.shape().outer().get(0))
                .toList();
        if (Math.abs(at.latitude()) > POLAR) {
            form.doubt(
                    ask,
                    "place-unusual",
                    "It is at latitude %s and longitude %s, near a pole. Phones give latitude first; here longitude comes first. Are the two swapped?"
                            .formatted(Show.significant(at.latitude(), 6), Show.significant(at.longitude(), 7)));
        } else if (!others.isEmpty() && others.stream().noneMatch(o -> isNear(at, o))) {
            form.doubt(
                    ask,
                    "place-unusual",
                    "It is at latitude %s and longitude %s, more than 300 miles from every other field of this ranch. Are the two swapped, or is a minus missing?"
                            .formatted(Show.significant(at.latitude(), 6), Show.significant(at.longitude(), 7)));
        }
    }

    private static boolean isNear(FieldShape.Corner one, FieldShape.Corner other) {
        double north = one.latitude() - other.latitude();
        double east =
                Math.IEEEremainder(one.longitude() - other.longitude(), 360) * Math.cos(Math.toRadians(one.latitude()));
        return Math.hypot(north, east) <= NEAR_DEGREES;
    }

    /** A file that was chosen takes the place of what was typed; what is wrong with it is beside it. */
    private static List<Problem> putFile(Page page, Map<String, List<String>> typed, Ask into) throws IOException {
        var file = page.http().uploadedFile(FILE.name());
        if (file == null || file.size() == 0) {
            return List.of();
        }
        if (file.size() > MOST_BYTES) {
            return List.of(new Problem(
                    FILE.name(),
                    file.filename(),
                    "a file of outlines is at most 1 MB",
                    "Simplify the outline, or send one field."));
        }
        try (var in = file.content()) {
            var text = new String(in.readNBytes(MOST_BYTES), StandardCharsets.UTF_8).replace("\ufeff", "");
            if (!text.stripLeading().startsWith("{")) {
                return List.of(new Problem(
                        FILE.name(),
                        file.filename(),
                        "not GeoJSON: such a file begins with {",
                        "Export the field as GeoJSON, or type its corners."));
            }
            typed.put(into.name(), List.of(text));
            return List.of();
        }
    }

    static Polygon polygon(FieldShape shape) {
        var rings = new ArrayList<List<List<Double>>>();
        for (var ring : shape.rings()) {
            var positions = new ArrayList<List<Double>>();
            ring.forEach(c -> positions.add(List.of(c.onTheGlobe().longitude(), c.latitude())));
            positions.add(positions.get(0));
            rings.add(positions);
        }
        return new Polygon(rings);
    }

    private static void delete(Page page) {
        var field = field(page);
        var standing = standing(page, field);
        if (!standing.isEmpty()) {
            var form = Form.of(key(field), known(field));
            form.text(NAME);
            form.refuse(NAME.name(), field.name(), standing + " is in it", "Delete that lot first.");
            page.http().status(422);
            page.show(FIELD, view(page, field, form));
            return;
        }
        page.save(
                page.posted(key(field)),
                "Field deleted: " + field.name(),
                ranch -> ranch.withoutField(field.id()),
                "take");
    }

    private static ZonesView zones(Page page, Form form) {
        var field = field(page);
        return new ZonesView(
                form, field, field.zoneShapes().stream().map(FieldPages::acres).toList(), page.at(zonesKey(page)));
    }

    static String acres(FieldShape shape) {
        return Show.significant(Unit.ACRE.fromBase(shape.squareMeters()), 3);
    }

    private static void addZones(Page page) throws IOException {
        var typed = page.typed();
        var unread = putFile(page, typed, ZONES);
        var form = page.posted(zonesKey(page), typed);
        unread.forEach(p -> form.refuse(p.field(), p.value(), p.rule(), p.fix()));
        form.text(FILE);
        var text = unread.isEmpty()
                ? form.text(ZONES, "Enter their corners, choose a file, or draw one.")
                : form.text(ZONES);
        var field = form.build(() -> {
            var more = field(page);
            for (var zone : GeoJson.zones(text)) {
                more = more.with(polygon(zone));
            }
            return more;
        });
        if (field.isEmpty()) {
            page.reject(form, ZONE, zones(page, form));
            return;
        }
        keep(page, form, field.get(), "Zones marked: ");
    }

    private static void dropZone(Page page) {
        var field = field(page);
        var asked = page.http().pathParam("zone");
        int index = asked.matches("[0-9]{1,4}") ? Integer.parseInt(asked) : Integer.MAX_VALUE;
        if (index >= field.zones().size()) {
            throw new NotFoundResponse("This zone is gone.");
        }
        keep(page, page.posted(zonesKey(page)), field.withoutZone(index), "Zone deleted: ");
    }
}
