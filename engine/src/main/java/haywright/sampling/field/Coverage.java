package haywright.sampling.field;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;

/**
 * How well stops cover a field. The point farthest from its nearest stop is a corner of the field, or lies where an edge
 * meets the bisector of two stops, or is the center of the circle through three: these are all tried, so the answer is
 * exact.
 */
final class Coverage {
    private final List<List<Plane.Point>> rings;
    private final List<Plane.Point> stops;
    private double farthest;

    private Coverage(List<List<Plane.Point>> rings, List<Plane.Point> stops) {
        this.rings = rings;
        this.stops = stops;
    }

    static double farthest(List<List<Plane.Point>> rings, List<Plane.Point> stops) {
        var search = new Coverage(rings, stops);
        search.corners();
        search.edges();
        search.centers();
        return search.farthest;
    }

    /**
     * Of grids laid along the field's rectangle, the best of those with this many points in the field, or nearly; up one
     * line and down the next.
     */
    static List<Plane.Point> grid(List<List<Plane.Point>> rings, int stops) {
        var box = Plane.smallestBox(rings.get(0));
        double usual = Math.sqrt(box.length() * box.width() / stops);
        var tried = new HashSet<List<Integer>>();
        var nearest = new ArrayList<List<Plane.Point>>();
        int off = Integer.MAX_VALUE;
        for (double share = 0.4; share < 1.6; share += 0.02) {
            int across = Math.max(1, (int) Math.round(box.length() / (usual * share)));
            int up = Math.max(1, (int) Math.round(box.width() / (usual * share)));
            if (!tried.add(List.of(across, up))) {
                continue;
            }
            var grid = grid(rings, box, across, up);
            int missing = Math.abs(grid.size() - stops);
            if (grid.isEmpty() || missing > off) {
                continue;
            }
            if (missing < off) {
                nearest.clear();
                off = missing;
            }
            nearest.add(grid);
        }
        return nearest.stream()
                .min(Comparator.comparingDouble(grid -> farthest(rings, grid)))
                .orElseGet(() -> List.of(box.at(0.5, 0.5)));
    }

    private static List<Plane.Point> grid(List<List<Plane.Point>> rings, Plane.Box box, int across, int up) {
        var points = new ArrayList<Plane.Point>();
        for (int i = 0; i < across; i++) {
            for (int j = 0; j < up; j++) {
                int turned = i % 2 == 0 ? j : up - 1 - j;
                var point = box.at((i + 0.5) / across, (turned + 0.5) / up);
                if (Plane.inside(rings, point)) {
                    points.add(point);
                }
            }
        }
        return points;
    }

    private void consider(Plane.Point point) {
        double nearest = Double.MAX_VALUE;
        for (var stop : stops) {
            nearest = Math.min(nearest, stop.to(point));
            if (nearest <= farthest) {
                return;
            }
        }
        farthest = nearest;
    }

    private void corners() {
        for (var ring : rings) {
            ring.forEach(this::consider);
        }
    }

    private void edges() {
        for (var ring : rings) {
            for (int i = 0; i < ring.size(); i++) {
                var a = ring.get(i);
                var b = ring.get((i + 1) % ring.size());
                for (int s = 0; s < stops.size(); s++) {
                    for (int t = s + 1; t < stops.size(); t++) {
                        bisectorOn(a, b, stops.get(s), stops.get(t));
                    }
                }
            }
        }
    }

    private void bisectorOn(Plane.Point a, Plane.Point b, Plane.Point s, Plane.Point t) {
        double nx = t.x() - s.x();
        double ny = t.y() - s.y();
        double along = (b.x() - a.x()) * nx + (b.y() - a.y()) * ny;
        if (along != 0) {
            double share = (((s.x() + t.x()) / 2 - a.x()) * nx + ((s.y() + t.y()) / 2 - a.y()) * ny) / along;
            if (share > 0 && share < 1) {
                consider(a.toward(b, share));
            }
        }
    }

    private void centers() {
        for (int i = 0; i < stops.size(); i++) {
            for (int j = i + 1; j < stops.size(); j++) {
                for (int k = j + 1; k < stops.size(); k++) {
                    center(stops.get(i), stops.get(j), stops.get(k));
                }
            }
        }
    }

    private void center(Plane.Point a, Plane.Point b, Plane.Point c) {
        double bx = b.x() - a.x();
        double by = b.y() - a.y();
        double cx = c.x() - a.x();
        double cy = c.y() - a.y();
        double d = 2 * (bx * cy - by * cx);
        if (d == 0) {
            return;
        }
        double b2 = bx * bx + by * by;
        double c2 = cx * cx + cy * cy;
        double x = (cy * b2 - by * c2) / d;
        double y = (bx * c2 - cx * b2) / d;
        if (Math.hypot(x, y) > farthest) {
            var center = a.plus(x, y);
            if (Plane.inside(rings, center)) {
                consider(center);
            }
        }
    }
}
