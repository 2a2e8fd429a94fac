package haywright.bench;

import haywright.cattle.Animal;
import haywright.cattle.LiveWeight;
import haywright.cattle.RequirementSystem;
import haywright.cattle.need.Requirement;
import haywright.diet.DietOptions;
import haywright.diet.Feed;
import haywright.forage.Analyte;
import haywright.forage.Composition;
import haywright.forage.FeedClass;
import haywright.forage.energy.NetEnergy;
import haywright.lp.LinearProgram;
import haywright.lp.Optimum;
import haywright.lp.Session;
import haywright.ration.LeastCostRation;
import haywright.ration.PricedFeed;
import haywright.ration.Ration;
import haywright.workings.Origin;
import java.io.ByteArrayInputStream;
import java.nio.charset.StandardCharsets;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Random;
import java.util.function.DoubleUnaryOperator;
import org.ojalgo.optimisation.ExpressionsBasedModel;

/**
 * A ration of twelve feeds for a dry cow, solved again with other prices: kept open in the solver (warm), as a new
 * program (cold), as a whole ration with its rows and workings, and by ojAlgo. Feeds are of round book values, prices
 * invented. Every way must find the same costs.
 */
public final class Rations {
    private static final int FEEDS = 12;
    private static final int ROUND = 500;
    private static final int MANY = 10_000;

    private static final List<PricedFeed> OFFERED = List.of(
            feed("meadow hay", FeedClass.GRASS_HAY, 0.13, 90, 7, 50, 0.61, 0.18, 2.5),
            feed("brome hay", FeedClass.GRASS_HAY, 0.15, 88, 9, 54, 0.4, 0.22, 2.3),
            feed("early meadow hay", FeedClass.GRASS_HAY, 0.16, 89, 10.5, 57, 0.55, 0.2, 2.6),
            feed("alfalfa", FeedClass.LEGUME_HAY, 0.21, 89, 17, 58, 1.4, 0.24, 2.3),
            feed("late alfalfa", FeedClass.LEGUME_HAY, 0.18, 89, 14.5, 54, 1.2, 0.22, 2),
            feed("barley straw", FeedClass.STRAW, 0.06, 90, 4, 43, 0.32, 0.08, 1.9),
            feed("oat straw", FeedClass.STRAW, 0.07, 91, 4.4, 47, 0.24, 0.07, 2.2),
            feed("barley", FeedClass.GRAIN, 0.26, 89, 12, 84, 0.06, 0.38, 2.1),
            feed("corn", FeedClass.GRAIN, 0.28, 88, 9, 88, 0.02, 0.3, 4),
            feed("oats", FeedClass.GRAIN, 0.3, 89, 13, 76, 0.05, 0.41, 5),
            feed("distillers grains", FeedClass.DISTILLERS_GRAINS, 0.27, 90, 29.7, 79.5, 0.22, 0.83, 10),
            feed("wet distillers grains", FeedClass.DISTILLERS_GRAINS, 0.09, 35, 30, 85, 0.1, 0.8, 10.5));

    private Rations() {}

    public static void main(String[] ignored) {
        Locale.setDefault(Locale.ROOT);
        var ration = (Ration) ration(OFFERED);
        LinearProgram program = ration.program();
        System.out.printf(
                "%d feeds, %d rows, $%.4f a head and day%n",
                FEEDS, program.rows().size(), ration.cost());
        double[][] prices = prices(MANY);
        Way warm;
        try (Session session = program.open()) {
            DoubleUnaryOperator kept = i -> {
                for (int f = 0; f < FEEDS; f++) {
                    session.cost(f, prices[(int) i][f]);
                }
                return ((Optimum) session.solve()).objective();
            };
            Way.measured("", ROUND, kept);
            warm = Way.measured("warm: kept open, prices changed", MANY, kept);
        }
        DoubleUnaryOperator fresh =
                i -> ((Optimum) priced(program, prices[(int) i]).solve()).objective();
        Way.measured("", ROUND, fresh);
        Way cold = Way.measured("cold: a new program each", MANY, fresh);
        DoubleUnaryOperator whole = i -> ((Ration) ration(priced(prices[(int) i]))).cost();
        Way.measured("", ROUND, whole);
        Way rations = Way.measured("a whole ration, rows and all", MANY, whole);
        DoubleUnaryOperator second = i -> ojAlgo(priced(program, prices[(int) i]));
        Way.measured("", ROUND / 5, second);
        Way other = Way.measured("ojAlgo, from MPS", ROUND, second);
        for (Way way : List.of(warm, cold, rations, other)) {
            System.out.printf(
                    "  %-34s %,7d of them, %8.1f µs CPU each, %6.2f times warm%n",
                    way.name, way.count, way.microseconds(), way.microseconds() / warm.microseconds());
        }
        boolean agree = true;
        for (Way way : List.of(cold, rations, other)) {
            double apart = Math.abs(way.sum(ROUND) - warm.sum(ROUND)) / warm.sum(ROUND);
            System.out.printf("  costs of the first %d, %s: apart %.0e of warm%n", ROUND, way.name, apart);
            agree &= apart < 1e-8;
        }
        System.exit(agree ? 0 : 1);
    }

    private record Way(String name, int count, double[] costs, double seconds) {
        static Way measured(String name, int count, DoubleUnaryOperator cost) {
            double[] costs = new double[count];
            double started = Cpu.seconds();
            for (int i = 0; i < count; i++) {
                costs[i] = cost.applyAsDouble(i);
            }
            return new Way(name, count, costs, Cpu.seconds() - started);
        }

        double microseconds() {
            return seconds * 1e6 / count;
        }

        double sum(int first) {
            double sum = 0;
            for (int i = 0; i < first; i++) {
                sum += costs[i];
            }
            return sum;
        }
    }

    private static Object ration(List<PricedFeed> feeds) {
        var cow = new Requirement(Animal.matureCow(new LiveWeight(590, false)), RequirementSystem.NRC_1996);
        return new LeastCostRation(feeds, cow, DietOptions.USUAL).solve();
    }

    /** Costs of a kg of dry matter eaten, up to a fifth off the offered ones. */
    private static double[][] prices(int count) {
        var random = new Random(1);
        double[][] prices = new double[count][FEEDS];
        for (double[] row : prices) {
            for (int f = 0; f < FEEDS; f++) {
                row[f] = OFFERED.get(f).costPerKgEaten() * (0.8 + 0.4 * random.nextDouble());
            }
        }
        return prices;
    }

    private static List<PricedFeed> priced(double[] perKgEaten) {
        return java.util.stream.IntStream.range(0, FEEDS)
                .mapToObj(f -> {
                    PricedFeed was = OFFERED.get(f);
                    double asFed = perKgEaten[f] / was.costPerKgEaten() * was.pricePerKgAsFed();
                    return new PricedFeed(was.feed(), asFed, was.dryMatterPercent(), was.feedingLossPercent());
                })
                .toList();
    }

    private static LinearProgram priced(LinearProgram program, double[] costs) {
        var builder = LinearProgram.minimize();
        for (int f = 0; f < FEEDS; f++) {
            var column = program.columns().get(f);
            builder.column(column.name(), costs[f], column.lower(), column.upper());
        }
        for (var row : program.rows()) {
            builder.row(row.name(), row.lower(), row.upper(), row.columns(), row.coefficients());
        }
        return builder.build();
    }

    private static double ojAlgo(LinearProgram program) {
        var in = new ByteArrayInputStream(program.toMps().getBytes(StandardCharsets.UTF_8));
        return ExpressionsBasedModel.parse(in, ExpressionsBasedModel.FileFormat.MPS)
                .minimise()
                .getValue();
    }

    private static PricedFeed feed(
            String name,
            FeedClass kind,
            double price,
            double dm,
            double cp,
            double tdn,
            double ca,
            double p,
            double fat) {
        Map<Analyte, Composition.Known> values = new EnumMap<>(Analyte.class);
        Map<Analyte, Double> typed = Map.of(
                Analyte.DM, dm,
                Analyte.CP, cp,
                Analyte.TDN, tdn,
                Analyte.NEM, new NetEnergy(tdn).nem(),
                Analyte.NEG, new NetEnergy(tdn).neg(),
                Analyte.CA, ca,
                Analyte.P, p,
                Analyte.FAT, fat);
        typed.forEach((analyte, value) -> values.put(analyte, new Composition.Known(value, Origin.TYPED)));
        return new PricedFeed(new Feed(name, name, kind, new Composition(values), false), price, dm, 0);
    }
}
