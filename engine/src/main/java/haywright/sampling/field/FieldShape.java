package haywright.sampling.field;

import haywright.quantity.Unit;
import haywright.workings.Refused;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/**
 * A field: one outer ring of corners and rings of holes (sloughs, yards), as GeoJSON (RFC 7946) writes a polygon. Edges
 * are straight in longitude and latitude. A ring may be closed or not; a ring across the 180th meridian is understood by
 * its going the short way round.
 *
 * @param rings longitude and latitude in degrees, the outer ring first; kept open, longitudes running on past ±180 where
 *     the field crosses that meridian
 */
public record FieldShape(List<List<Corner>> rings) {
    /** Degrees; longitude may run past ±180 inside one field. */
    public record Corner(double longitude, double latitude) {
        /** With the longitude within ±180, as files want it. */
        public Corner onTheGlobe() {
            return new Corner(Ellipsoid.within180(longitude), latitude);
        }
    }

    /** Every edge is held against every other; no boundary on a ranch turns more often. */
    private static final int MOST_CORNERS = 5_000;

    private static final double METERS_PER_LATITUDE = 111_200; // the mean; 0.5 % more or less

    /** Meters from south to north, or from west to east: the largest grazing leases are a third as wide. */
    private static final double WIDEST = 160_000;

    /** Squared degrees under which a ring is a line: about a tenth of a square meter. */
    private static final double NO_AREA = 1e-11;

    public FieldShape {
        if (rings.isEmpty()) {
            throw new Refused("field", "no corners", "a field has an outer ring of corners", "Draw it.");
        }
        int corners = rings.stream().mapToInt(List::size).sum();
        if (corners > MOST_CORNERS) {
            throw new Refused(
                    "field",
                    corners + " corners",
                    "a field has at most " + MOST_CORNERS,
                    "It may be a walking track: simplify it first.");
        }
        var kept = new ArrayList<List<Corner>>();
        for (var ring : rings) {
            kept.add(checked(
                    ring,
                    kept.isEmpty()
                            ? ring.isEmpty() ? 0 : ring.get(0).longitude()
                            : kept.get(0).get(0).longitude()));
        }
        rings = List.copyOf(kept);
        notTooWide(rings.get(0));
        crossesNothing(rings);
        for (var ring : rings) {
            if (Math.abs(degreesSquared(ring)) < NO_AREA) {
                throw new Refused(
                        "field", ring.size() + " corners on one line", "a field has an area", "Check the corners.");
            }
        }
        for (var hole : rings.subList(1, rings.size())) {
            if (!inside(rings.get(0), hole.get(0).longitude(), hole.get(0).latitude())) {
                throw new Refused(
                        "field",
                        words(hole.get(0)),
                        "a hole is inside the field, and this corner of one is outside",
                        "It may be a field of its own.");
            }
        }
    }

    /** From the numbers of a GeoJSON polygon's coordinates; heights are ignored. */
    public static FieldShape of(List<List<List<Double>>> coordinates) {
        var rings = new ArrayList<List<Corner>>();
        for (var ring : coordinates) {
            var corners = new ArrayList<Corner>();
            for (var position : ring) {
                if (position.size() < 2) {
                    throw new Refused(
                            "field",
                            position.toString(),
                            "a corner has a longitude and a latitude, in that order",
                            "Check for a missing one.");
                }
                corners.add(new Corner(position.get(0), position.get(1)));
            }
            rings.add(corners);
        }
        return new FieldShape(rings);
    }

    public static FieldShape of(Polygon polygon) {
        return of(polygon.coordinates());
    }

    public List<Corner> outer() {
        return rings.get(0);
    }

    /** Square meters on the WGS 84 ellipsoid, holes taken out. */
    public double squareMeters() {
        double area = Ellipsoid.squareMeters(outer());
        for (var hole : rings.subList(1, rings.size())) {
            area -= Ellipsoid.squareMeters(hole);
        }
        return area;
    }

    /** Inside the outer ring and outside every hole. */
    public boolean contains(Corner point) {
        for (int i = 0; i < rings.size(); i++) {
            if (inside(rings.get(i), point.longitude(), point.latitude()) != (i == 0)) {
                return false;
            }
        }
        return true;
    }

    private static List<Corner> checked(List<Corner> ring, double near) {
        var corners = new ArrayList<Corner>();
        double last = near;
        for (var corner : ring) {
            if (!(Math.abs(corner.latitude()) < 90 && Math.abs(corner.longitude()) <= 360)) {
                throw new Refused(
                        "field",
                        plain(corner.longitude()) + ", " + plain(corner.latitude()),
                        "longitude lies within ±180 and latitude within ±90 degrees, longitude first",
                        "Check whether the two are swapped.");
            }
            double longitude = corner.longitude();
            while (longitude - last > 180) {
                longitude -= 360;
            }
            while (last - longitude > 180) {
                longitude += 360;
            }
            var here = new Corner(longitude, corner.latitude());
            if (corners.isEmpty() || !corners.get(corners.size() - 1).equals(here)) {
                corners.add(here);
            }
            last = longitude;
        }
        if (corners.size() > 1 && corners.get(0).equals(corners.get(corners.size() - 1))) {
            corners.remove(corners.size() - 1);
        }
        if (corners.size() < 3) {
            throw new Refused(
                    "field",
                    corners.size() + (corners.size() == 1 ? " corner" : " corners"),
                    "a field has at least three different corners",
                    "Add the corners that are missing.");
        }
        return List.copyOf(corners);
    }

    private static void notTooWide(List<Corner> ring) {
        var north = ring.stream().mapToDouble(Corner::latitude).summaryStatistics();
        var east = ring.stream().mapToDouble(Corner::longitude).summaryStatistics();
        double high = (north.getMax() - north.getMin()) * METERS_PER_LATITUDE;
        double wide =
                (east.getMax() - east.getMin()) * Ellipsoid.metersPerLongitude((north.getMax() + north.getMin()) / 2);
        if (Math.max(high, wide) > WIDEST) {
            throw new Refused(
                    "field",
                    "%,.0f miles across".formatted(Unit.METER.to(Unit.MILE, Math.max(high, wide))),
                    "no field is more than 100 miles across",
                    "Check the corners: one of them may have a wrong degree.");
        }
    }

    private static double degreesSquared(List<Corner> ring) {
        double twice = 0;
        var origin = ring.get(0);
        for (int i = 0; i < ring.size(); i++) {
            var a = ring.get(i);
            var b = ring.get((i + 1) % ring.size());
            twice += (a.longitude() - origin.longitude()) * (b.latitude() - origin.latitude())
                    - (b.longitude() - origin.longitude()) * (a.latitude() - origin.latitude());
        }
        return twice / 2;
    }

    private static void crossesNothing(List<List<Corner>> rings) {
        var from = new ArrayList<Corner>();
        var to = new ArrayList<Corner>();
        for (var ring : rings) {
            for (int i = 0; i < ring.size(); i++) {
                from.add(ring.get(i));
                to.add(ring.get((i + 1) % ring.size()));
            }
        }
        for (int i = 0; i < from.size(); i++) {
            for (int j = i + 1; j < from.size(); j++) {
                boolean neighbors = to.get(i).equals(from.get(j)) || to.get(j).equals(from.get(i));
                var where = neighbors ? null : Plane.crossing(from.get(i), to.get(i), from.get(j), to.get(j));
                if (where != null) {
                    throw new Refused(
                            "field",
                            "edges cross at " + words(where),
                            "the edge of a field does not cross itself or a hole",
                            "Check the order of the corners.");
                }
            }
        }
    }

    private static boolean inside(List<Corner> ring, double longitude, double latitude) {
        boolean inside = false;
        for (int i = 0, j = ring.size() - 1; i < ring.size(); j = i++) {
            var a = ring.get(i);
            var b = ring.get(j);
            if ((a.latitude() > latitude) != (b.latitude() > latitude)
                    && longitude
                            < (b.longitude() - a.longitude())
                                            * (latitude - a.latitude())
                                            / (b.latitude() - a.latitude())
                                    + a.longitude()) {
                inside = !inside;
            }
        }
        return inside;
    }

    private static String plain(double degrees) {
        return Double.isFinite(degrees)
                ? BigDecimal.valueOf(degrees).stripTrailingZeros().toPlainString()
                : String.valueOf(degrees);
    }

    private static String words(Corner corner) {
        return String.format(Locale.ROOT, "%.6f, %.6f", Ellipsoid.within180(corner.longitude()), corner.latitude());
    }
}
