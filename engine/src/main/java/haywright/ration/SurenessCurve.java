package haywright.ration;

import haywright.diet.Diet;
import haywright.diet.Sureness;
import haywright.lp.Optimum;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;

/**
 * What it costs to meet the needs more surely, from even odds upward: one program kept open and solved again at each
 * step. Dangers are kept as surely as the ration keeps them all along: that is nothing to trade for cost. To the gram, so
 * a ration of few feeds costs a little more.
 *
 * @param points upward, as far as there is a ration; empty where there is none at even odds
 */
public record SurenessCurve(Diet diet, List<Point> points) {
    /** 50 to 95 % of the ways that the feeds may be made. */
    public static final int POINTS = 20;

    private static final double FIRST = 50;
    private static final double LAST = 95;

    public SurenessCurve {
        points = List.copyOf(points);
    }

    /**
     * @param percent how surely each need is met
     * @param weighed what decides: cost, and what its feeds are worth to other groups; dollars a head and day. More
     *     surely never weighs less
     * @param cost dollars a head and day
     * @param kg dry matter eaten a head and day, in the diet's order
     */
    @SuppressWarnings("ArrayRecordComponent")
    public record Point(double percent, double weighed, double cost, double[] kg) {}

    /** @param ration of this question */
    public static SurenessCurve of(LeastCostRation question, Ration ration) {
        var feeds = question.admitted(ration.diet());
        double dangers = ration.sureness().dangersPercent();
        var points = new ArrayList<Point>();
        try (var program = question.open(ration, new Sureness(LAST, LAST, dangers))) {
            for (int i = 0; i < POINTS; i++) {
                double percent = FIRST + (LAST - FIRST) * i / (POINTS - 1);
                program.keep(new Sureness(percent, percent, dangers));
                if (!(program.solve() instanceof Optimum optimum)) {
                    break;
                }
                var kg = program.amounts(optimum);
                points.add(new Point(
                        percent,
                        optimum.objective(),
                        IntStream.range(0, kg.length)
                                .mapToDouble(f -> kg[f] * feeds.get(f).costPerKgEaten())
                                .sum(),
                        kg));
            }
        }
        return new SurenessCurve(ration.diet(), points);
    }

    /** How often a point of it meets every need and keeps every danger at once. */
    public JointChance chance(Point point) {
        return JointChance.of(diet, point.kg());
    }

    /**
     * The point after which being surer begins to cost more. Empty where the curve is as good as straight.
     */
    public Optional<Point> kink() {
        int at = kink(
                points.stream().mapToDouble(Point::percent).toArray(),
                points.stream().mapToDouble(Point::weighed).toArray());
        return at < 0 ? Optional.empty() : Optional.of(points.get(at));
    }

    /**
     * The point of a rising curve farthest below the straight line between its ends; -1 where it is as good as straight.
     *
     * @param x upward
     * @param cost of each
     */
    public static int kink(double[] x, double[] cost) {
        int last = x.length - 1;
        int kink = -1;
        double most = last < 0 ? 0 : STRAIGHT * (cost[last] - cost[0]);
        for (int i = 1; i < last; i++) {
            double below = cost[0] + (cost[last] - cost[0]) / (x[last] - x[0]) * (x[i] - x[0]) - cost[i];
            if (below > most) {
                most = below;
                kink = i;
            }
        }
        return kink;
    }

    /** Share of the whole rise below which no point is told from the straight line (judgment). */
    private static final double STRAIGHT = 0.1;

    /**
     * A point that holds in so many of the ways that the feeds may be made, everything at once, whose neighbor below does
     * not; empty where even the surest does not. A few points are drawn, not all.
     *
     * @param percent of the joint number
     */
    public Optional<Point> holding(double percent) {
        if (points.isEmpty() || chance(points.get(points.size() - 1)).percent() < percent) {
            return Optional.empty();
        }
        int not = -1;
        int does = points.size() - 1;
        while (does - not > 1) {
            int half = (not + does) / 2;
            if (chance(points.get(half)).percent() >= percent) {
                does = half;
            } else {
                not = half;
            }
        }
        return Optional.of(points.get(does));
    }
}
