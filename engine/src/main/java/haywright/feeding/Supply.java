package haywright.feeding;

import haywright.chance.Normal;
import haywright.diet.Diet;
import haywright.diet.DietRow;
import haywright.diet.Law;
import haywright.forage.Analyte;
import haywright.forage.lot.Shared;
import haywright.forage.lot.Spread;
import haywright.quantity.Unit;
import haywright.ration.Portion;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/**
 * What a mix likely supplies of one need, beside what is needed.
 * <pre>
 * s² = Σ (own·x)² + Σ (Σ shared·x)²        low, high = expected ∓ 1.645·s        nine times in ten
 * </pre>
 *
 * @param id of the row: {@code cp}; {@code growth} for what upkeep leaves over for gain
 * @param unit of the other figures, a head and day
 */
public record Supply(String id, String name, Unit unit, double needed, double expected, double low, double high) {
    private static final double NINE_IN_TEN = Normal.quantile(0.95);

    /** In how many of 100 ways that the feeds may be made it is met. */
    public double surePercent() {
        double s = (high - low) / 2 / NINE_IN_TEN;
        return s > 0 ? 100 * Normal.cumulative((expected - needed) / s) : expected >= needed ? 100 : 0;
    }

    /** Every need of a diet, the least sure first. @param portions of feeds that are in the diet */
    static List<Supply> of(Diet diet, List<Portion> portions) {
        var kg = amounts(diet, portions);
        var all = new ArrayList<Supply>();
        for (var row : diet.rows()) {
            if (row.kind() == DietRow.Kind.NEED
                    && row.sense() == DietRow.Sense.AT_LEAST
                    && row.law().counted() == Law.Counted.SURE
                    && row.limit() > 0) {
                var spreads = portions.stream()
                        .map(portion -> row.spread(portion.feed().feed()))
                        .toList();
                all.add(of(row.id(), row.name(), row.unit(), row.limit(), row.supplied(kg), spreads, portions));
            }
        }
        diet.growth().ifPresent(energy -> {
            double u = energy.inNem().mean(kg);
            double v = energy.inNeg().mean(kg);
            // v·(1 − a/u) along its slope at what is expected
            double perNem = u > 0 ? v * energy.nem() / (u * u) : 0;
            double perNeg = u > 0 ? 1 - energy.nem() / u : 0;
            var spreads = portions.stream()
                    .map(portion -> portion.feed().feed())
                    .map(feed -> feed.spread(made -> perNem * Diet.value(feed, made, Analyte.NEM)
                            + perNeg * Diet.value(feed, made, Analyte.NEG)))
                    .toList();
            all.add(of(
                    "growth",
                    "energy for gain",
                    Unit.MEGACALORIE,
                    energy.neg(),
                    energy.leftForGain(kg),
                    spreads,
                    portions));
        });
        all.sort(Comparator.comparingDouble(Supply::surePercent));
        // metabolizable protein is one need with two rows, by what the rumen makes of energy or of protein: the shorter
        // counts
        all.stream()
                .filter(supply -> supply.id().startsWith("mp"))
                .skip(1)
                .findFirst()
                .ifPresent(all::remove);
        return List.copyOf(all);
    }

    private static Supply of(
            String id,
            String name,
            Unit unit,
            double needed,
            double expected,
            List<Spread> spreads,
            List<Portion> portions) {
        double squares = 0;
        var shared = new TreeMap<Shared, Double>();
        for (int i = 0; i < portions.size(); i++) {
            double kg = portions.get(i).kg();
            squares += Math.pow(spreads.get(i).own() * kg, 2);
            for (Map.Entry<Shared, Double> doubt : spreads.get(i).shared().entrySet()) {
                shared.merge(doubt.getKey(), doubt.getValue() * kg, Double::sum);
            }
        }
        squares += shared.values().stream().mapToDouble(by -> by * by).sum();
        double likely = NINE_IN_TEN * Math.sqrt(squares);
        return new Supply(id, name, unit, needed, expected, expected - likely, expected + likely);
    }

    /** kg of dry matter eaten, in the diet's order. */
    static double[] amounts(Diet diet, List<Portion> portions) {
        var kg = new double[diet.feeds().size()];
        for (var portion : portions) {
            int at = diet.feeds().indexOf(portion.feed().feed());
            if (at >= 0) {
                kg[at] = portion.kg();
            }
        }
        return kg;
    }
}
