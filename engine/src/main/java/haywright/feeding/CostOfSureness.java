package haywright.feeding;

import haywright.ration.LeastCostRation;
import haywright.ration.Ration;
import haywright.ration.SurenessCurve;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/**
 * What a ration costs against how often it holds, to the gram.
 *
 * @param points upward
 * @param kink index of the point after which being surer begins to cost more; -1 where the way is as good as straight
 */
public record CostOfSureness(List<Point> points, int kink) {
    /** Of the curve's points every fourth is drawn: each takes thousands of draws. */
    private static final int STEP = 4;

    /** Dollars a head and day below which nothing costs more. */
    private static final double CENT = 0.01;

    public CostOfSureness {
        points = List.copyOf(points);
    }

    /**
     * @param asked how surely each need is met, percent
     * @param holdsPercent of the ways that its feeds may be made, in which it meets everything at once
     * @param dollars a head and day
     */
    public record Point(double asked, double holdsPercent, double dollars) {}

    static Optional<CostOfSureness> of(LeastCostRation question, Ration ration) {
        var curve = SurenessCurve.of(question, ration);
        var all = new ArrayList<Point>();
        for (int i = 0; i < curve.points().size(); i++) {
            if (i % STEP == 0 || i == curve.points().size() - 1) {
                var point = curve.points().get(i);
                all.add(new Point(point.percent(), curve.chance(point).percent(), point.cost()));
            }
        }
        // a way that costs no less than one that holds more often is nobody's choice
        var points = all.stream()
                .filter(point -> all.stream()
                        .noneMatch(other -> other != point
                                && other.dollars() <= point.dollars()
                                && other.holdsPercent() >= point.holdsPercent()))
                .sorted(Comparator.comparingDouble(Point::holdsPercent))
                .toList();
        return points.size() < 2
                        || points.get(points.size() - 1).dollars()
                                        - points.get(0).dollars()
                                < CENT
                ? Optional.empty()
                : Optional.of(new CostOfSureness(
                        points,
                        SurenessCurve.kink(
                                points.stream().mapToDouble(Point::holdsPercent).toArray(),
                                points.stream().mapToDouble(Point::dollars).toArray())));
    }

    /** The cheapest point drawn that holds so often; empty where none does. */
    public Optional<Point> holding(double percent) {
        return points.stream().filter(point -> point.holdsPercent() >= percent).findFirst();
    }
}
