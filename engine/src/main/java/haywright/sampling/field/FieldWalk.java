package haywright.sampling.field;

import haywright.chance.Draws;
import haywright.quantity.Unit;
import haywright.sampling.PublishedRule;
import haywright.workings.Input;
import haywright.workings.Line;
import haywright.workings.Refused;
import haywright.workings.Source;
import haywright.workings.Worked;
import java.util.ArrayList;
import java.util.List;

/**
 * A walk across a field with stops: four strokes, an M, in the smallest rectangle round the field, kept off the edge,
 * cut to the field and its holes; stops at equal distances along what is left, the first at random.
 *
 * @param stops in walking order
 * @param path what is walked, from its first corner to its last; where a piece of the M was cut away it goes along the
 *     edge of the hole, or of the field, the shorter way round to the next piece
 * @param lengthMeters of the whole path
 * @param outsideMeters of it, between pieces, where the way goes round a hole or along the edge of the field
 * @param farthestMeters from the point of the field that lies farthest from any stop to its nearest stop
 */
public record FieldWalk(
        FieldShape field,
        List<FieldShape.Corner> stops,
        List<FieldShape.Corner> path,
        double lengthMeters,
        double outsideMeters,
        double farthestMeters,
        long seed)
        implements Worked {
    public static final int MOST_STOPS = 200;

    /** Headlands, gates and salt grounds are not the field: ten meters off the edge, less where it is narrow. */
    private static final double INSET_METERS = 10;

    private static final double INSET_SHARE = 0.05;

    /** How many stops, why, and who says so. */
    public record Advice(int stops, String why, Source source) {}

    public FieldWalk {
        stops = List.copyOf(stops);
        path = List.copyOf(path);
    }

    public static Advice advised(double acres, boolean uneven) {
        if (acres > 40) {
            return new Advice(
                    20,
                    "Over the published 40 acres for one walk: take 20 stops, or better, mark zones and walk each."
                            + (uneven ? " Uneven ground adds none: 20 is the most published." : ""),
                    PublishedRule.named("R062").source());
        }
        return uneven
                ? new Advice(
                        20,
                        "An uneven field takes more stops: 20 is the most published.",
                        PublishedRule.named("R062").source())
                : new Advice(
                        15,
                        "Published: 10 to 15 for up to 40 acres; 15 used.",
                        PublishedRule.named("R060").source());
    }

    public static FieldWalk of(FieldShape field, int stops, long seed) {
        check(stops);
        var plane = new Plane(field);
        var rings = plane.flat(field);
        var pieces = pieces(rings);
        double inside = 0;
        for (var piece : pieces) {
            inside += piece[0].to(piece[1]);
        }
        var at = along(pieces, inside, stops, seed);
        var path = path(pieces, rings);
        double length = length(path);
        return new FieldWalk(
                field,
                at.stream().map(plane::round).toList(),
                path.stream().map(plane::round).toList(),
                length,
                length - inside,
                Coverage.farthest(rings, at),
                seed);
    }

    /**
     * {@link #farthestMeters} for an even grid of as many stops, or of the nearest number a grid can have: what the M gives
     * up for being walkable.
     */
    public double gridFarthestMeters() {
        var rings = new Plane(field).flat(field);
        return Coverage.farthest(rings, Coverage.grid(rings, stops.size()));
    }

    /**
     * The even grid of as many stops, or of the nearest number a grid can have, walked up one line and down the next: for
     * a field that the M covers poorly. It has no random start.
     */
    public static FieldWalk grid(FieldShape field, int stops, long seed) {
        check(stops);
        var plane = new Plane(field);
        var rings = plane.flat(field);
        var at = Coverage.grid(rings, stops);
        double inside = 0;
        for (int i = 0; i + 1 < at.size(); i++) {
            for (var piece : Plane.clipped(rings, at.get(i), at.get(i + 1))) {
                inside += piece[0].to(piece[1]);
            }
        }
        var path = new ArrayList<>(at.subList(0, Math.min(1, at.size())));
        at.stream().skip(1).forEach(stop -> add(path, rings, stop));
        double length = length(path);
        return new FieldWalk(
                field,
                at.stream().map(plane::round).toList(),
                path.stream().map(plane::round).toList(),
                length,
                length - inside > 1e-6 ? length - inside : 0,
                Coverage.farthest(rings, at),
                seed);
    }

    /**
     * A walk in each zone, stops shared out by area, at least two a zone: with fewer a zone's own spread cannot be seen.
     */
    public static List<FieldWalk> ofZones(List<FieldShape> zones, int stops, long seed) {
        check(stops);
        double whole = zones.stream().mapToDouble(FieldShape::squareMeters).sum();
        var walks = new ArrayList<FieldWalk>();
        var draws = new Draws(seed);
        for (var zone : zones) {
            int own = Math.max(2, (int) Math.round(stops * zone.squareMeters() / whole));
            walks.add(of(zone, own, draws.below(Integer.MAX_VALUE)));
        }
        return List.copyOf(walks);
    }

    private static void check(int stops) {
        if (stops < 1 || stops > MOST_STOPS) {
            throw new Refused(
                    "stops",
                    stops + " stops",
                    "a walk has 1 to " + MOST_STOPS + " stops",
                    "10 to 20 are usual for one field.");
        }
    }

    /** Between stops, along what is walked inside the field, m. */
    public double stepMeters() {
        return (lengthMeters - outsideMeters) / stops.size();
    }

    @Override
    public List<Line> lines() {
        var measured = new Source("measured along the walk on the WGS 84 ellipsoid", Source.Known.ARITHMETIC);
        return List.of(Line.of(
                "step",
                "(length − outside)/n",
                stepMeters(),
                Unit.METER,
                Source.ARITHMETIC,
                Input.published("length", lengthMeters, Unit.METER, measured),
                Input.published("outside", outsideMeters, Unit.METER, measured),
                Input.typed("n", stops.size(), Unit.NONE)));
    }

    private static List<Plane.Point[]> pieces(List<List<Plane.Point>> rings) {
        var box = Plane.smallestBox(rings.get(0));
        double inset = Math.min(INSET_METERS, INSET_SHARE * box.width());
        double a = inset / box.length();
        double u = inset / box.width();
        var pieces = new ArrayList<Plane.Point[]>();
        for (int stroke = 0; stroke < 4; stroke++) {
            var from = box.at(a + (1 - 2 * a) * stroke / 4, stroke % 2 == 0 ? u : 1 - u);
            var to = box.at(a + (1 - 2 * a) * (stroke + 1) / 4, stroke % 2 == 0 ? 1 - u : u);
            pieces.addAll(Plane.clipped(rings, from, to));
        }
        if (pieces.isEmpty()) {
            throw new Refused(
                    "field",
                    "a field the walk does not cross",
                    "a walk needs some width",
                    "Place the stops by hand, or join the parts of the field.");
        }
        return pieces;
    }

    private static List<Plane.Point> along(List<Plane.Point[]> pieces, double inside, int stops, long seed) {
        double step = inside / stops;
        double next = new Draws(seed).uniform() * step;
        var at = new ArrayList<Plane.Point>();
        double passed = 0;
        for (var piece : pieces) {
            double length = piece[0].to(piece[1]);
            while (at.size() < stops && next <= passed + length) {
                at.add(piece[0].toward(piece[1], (next - passed) / length));
                next += step;
            }
            passed += length;
        }
        return at;
    }

    private static double length(List<Plane.Point> path) {
        double length = 0;
        for (int i = 0; i + 1 < path.size(); i++) {
            length += path.get(i).to(path.get(i + 1));
        }
        return length;
    }

    /** Goes on to a point, round what lies between. */
    private static void add(List<Plane.Point> path, List<List<Plane.Point>> rings, Plane.Point next) {
        path.addAll(Detour.between(rings, path.get(path.size() - 1), next));
        path.add(next);
    }

    private static List<Plane.Point> path(List<Plane.Point[]> pieces, List<List<Plane.Point>> rings) {
        var path = new ArrayList<Plane.Point>();
        for (var piece : pieces) {
            if (path.isEmpty()) {
                path.add(piece[0]);
            } else if (path.get(path.size() - 1).to(piece[0]) > 1e-6) {
                add(path, rings, piece[0]);
            }
            path.add(piece[1]);
        }
        return path;
    }
}
