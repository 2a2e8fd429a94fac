package haywright.app.web.sampling;

import haywright.app.report.picture.SketchDrawing;
import haywright.app.web.Ask;
import haywright.app.web.Form;
import haywright.app.web.Option;
import haywright.quantity.Unit;
import haywright.ranch.Field;
import haywright.sampling.field.FieldShape;
import haywright.sampling.field.FieldSketch;
import haywright.sampling.field.FieldSketch.Point;
import haywright.workings.Problem;
import haywright.workings.Refused;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.function.Supplier;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/** The sheet that an outline is drawn on, as its form tells it: where it lies, the corners so far and the next one. */
public final class SketchForm {
    public static final Ask LATITUDE = new Ask(
            "start", "Latitude", Unit.NONE, "From a phone at the corner, such as 44.5031. North is positive.", 14);
    public static final Ask LONGITUDE =
            new Ask("longitude", "Longitude", Unit.NONE, "Such as −109.5012, or 109.5012 W.", 14);
    public static final Ask LIES = Ask.choice("lies", "Which way the field runs from that corner", "");
    public static final Ask SIDE =
            Ask.amount("side", "Side of the sheet", Unit.YARD, "A little over the field: 880 is half a mile.");
    public static final Ask CORNERS = Ask.text("corners", "The sheet", "");
    public static final Ask LONG = Ask.amount("long", "Distance from the last corner", Unit.YARD, "");
    public static final Ask BEARING =
            Ask.number("bearing", "Bearing, degrees", "0 is north, 90 east, 180 south, 270 west.");
    public static final Ask EAST = Ask.amount("east", "East of the start", Unit.YARD, "Minus is west.");
    public static final Ask NORTH = Ask.amount("north", "North of the start", Unit.YARD, "Minus is south.");
    /** The boxes that the next corner is entered. */
    static final List<Ask> NEXT = List.of(LONG, BEARING, EAST, NORTH);

    /** Pixels of the picture: one for a phone, one for a desk. A tap is told in these, whatever the screen. */
    public static final int SMALL = 256;

    public static final int LARGE = 600;

    private static final double LEAST_SIDE = 20;
    private static final double MOST_SIDE = 50_000;
    private static final double MARGIN = 0.06;
    private static final Pattern DEGREES = Pattern.compile("([-−+]?)\\s*([0-9]{1,3}(?:\\.[0-9]*)?)\\s*°?\\s*([NSEW]?)");

    private SketchForm() {}

    /** Which way the sheet lies from the place that is known. */
    enum Lies {
        NORTH_EAST("to the northeast", 0, 0),
        NORTH_WEST("to the northwest", 1, 0),
        SOUTH_EAST("to the southeast", 0, 1),
        SOUTH_WEST("to the southwest", 1, 1),
        ALL_ROUND("all around it", 0.5, 0.5);

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

    public static List<Option> ways() {
        return Option.of(Lies.class, lies -> lies.words);
    }

    /** What the form of a new field, of a new zone in a field or of the field drawn anew starts with. */
    static Map<String, String> known(@Nullable Field field, boolean zone) {
        var known = new LinkedHashMap<String, String>();
        if (field == null) {
            known.put(SIDE.name(), "880");
            known.put(LIES.name(), Form.id(Lies.NORTH_EAST));
            known.put(CORNERS.name(), write(List.of(Point.START)));
        } else if (!zone) {
            known.put(
                    CORNERS.name(), write(FieldSketch.of(field.shape().outer()).corners()));
        }
        return known;
    }

    /** The sheet with the corners so far, or nothing if it is not said where it lies; then the form says what is wrong. */
    static Optional<SketchDrawing> sheet(Form form, @Nullable Field field, boolean zone) {
        form.text(CORNERS);
        return field == null ? newSheet(form) : sheetOf(form, field, zone);
    }

    /** The corners as the form is enough for them from one round trip to the next. */
    static String write(List<Point> corners) {
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
            form.text(ask, "Your phone shows it where you are.");
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
                    "not a " + ask.label().toLowerCase(Locale.ROOT),
                    "In degrees with decimals: 44.5031, or 109.5012 W.");
            return 0;
        }
        double degrees = Double.parseDouble(found.group(2));
        boolean isMinus = found.group(1).equals("-") || found.group(1).equals("−");
        return isMinus != (found.group(3).equals("S") || found.group(3).equals("W")) ? -degrees : degrees;
    }

    /** Whatever is wrong with a corner is beside the sheet. */
    static <T> T beside(Supplier<T> making) {
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

    /** With the corner that was tapped or typed, or without the last one. @param asked which button was pressed */
    static FieldSketch next(Form form, String asked, SketchDrawing sheet) {
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
                            "the sheet was pressed by key, which gives no place",
                            "Enter the next corner in the boxes under the sheet.");
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
        boolean isFromLast = far != null || bearing != null;
        boolean isFromStart = east != null || north != null;
        if (!isFromLast && !isFromStart) {
            return Optional.empty();
        }
        if (isFromLast && isFromStart) {
            throw new Refused(EAST.name(), "", "a corner is entered one way or the other", "Clear one pair of boxes.");
        }
        if (far != null && bearing != null) {
            return Optional.of(sketch.last().leg(far.base(), bearing));
        }
        if (east != null && north != null) {
            return Optional.of(new Point(east.base(), north.base()));
        }
        throw new Refused(
                isFromLast ? LONG.name() : EAST.name(),
                "",
                "a corner takes two numbers",
                isFromLast ? "Enter how far and which way." : "Enter how far east and north.");
    }
}
