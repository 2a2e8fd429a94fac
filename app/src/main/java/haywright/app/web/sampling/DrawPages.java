package haywright.app.web.sampling;

import haywright.app.report.SketchDrawing;
import haywright.app.web.Ask;
import haywright.app.web.Form;
import haywright.app.web.Option;
import haywright.app.web.Page;
import haywright.app.web.Routes;
import haywright.app.words.Show;
import haywright.quantity.Unit;
import haywright.ranch.Field;
import haywright.sampling.FieldShape;
import haywright.sampling.FieldSketch;
import haywright.sampling.FieldSketch.Point;
import haywright.workings.Problem;
import haywright.workings.Refused;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/**
 * An outline drawn on a sheet: each tap, or each leg typed, is one round trip and adds a corner, so it works without
 * scripts and a look back in the browser takes corners back. What is drawn so far is kept as a draft.
 */
public final class DrawPages {
    public static final Ask LATITUDE = new Ask(
            "start", "Latitude", Unit.NONE, "As a phone shows it there, for example 44.5031. North is positive.", 14);
    public static final Ask LONGITUDE =
            new Ask("longitude", "Longitude", Unit.NONE, "For example −109.5012, or 109.5012 W.", 14);
    public static final Ask LIES = Ask.choice("lies", "From there the field lies", "");
    public static final Ask SIDE =
            Ask.amount("side", "Side of the sheet", Unit.YARD, "A little more than the field: 880 is half a mile.");
    public static final Ask CORNERS = Ask.text("corners", "The sheet", "");
    public static final Ask LONG = Ask.amount("long", "So far from the last corner", Unit.YARD, "");
    public static final Ask BEARING =
            Ask.number("bearing", "Bearing, degrees", "0 is north, 90 east, 180 south, 270 west.");
    public static final Ask EAST = Ask.amount("east", "East of the start", Unit.YARD, "Minus is west.");
    public static final Ask NORTH = Ask.amount("north", "North of the start", Unit.YARD, "Minus is south.");

    /** Pixels of the picture: one for a phone, one for a desk. A tap is told in these, whatever the screen. */
    public static final int SMALL = 256;

    public static final int LARGE = 600;

    private static final String DRAW = "haywright/app/web/sampling/draw.jte";
    private static final double LEAST_SIDE = 20;
    private static final double MOST_SIDE = 50_000;
    private static final double MARGIN = 0.06;
    private static final Pattern DEGREES = Pattern.compile("([-−+]?)\\s*([0-9]{1,3}(?:\\.[0-9]*)?)\\s*°?\\s*([NSEW]?)");

    private DrawPages() {}

    static void routes(Routes on) {
        on.get("take/fields/draw", page -> show(page, new Target(null, false)));
        on.post("take/fields/draw", page -> step(page, new Target(null, false)));
        on.get("take/fields/{field}/draw", page -> show(page, new Target(FieldPages.field(page), false)));
        on.post("take/fields/{field}/draw", page -> step(page, new Target(FieldPages.field(page), false)));
        on.get("take/fields/{field}/zone", page -> show(page, new Target(FieldPages.field(page), true)));
        on.post("take/fields/{field}/zone", page -> step(page, new Target(FieldPages.field(page), true)));
    }

    /** Which way the sheet lies from the place that is known. */
    enum Lies {
        NORTH_EAST("to the north-east", 0, 0),
        NORTH_WEST("to the north-west", 1, 0),
        SOUTH_EAST("to the south-east", 0, 1),
        SOUTH_WEST("to the south-west", 1, 1),
        ALL_ROUND("all round", 0.5, 0.5);

        private final String words;
        private final double west;
        private final double south;

        Lies(String words, double west, double south) {
            this.words = words;
            this.west = west;
            this.south = south;
        }

        double westOf(double side) {
            return -side * (MARGIN + west * (1 - 2 * MARGIN));
        }

        double southOf(double side) {
            return -side * (MARGIN + south * (1 - 2 * MARGIN));
        }
    }

    /** @param field null for a new one; with {@code zone} the outline is a zone in it */
    record Target(@Nullable Field field, boolean zone) {
        String key() {
            return field == null ? "take/fields/draw" : "take/fields/" + field.id() + (zone ? "/zone" : "/draw");
        }

        String back() {
            return field == null ? "take/fields/new" : "take/fields/" + field.id();
        }
    }

    /**
     * @param sheet null until the place that is known is
     * @param legs each corner so far, in words
     * @param says its area, or what is wrong with it if it were closed now
     */
    public record View(
            Form form,
            String title,
            boolean isNew,
            @Nullable SketchDrawing sheet,
            List<String> legs,
            String says,
            String action,
            String back) {
        public List<Option> ways() {
            return Option.of(Lies.class, lies -> lies.words);
        }
    }

    private static void show(Page page, Target target) {
        var form = page.form(target.key(), () -> known(target));
        var isLaidOut = target.field() != null || !form.isEmpty(LATITUDE);
        page.show(
                DRAW, view(page, target, form, isLaidOut ? drawing(form, target).orElse(null) : null));
    }

    private static Map<String, String> known(Target target) {
        var known = new LinkedHashMap<String, String>();
        var field = target.field();
        if (field == null) {
            known.put(SIDE.name(), "880");
            known.put(LIES.name(), Form.id(Lies.NORTH_EAST));
            known.put(CORNERS.name(), write(List.of(Point.START)));
        } else if (!target.zone()) {
            known.put(
                    CORNERS.name(), write(FieldSketch.of(field.shape().outer()).corners()));
        }
        return known;
    }

    private static View view(Page page, Target target, Form form, @Nullable SketchDrawing sheet) {
        var field = target.field();
        return new View(
                form,
                field == null
                        ? "Draw a field"
                        : target.zone() ? "Draw a zone in " + field.name() : "Draw " + field.name() + " anew",
                field == null,
                sheet,
                sheet == null ? List.of() : legs(sheet.sketch().corners()),
                sheet == null ? "" : says(sheet.sketch()),
                page.at(target.key()),
                page.at(target.back()));
    }

    private static List<String> legs(List<Point> corners) {
        var legs = new ArrayList<String>();
        for (int i = 0; i < corners.size(); i++) {
            var at = corners.get(i);
            var from = "%s %s, %s %s of the start"
                    .formatted(
                            yards(at.east()),
                            at.east() < 0 ? "west" : "east",
                            yards(at.north()),
                            at.north() < 0 ? "south" : "north");
            legs.add(
                    i == 0
                            ? (at.equals(Point.START) ? "the start" : from)
                            : "%s from the last; %s".formatted(yards(at.to(corners.get(i - 1))), from));
        }
        return legs;
    }

    private static String yards(double metres) {
        return "%.0f yd".formatted(Math.abs(Unit.YARD.fromBase(metres)));
    }

    private static String says(FieldSketch sketch) {
        int corners = sketch.corners().size();
        if (corners < 3) {
            return corners == 0
                    ? "No corner yet."
                    : Show.count(corners, "corner") + " so far; three or more make a field.";
        }
        try {
            return "%s acres, closed from corner %d back to 1.".formatted(FieldPages.acres(sketch.shape()), corners);
        } catch (Refused refused) {
            var problem = refused.problems().get(0);
            return "It cannot be closed yet: %s (%s).".formatted(problem.value(), problem.rule());
        }
    }

    private static String write(List<Point> corners) {
        return corners.stream()
                .map(p -> String.format(Locale.ROOT, "%.2f,%.2f", p.east(), p.north()))
                .collect(Collectors.joining(" "));
    }

    private static List<Point> read(String written) {
        var corners = new ArrayList<Point>();
        for (var pair : written.strip().split("\\s+")) {
            var numbers = pair.split(",");
            if (numbers.length == 2 && (numbers[0] + numbers[1]).matches("[-.0-9]{1,40}")) {
                try {
                    corners.add(new Point(Double.parseDouble(numbers[0]), Double.parseDouble(numbers[1])));
                } catch (NumberFormatException e) {
                    // not written by this page: left out
                }
            }
        }
        return corners;
    }

    // The sheet

    private static Optional<SketchDrawing> drawing(Form form, Target target) {
        var field = target.field();
        form.text(CORNERS);
        return field == null ? newSheet(form) : sheetOf(form, field, target.zone());
    }

    private static Optional<SketchDrawing> newSheet(Form form) {
        double latitude = degrees(form, LATITUDE, "NS");
        double longitude = degrees(form, LONGITUDE, "EW");
        var lies = form.choice(LIES, Lies.class, "Choose one.");
        double side = form.quantity(SIDE, "880 yd is half a mile.").base();
        if (form.problem(SIDE).isEmpty() && !(side >= LEAST_SIDE && side <= MOST_SIDE)) {
            form.refuse(
                    SIDE.name(),
                    form.value(SIDE),
                    "a sheet is between 25 yd and 30 miles wide",
                    "880 yd is half a mile.");
        }
        return form.build(() -> new SketchDrawing(
                new FieldSketch(new FieldShape.Corner(longitude, latitude), read(form.value(CORNERS))),
                lies.westOf(side),
                lies.southOf(side),
                side,
                List.of()));
    }

    /** Round the field as it stands, with room to draw beyond its edge. */
    private static Optional<SketchDrawing> sheetOf(Form form, Field field, boolean zone) {
        var shape = field.shape();
        var ring = FieldSketch.of(shape.outer()).corners();
        double west = ring.stream().mapToDouble(Point::east).min().orElseThrow();
        double east = ring.stream().mapToDouble(Point::east).max().orElseThrow();
        double south = ring.stream().mapToDouble(Point::north).min().orElseThrow();
        double north = ring.stream().mapToDouble(Point::north).max().orElseThrow();
        double side = Math.max(east - west, north - south) * (zone ? 1 + 2 * MARGIN : 1.5);
        var under = new ArrayList<FieldShape>(List.of(shape));
        under.addAll(field.zoneShapes());
        return form.build(() -> new SketchDrawing(
                new FieldSketch(shape.outer().get(0).onTheGlobe(), read(form.value(CORNERS))),
                (west + east - side) / 2,
                (south + north - side) / 2,
                side,
                under));
    }

    /** "44.5031", "109.5012 W"; both, as a phone copies them, into the first box. */
    private static double degrees(Form form, Ask ask, String signs) {
        var both = form.value(LATITUDE).split("[,;]", -1);
        boolean isPair = both.length == 2 && form.isEmpty(LONGITUDE);
        if (!isPair || ask == LATITUDE) {
            form.text(ask, "A phone shows it where you stand.");
        } else {
            form.text(ask);
        }
        var typed = isPair ? both[ask == LATITUDE ? 0 : 1] : form.value(ask);
        if (typed.isBlank()) {
            return 0;
        }
        var found = DEGREES.matcher(typed.strip().toUpperCase(Locale.ROOT));
        if (!found.matches() || !(found.group(3).isEmpty() || signs.contains(found.group(3)))) {
            form.refuse(
                    ask.name(),
                    typed.strip(),
                    "this is no " + ask.label().toLowerCase(Locale.ROOT),
                    "In degrees with decimals: 44.5031, or 109.5012 W.");
            return 0;
        }
        double degrees = Double.parseDouble(found.group(2));
        boolean isMinus = found.group(1).equals("-") || found.group(1).equals("−");
        return isMinus != (found.group(3).equals("S") || found.group(3).equals("W")) ? -degrees : degrees;
    }

    // One step

    private static void step(Page page, Target target) {
        var form = page.posted(target.key());
        var sheet = drawing(form, target);
        if (sheet.isEmpty()) {
            page.reject(form, DRAW, view(page, target, form, null));
            return;
        }
        var asked = form.value("do");
        if (asked.equals("save")) {
            save(page, target, form, sheet.get());
            return;
        }
        var now = sheet.get().sketch();
        var next = form.build(() -> beside(() -> next(form, asked, sheet.get())));
        if (next.isEmpty()) {
            page.reject(form, DRAW, view(page, target, form, sheet.get()));
            return;
        }
        var typed = new LinkedHashMap<>(page.http().formParamMap());
        typed.keySet().removeIf(name -> name.matches("do|(tap|wide)\\.[xy]"));
        typed.put(CORNERS.name(), List.of(write(next.get().corners())));
        if (!next.get().equals(now)) {
            List.of(LONG, BEARING, EAST, NORTH).forEach(ask -> typed.remove(ask.name()));
        }
        page.keep(Form.posted(target.key(), typed));
        Page.leave(page.http(), page.at(target.key()) + "#sheet");
    }

    /** Whatever is wrong with a corner stands beside the sheet. */
    private static <T> T beside(java.util.function.Supplier<T> making) {
        try {
            return making.get();
        } catch (Refused refused) {
            throw new Refused(refused.problems().stream()
                    .map(p -> List.of(LONG.name(), EAST.name()).contains(p.field())
                            ? p
                            : new Problem(CORNERS.name(), p.value(), p.rule(), p.fix()))
                    .toList());
        }
    }

    private static FieldSketch next(Form form, String asked, SketchDrawing sheet) {
        var sketch = sheet.sketch();
        var tap = tap(form, sheet);
        if (tap.isPresent()) {
            return sketch.with(tap.get());
        }
        if (asked.equals("undo")) {
            return sketch.withoutLast();
        }
        return asked.equals("sheet")
                ? sketch
                : leg(form, sketch).map(sketch::with).orElse(sketch);
    }

    private static Optional<Point> tap(Form form, SketchDrawing sheet) {
        for (var name : List.of("tap", "wide")) {
            var x = form.value(name + ".x");
            var y = form.value(name + ".y");
            if (x.matches("[0-9]{1,4}") && y.matches("[0-9]{1,4}")) {
                if (x.equals("0") && y.equals("0")) {
                    throw new Refused(
                            CORNERS.name(),
                            "",
                            "the sheet was pressed with a key, which says no place",
                            "Type the next corner in the boxes under the sheet.");
                }
                int pixels = name.equals("tap") ? SMALL : LARGE;
                return Optional.of(sheet.tapped(
                        Math.min(Integer.parseInt(x), pixels), Math.min(Integer.parseInt(y), pixels), pixels));
            }
        }
        return Optional.empty();
    }

    /** By distance and bearing from the last corner, or by so much east and north of the start; empty if none is typed. */
    private static Optional<Point> leg(Form form, FieldSketch sketch) {
        var far = form.maybeQuantity(LONG);
        var bearing = form.maybeNumber(BEARING);
        var east = form.maybeQuantity(EAST);
        var north = form.maybeQuantity(NORTH);
        if (far == null && bearing == null && east == null && north == null) {
            return Optional.empty();
        }
        if ((far != null || bearing != null) && (east != null || north != null)) {
            throw new Refused(
                    EAST.name(), "", "a corner is put in one way or the other", "Empty the boxes of one of the two.");
        }
        if (far != null && bearing != null) {
            return Optional.of(sketch.last().leg(far.base(), bearing));
        }
        if (east != null && north != null) {
            return Optional.of(new Point(east.base(), north.base()));
        }
        throw new Refused(
                far != null || bearing != null ? LONG.name() : EAST.name(),
                "",
                "a corner takes two numbers",
                far != null || bearing != null ? "How far, and which way?" : "How far east, and how far north?");
    }

    private static void save(Page page, Target target, Form form, SketchDrawing sheet) {
        var before = target.field();
        var name = before == null ? form.text(FieldPages.NAME, "What do you call it?") : "";
        var grows = form.text(FieldPages.GROWS);
        var drawn = form.part(() -> beside(() -> sheet.sketch().shape()));
        if (!target.zone()) {
            drawn.ifPresent(s -> FieldPages.judge(page, form, CORNERS, s, before));
        }
        var field = form.build(() -> beside(() -> {
            var shape = drawn.orElseThrow();
            if (before == null) {
                return new Field(UUID.randomUUID(), name, grows, FieldPages.polygon(shape), List.of());
            }
            return target.zone() ? before.with(FieldPages.polygon(shape)) : anew(before, shape);
        }));
        if (field.isEmpty()) {
            page.reject(form, DRAW, view(page, target, form, sheet));
            return;
        }
        FieldPages.keep(
                page,
                form,
                field.get(),
                before == null ? "Field drawn: " : target.zone() ? "Zone marked: " : "Field changed: ");
    }

    /** Holes stay where they are. */
    private static Field anew(Field before, FieldShape outer) {
        var rings = new ArrayList<>(outer.rings());
        var old = before.shape().rings();
        rings.addAll(old.subList(1, old.size()));
        return new Field(
                before.id(), before.name(), before.grows(), FieldPages.polygon(new FieldShape(rings)), before.zones());
    }
}
