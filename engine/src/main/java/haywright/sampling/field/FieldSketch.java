package haywright.sampling.field;

import haywright.workings.Refused;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/**
 * A field as it is drawn or paced off: one place whose position is known, and the corners in meters from it, in the order
 * they are walked. Each latitude is scaled by its own circle, as on the walk, so areas are true and lengths within ten
 * miles are true to a thousandth.
 *
 * @param start the place whose position is known, usually the first corner
 * @param corners fewer than three are not a field yet
 */
public record FieldSketch(FieldShape.Corner start, List<Point> corners) {
    /** No field of a ranch needs more; a file does better then. */
    public static final int MOST_CORNERS = 400;

    /** Nearer than this two corners are one, and farther than that the sheet is flat and the earth is not. */
    private static final double SAME_METERS = 0.5;

    private static final double FARTHEST_METERS = 50_000;
    private static final double LAST_LATITUDE = 85;

    /** Meters east and north of the place that is known; west and south are negative. */
    public record Point(double east, double north) {
        public static final Point START = new Point(0, 0);

        /**
         * A leg on.
         *
         * @param bearing degrees from true north, east of it positive
         */
        public Point leg(double meters, double bearing) {
            double turn = Math.toRadians(bearing);
            return new Point(east + meters * Math.sin(turn), north + meters * Math.cos(turn));
        }

        public double to(Point other) {
            return Math.hypot(other.east - east, other.north - north);
        }
    }

    public FieldSketch {
        corners = List.copyOf(corners);
        if (!(Math.abs(start.longitude()) <= 180 && Math.abs(start.latitude()) <= LAST_LATITUDE)) {
            throw new Refused(
                    "start",
                    start.latitude() + ", " + start.longitude(),
                    "latitude is within ±85 and longitude within ±180 degrees",
                    "Check whether the two are swapped.");
        }
        if (corners.size() > MOST_CORNERS) {
            throw new Refused(
                    "corners",
                    corners.size() + " corners",
                    "a drawn field has at most " + MOST_CORNERS,
                    "Import it as a GeoJSON file.");
        }
        for (int i = 0; i < corners.size(); i++) {
            var here = corners.get(i);
            if (!(Math.hypot(here.east(), here.north()) <= FARTHEST_METERS)) {
                throw new Refused(
                        "corners",
                        "%.0f km".formatted(Math.hypot(here.east(), here.north()) / 1000),
                        "a corner is within 50 km of the known place",
                        "Check for an extra digit.");
            }
            if (i > 0 && here.to(corners.get(i - 1)) < SAME_METERS) {
                throw new Refused(
                        "corners",
                        "corner " + (i + 1),
                        "it is on top of the one before",
                        "Put it where the edge turns next.");
            }
        }
        crossesNothing(start, corners);
    }

    /** A ring that is known already, to be drawn on. */
    public static FieldSketch of(List<FieldShape.Corner> ring) {
        var start = ring.get(0);
        return new FieldSketch(
                start.onTheGlobe(),
                ring.stream().map(corner -> point(start, corner)).toList());
    }

    /** Where the next leg begins. */
    public Point last() {
        return corners.isEmpty() ? Point.START : corners.get(corners.size() - 1);
    }

    public FieldSketch with(Point next) {
        var more = new ArrayList<>(corners);
        more.add(next);
        return new FieldSketch(start, more);
    }

    public FieldSketch withoutLast() {
        return new FieldSketch(start, corners.isEmpty() ? corners : corners.subList(0, corners.size() - 1));
    }

    /**
     * The field, its last corner joined to its first.
     *
     * @throws Refused with fewer than three corners, or where that last edge crosses another
     */
    public FieldShape shape() {
        return new FieldShape(List.of(corners.stream()
                .map(point -> toACentimeter(corner(start, point)))
                .toList()));
    }

    /** Where on the sheet a position lies. */
    public Point at(FieldShape.Corner corner) {
        return point(start, corner);
    }

    private static void crossesNothing(FieldShape.Corner start, List<Point> points) {
        var corners = points.stream().map(point -> corner(start, point)).toList();
        for (int i = 2; i + 1 < corners.size(); i++) {
            for (int j = 0; j + 1 < i; j++) {
                var where = Plane.crossing(corners.get(i), corners.get(i + 1), corners.get(j), corners.get(j + 1));
                if (where != null) {
                    throw new Refused(
                            "corners",
                            "edge %d to %d".formatted(i + 1, i + 2),
                            String.format(
                                    Locale.ROOT,
                                    "it crosses edge %d to %d at %.6f, %.6f",
                                    j + 1,
                                    j + 2,
                                    Ellipsoid.within180(where.longitude()),
                                    where.latitude()),
                            "Go around the field in order: move this corner, or undo some.");
                }
            }
        }
    }

    private static FieldShape.Corner corner(FieldShape.Corner start, Point point) {
        double latitude = start.latitude();
        for (int i = 0; i < 4; i++) {
            double metersPerDegree = Ellipsoid.metersNorth(latitude - 0.5, latitude + 0.5);
            latitude += (point.north() - Ellipsoid.metersNorth(start.latitude(), latitude)) / metersPerDegree;
        }
        return new FieldShape.Corner(
                start.longitude() + point.east() / Ellipsoid.metersPerLongitude(latitude), latitude);
    }

    /** More than a tap or a pace knows. */
    private static FieldShape.Corner toACentimeter(FieldShape.Corner corner) {
        return new FieldShape.Corner(
                Math.rint(corner.longitude() * 1e7) / 1e7, Math.rint(corner.latitude() * 1e7) / 1e7);
    }

    private static Point point(FieldShape.Corner start, FieldShape.Corner corner) {
        double east = Ellipsoid.within180(corner.longitude() - start.longitude());
        return new Point(
                east * Ellipsoid.metersPerLongitude(corner.latitude()),
                Ellipsoid.metersNorth(start.latitude(), corner.latitude()));
    }
}
