package haywright.app.web.sampling;

import haywright.app.exchange.geojson.GeoJson;
import haywright.app.exchange.gpx.Gpx;
import haywright.app.report.picture.FieldDrawing;
import haywright.app.web.Ask;
import haywright.app.web.Form;
import haywright.app.web.Page;
import haywright.app.web.Routes;
import haywright.app.words.Show;
import haywright.quantity.Quantity;
import haywright.quantity.Unit;
import haywright.ranch.Field;
import haywright.sampling.field.FieldShape;
import haywright.sampling.field.FieldWalk;
import haywright.sampling.field.PlotYield;
import io.javalin.http.NotFoundResponse;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/** Fields: their shape, the walk with its stops, and what clipped plots say of the yield. */
public final class WalkPages {
    public static final Ask STOPS = Ask.number("stops", "Stops", "");
    public static final Ask SEED = Ask.number("seed", "Pick set", "Another number starts the walk somewhere else.");
    public static final Ask UNEVEN = Ask.choice("uneven", "Uneven: hills, wet ground, several soils", "");
    public static final Ask GRID = Ask.choice("grid", "Even grid instead of an M", "");
    public static final Ask GRAMS =
            Ask.text("grams", "Plot weights, grams as cut", "Spaces or lines between; 0 for a bare plot.");
    public static final Ask FRAME =
            Ask.amount("areaM2", "Frame area", Unit.SQUARE_FOOT, "Hoop or square; 1 ft² is common.");
    public static final Ask DRY_MATTER = new Ask(
            "dryMatterPercent",
            "Dry matter as cut",
            Unit.PERCENT,
            "Green grass is often 20 to 35, cured 85 to 95. Dry a handful to know.",
            6);
    public static final Ask USABLE = new Ask(
            "usablePercent",
            "Share harvested",
            Unit.PERCENT,
            "25 of range in season, 50 of dormant grass grazed hard.",
            6);

    private static final double MOST_FEET = 10_000;
    /** A plot this many times the middle one is more likely a slip than grass. */
    private static final double WILD = 10;

    private static final String WALK = "haywright/app/web/sampling/walk.jte";

    private WalkPages() {}

    static void routes(Routes on) {
        FieldPages.routes(on);
        DrawPages.routes(on);
        on.get("take/fields/{field}", WalkPages::show);
        on.get(
                "take/fields/{field}/walk.gpx",
                page -> page.http()
                        .contentType("application/gpx+xml")
                        .header("Content-Disposition", "attachment; filename=\"walk.gpx\"")
                        .result(new Gpx(FieldPages.field(page).name(), walks(page)).text()));
        on.get(
                "take/fields/{field}/walk.geojson",
                page -> page.http()
                        .contentType("application/geo+json")
                        .header("Content-Disposition", "attachment; filename=\"walk.geojson\"")
                        .result(GeoJson.write(walks(page))));
    }

    /**
     * @param walks one, or one a zone; none while something asked for is wrong
     * @param says of each walk, in words
     * @param offer query of a grid that leaves less than half as far to the nearest stop; empty where the M does well
     */
    public record View(
            Field field,
            Form form,
            List<FieldWalk> walks,
            String acres,
            String advice,
            String drawing,
            List<String> says,
            boolean isGrid,
            String offer,
            String query,
            @Nullable PlotYield yield,
            String yielded) {
        public int stops() {
            return walks.stream().mapToInt(w -> w.stops().size()).sum();
        }
    }

    private static Form asked(Page page, Field field) {
        var typed = new LinkedHashMap<String, List<String>>();
        typed.put(STOPS.name(), List.of(String.valueOf(advice(field, false).stops())));
        typed.put(SEED.name(), List.of("1"));
        typed.put(FRAME.name(), List.of("1"));
        typed.put(USABLE.name(), List.of("25"));
        typed.putAll(page.http().queryParamMap());
        return Form.posted("take/fields/" + field.id(), typed);
    }

    private static FieldWalk.Advice advice(Field field, boolean uneven) {
        return FieldWalk.advised(acres(field), uneven);
    }

    private static double acres(Field field) {
        return Unit.SQUARE_METER.to(Unit.ACRE, field.shape().squareMeters());
    }

    private static String why(Field field, boolean uneven) {
        if (field.zones().isEmpty()) {
            return advice(field, uneven).why();
        }
        double zoned = field.zoneShapes().stream()
                .mapToDouble(FieldShape::squareMeters)
                .sum();
        double left = Unit.ACRE.fromBase(field.shape().squareMeters() - zoned);
        return "Stops are split among zones by area, at least two each."
                + (left > 0.02 * acres(field)
                        ? " %s acres are in no zone and not walked.".formatted(Show.significant(left, 2))
                        : "");
    }

    private static List<FieldWalk> walks(Page page) {
        var field = FieldPages.field(page);
        return read(asked(page, field), field).orElseThrow(NotFoundResponse::new);
    }

    private static Optional<List<FieldWalk>> read(Form form, Field field) {
        int stops = form.count(STOPS, "10 to 20 are usual.");
        int seed = form.count(SEED, "1 will do.");
        return form.build(() -> form.isTicked(GRID)
                ? field.walks(stops, seed).stream()
                        .map(w -> FieldWalk.grid(w.field(), w.stops().size(), seed))
                        .toList()
                : field.walks(stops, seed));
    }

    private static void show(Page page) {
        var field = FieldPages.field(page);
        var form = asked(page, field);
        var walks = read(form, field).orElse(List.of());
        var yield = form.isEmpty(GRAMS) ? Optional.<PlotYield>empty() : clipped(form);
        var query = page.http().queryString();
        page.show(
                WALK,
                new View(
                        field,
                        form,
                        walks,
                        Show.significant(acres(field), 3),
                        why(field, form.isTicked(UNEVEN)),
                        walks.isEmpty() ? "" : new FieldDrawing(field.shape(), walks).svg(),
                        walks.stream()
                                .map(w -> (walks.size() > 1 ? w.stops().size() + " stops in this zone. " : "")
                                        + says(w, !field.zones().isEmpty()))
                                .toList(),
                        form.isTicked(GRID),
                        offer(form, walks),
                        query == null ? "" : "?" + query,
                        yield.orElse(null),
                        yield.map(WalkPages::yielded).orElse("")));
    }

    private static String offer(Form form, List<FieldWalk> walks) {
        boolean isPoor =
                !form.isTicked(GRID) && walks.stream().anyMatch(w -> w.farthestMeters() >= 2 * w.gridFarthestMeters());
        return isPoor
                ? "?%s=%s&%s=%s&%s=yes"
                        .formatted(
                                STOPS.name(),
                                walks.stream().mapToInt(w -> w.stops().size()).sum(),
                                SEED.name(),
                                form.value(SEED).strip(),
                                GRID.name())
                : "";
    }

    private static String says(FieldWalk walk, boolean zoned) {
        return "The walk is %s long. No point of the %s is over %s from a stop%s.%s"
                .formatted(
                        far(walk.lengthMeters()),
                        zoned ? "zone" : "field",
                        far(walk.farthestMeters()),
                        walk.farthestMeters() <= walk.gridFarthestMeters()
                                ? ""
                                : "; with an even grid, " + far(walk.gridFarthestMeters()),
                        walk.outsideMeters() > 0
                                ? " %s of it go around a hole or outside: go around, not through."
                                        .formatted(far(walk.outsideMeters()))
                                : "");
    }

    /** In feet, or in miles where feet would say nothing to anybody. */
    private static String far(double meters) {
        double feet = Unit.METER.to(Unit.FOOT, meters);
        return feet > MOST_FEET
                ? Show.significant(Unit.METER.to(Unit.MILE, meters), 2) + " miles"
                : Show.significant(feet, 2) + " ft";
    }

    private static Optional<PlotYield> clipped(Form form) {
        var grams = Numbers.read(form, GRAMS, "Enter each plot.");
        var area = form.quantity(FRAME, "1 ft² is common.");
        var dryMatter = form.quantity(DRY_MATTER, "Dry a handful, or judge it: green or cured?");
        form.doubtUnless(DRY_MATTER, null, dryMatter, Quantity.of(10, Unit.PERCENT), Quantity.of(97, Unit.PERCENT));
        double middle = middle(grams);
        grams.stream()
                .filter(g -> middle > 0 && g > WILD * middle)
                .findFirst()
                .ifPresent(g -> form.doubt(
                        GRAMS,
                        "grams-unusual",
                        "%s g is %s times the middle plot’s %s g. Is it one plot, in grams?"
                                .formatted(
                                        Show.significant(g, 6),
                                        Show.significant(g / middle, 2),
                                        Show.significant(middle, 4))));
        double usable = form.number(USABLE, "25 of range in season.");
        return form.build(() -> new PlotYield(grams, area.base(), dryMatter.in(Unit.PERCENT), 80, 20, usable));
    }

    private static double middle(List<Double> grams) {
        var sorted = grams.stream().sorted().toList();
        return sorted.isEmpty() ? 0 : sorted.get((sorted.size() - 1) / 2);
    }

    private static String yielded(PlotYield yield) {
        return "Dry matter: %s, 8 times in 10; %s of it harvested. %s"
                .formatted(
                        Show.about(
                                pounds(yield.kgPerHa()), pounds(yield.low()), pounds(yield.high()), Unit.LB_PER_ACRE),
                        Show.significant(pounds(yield.usableKgPerHa()), 2) + " lb/acre",
                        yield.plotsNeeded() > yield.plots()
                                ? "For plus or minus a fifth clip %d in all: %d more, then stop."
                                        .formatted(yield.plotsNeeded(), yield.plotsNeeded() - yield.plots())
                                : "Enough plots for plus or minus a fifth.");
    }

    private static double pounds(double kgPerHa) {
        return Unit.KG_PER_HA.to(Unit.LB_PER_ACRE, kgPerHa);
    }
}
