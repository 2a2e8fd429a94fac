package haywright.sampling.field;

import java.util.ArrayList;
import java.util.List;
import java.util.function.UnaryOperator;
import org.jspecify.annotations.Nullable;

/**
 * A field laid flat, in meters east and north of its middle. Each latitude is scaled by its own circle, so areas are
 * true (the sinusoidal projection on the ellipsoid) and lengths across a field of ten miles are true to a thousandth.
 */
final class Plane {
    record Point(double x, double y) {
        Point plus(double dx, double dy) {
            return new Point(x + dx, y + dy);
        }

        double to(Point other) {
            return Math.hypot(other.x - x, other.y - y);
        }

        /** A share of the way to another point. */
        Point toward(Point other, double share) {
            return new Point(x + share * (other.x - x), y + share * (other.y - y));
        }
    }

    private final double longitude;
    private final double latitude;

    Plane(FieldShape field) {
        longitude =
                middle(field.outer().stream().map(FieldShape.Corner::longitude).toList());
        latitude =
                middle(field.outer().stream().map(FieldShape.Corner::latitude).toList());
    }

    Point flat(FieldShape.Corner corner) {
        return new Point(
                (corner.longitude() - longitude) * Ellipsoid.metersPerLongitude(corner.latitude()),
                Ellipsoid.metersNorth(latitude, corner.latitude()));
    }

    /** Back to degrees, longitude running on past ±180 as the field's own does. */
    FieldShape.Corner round(Point point) {
        double north = latitude;
        for (int i = 0; i < 4; i++) {
            double metersPerDegree = Ellipsoid.metersNorth(north - 0.5, north + 0.5);
            north += (point.y() - Ellipsoid.metersNorth(latitude, north)) / metersPerDegree;
        }
        return new FieldShape.Corner(longitude + point.x() / Ellipsoid.metersPerLongitude(north), north);
    }

    List<List<Point>> flat(FieldShape field) {
        return field.rings().stream()
                .map(ring -> ring.stream().map(this::flat).toList())
                .toList();
    }

    private static double middle(List<Double> values) {
        double low = values.stream().mapToDouble(v -> v).min().orElseThrow();
        double high = values.stream().mapToDouble(v -> v).max().orElseThrow();
        return (low + high) / 2;
    }

    static boolean inside(List<List<Point>> rings, Point p) {
        boolean inside = false;
        for (var ring : rings) {
            for (int i = 0, j = ring.size() - 1; i < ring.size(); j = i++) {
                var a = ring.get(i);
                var b = ring.get(j);
                if ((a.y() > p.y()) != (b.y() > p.y())
                        && p.x() < (b.x() - a.x()) * (p.y() - a.y()) / (b.y() - a.y()) + a.x()) {
                    inside = !inside;
                }
            }
        }
        return inside;
    }

    /** The pieces of a stroke that lie in the field, in order, each as its two ends. */
    static List<Point[]> clipped(List<List<Point>> rings, Point from, Point to) {
        var cuts = new ArrayList<Double>(List.of(0.0, 1.0));
        for (var ring : rings) {
            for (int i = 0; i < ring.size(); i++) {
                var a = ring.get(i);
                var b = ring.get((i + 1) % ring.size());
                double across = cross(to.x() - from.x(), to.y() - from.y(), b.x() - a.x(), b.y() - a.y());
                if (across != 0) {
                    double t = cross(a.x() - from.x(), a.y() - from.y(), b.x() - a.x(), b.y() - a.y()) / across;
                    if (t > 0 && t < 1) {
                        cuts.add(t);
                    }
                }
            }
        }
        cuts.sort(Double::compare);
        var pieces = new ArrayList<Point[]>();
        for (int i = 0; i + 1 < cuts.size(); i++) {
            if (cuts.get(i + 1) - cuts.get(i) > 1e-12
                    && inside(rings, from.toward(to, (cuts.get(i) + cuts.get(i + 1)) / 2))) {
                pieces.add(new Point[] {from.toward(to, cuts.get(i)), from.toward(to, cuts.get(i + 1))});
            }
        }
        return pieces;
    }

    /** Where two edges meet, touching counted; null where they do not. Edges along one line count when they overlap. */
    static FieldShape.@Nullable Corner crossing(
            FieldShape.Corner a, FieldShape.Corner b, FieldShape.Corner c, FieldShape.Corner d) {
        double dx = b.longitude() - a.longitude();
        double dy = b.latitude() - a.latitude();
        double ex = d.longitude() - c.longitude();
        double ey = d.latitude() - c.latitude();
        double fx = c.longitude() - a.longitude();
        double fy = c.latitude() - a.latitude();
        double across = cross(dx, dy, ex, ey);
        if (across == 0) {
            double length = dx * dx + dy * dy;
            double s = (fx * dx + fy * dy) / length;
            double e = s + (ex * dx + ey * dy) / length;
            double low = Math.max(0, Math.min(s, e));
            boolean overlap = cross(fx, fy, dx, dy) == 0 && low <= Math.min(1, Math.max(s, e));
            return overlap ? new FieldShape.Corner(a.longitude() + low * dx, a.latitude() + low * dy) : null;
        }
        double t = cross(fx, fy, ex, ey) / across;
        double u = cross(fx, fy, dx, dy) / across;
        return t >= 0 && t <= 1 && u >= 0 && u <= 1
                ? new FieldShape.Corner(a.longitude() + t * dx, a.latitude() + t * dy)
                : null;
    }

    private static double cross(double ax, double ay, double bx, double by) {
        return ax * by - ay * bx;
    }

    /**
     * The rectangle of least area round the points: its corner, its long side and its short side. One side of it lies
     * along an edge of the convex hull.
     */
    record Box(Point corner, double length, double width, double ux, double uy) {
        /** @param along, up shares of the long and of the short side */
        Point at(double along, double up) {
            return corner.plus(ux * along * length - uy * up * width, uy * along * length + ux * up * width);
        }
    }

    static Box smallestBox(List<Point> points) {
        var hull = hull(points);
        Box best = null;
        for (int i = 0; i < hull.size(); i++) {
            var a = hull.get(i);
            var b = hull.get((i + 1) % hull.size());
            double length = a.to(b);
            double ux = (b.x() - a.x()) / length;
            double uy = (b.y() - a.y()) / length;
            double low = Double.MAX_VALUE;
            double high = -Double.MAX_VALUE;
            double bottom = Double.MAX_VALUE;
            double top = -Double.MAX_VALUE;
            for (var p : hull) {
                double u = p.x() * ux + p.y() * uy;
                double v = -p.x() * uy + p.y() * ux;
                low = Math.min(low, u);
                high = Math.max(high, u);
                bottom = Math.min(bottom, v);
                top = Math.max(top, v);
            }
            var corner = new Point(ux * low - uy * bottom, uy * low + ux * bottom);
            var box = high - low >= top - bottom
                    ? new Box(corner, high - low, top - bottom, ux, uy)
                    : new Box(
                            new Point(ux * high - uy * bottom, uy * high + ux * bottom),
                            top - bottom,
                            high - low,
                            -uy,
                            ux);
            if (best == null || box.length * box.width < best.length * best.width * (1 - 1e-12)) {
                best = box;
            }
        }
        if (best == null) {
            throw new IllegalStateException("no box round no points");
        }
        return best;
    }

    private static List<Point> hull(List<Point> points) {
        var sorted = points.stream()
                .sorted((a, b) -> a.x() != b.x() ? Double.compare(a.x(), b.x()) : Double.compare(a.y(), b.y()))
                .toList();
        UnaryOperator<List<Point>> half = list -> {
            var chain = new ArrayList<Point>();
            for (var p : list) {
                while (chain.size() > 1 && turn(chain.get(chain.size() - 2), chain.get(chain.size() - 1), p) <= 0) {
                    chain.remove(chain.size() - 1);
                }
                chain.add(p);
            }
            chain.remove(chain.size() - 1);
            return chain;
        };
        var reversed = new ArrayList<>(sorted);
        java.util.Collections.reverse(reversed);
        var all = new ArrayList<>(half.apply(sorted));
        all.addAll(half.apply(reversed));
        return all;
    }

    private static double turn(Point a, Point b, Point c) {
        return cross(b.x() - a.x(), b.y() - a.y(), c.x() - a.x(), c.y() - a.y());
    }
}
