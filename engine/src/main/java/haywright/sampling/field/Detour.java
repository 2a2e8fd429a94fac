package haywright.sampling.field;

import haywright.sampling.field.Plane.Point;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;

/** The way from one point of a field to another that does not cross what is no field: sloughs, yards, the neighbor. */
final class Detour {
    /** Pieces of a stroke end on an edge to the last digits only. */
    private static final double ON_EDGE_METERS = 0.01;

    private Detour() {}

    /** What is walked between the two, both left out; empty where the straight way stays in the field. */
    static List<Point> between(List<List<Point>> rings, Point from, Point to) {
        var way = new ArrayList<Point>();
        double whole = from.to(to);
        if (whole <= ON_EDGE_METERS) {
            return way;
        }
        var out = from;
        for (var piece : Plane.clipped(rings, from, to)) {
            round(way, rings, out, piece[0]);
            out = piece[1];
        }
        round(way, rings, out, to);
        way.removeIf(p -> p.to(from) < ON_EDGE_METERS || p.to(to) < ON_EDGE_METERS);
        return way;
    }

    /** From where the straight way leaves the field to where it comes back, along the one ring that both lie on. */
    private static void round(List<Point> way, List<List<Point>> rings, Point out, Point back) {
        if (out.to(back) <= ON_EDGE_METERS) {
            return;
        }
        double nearest = Double.MAX_VALUE;
        List<Point> best = List.of();
        for (var ring : rings) {
            int leaves = edge(ring, out);
            int returns = edge(ring, back);
            double off = off(ring, leaves, out) + off(ring, returns, back);
            if (off < nearest) {
                nearest = off;
                best = shorter(ring, leaves, out, returns, back);
            }
        }
        way.add(out);
        way.addAll(best);
        way.add(back);
    }

    private static List<Point> shorter(List<Point> ring, int leaves, Point out, int returns, Point back) {
        int n = ring.size();
        var onward = new ArrayList<Point>();
        for (int i = leaves; i != returns; i = (i + 1) % n) {
            onward.add(ring.get((i + 1) % n));
        }
        var backward = new ArrayList<Point>();
        for (int i = returns; i != leaves; i = (i + 1) % n) {
            backward.add(ring.get((i + 1) % n));
        }
        Collections.reverse(backward);
        return length(out, onward, back) <= length(out, backward, back) ? onward : backward;
    }

    private static double length(Point out, List<Point> corners, Point back) {
        double length = 0;
        var last = out;
        for (var corner : corners) {
            length += last.to(corner);
            last = corner;
        }
        return length + last.to(back);
    }

    private static int edge(List<Point> ring, Point p) {
        int nearest = 0;
        for (int i = 1; i < ring.size(); i++) {
            if (off(ring, i, p) < off(ring, nearest, p)) {
                nearest = i;
            }
        }
        return nearest;
    }

    /** How far a point lies from edge i, which runs from corner i to the next. */
    private static double off(List<Point> ring, int i, Point p) {
        var a = ring.get(i);
        var b = ring.get((i + 1) % ring.size());
        double dx = b.x() - a.x();
        double dy = b.y() - a.y();
        double square = dx * dx + dy * dy;
        double t = square == 0 ? 0 : ((p.x() - a.x()) * dx + (p.y() - a.y()) * dy) / square;
        return p.to(a.toward(b, Math.max(0, Math.min(1, t))));
    }
}
