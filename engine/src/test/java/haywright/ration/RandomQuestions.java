package haywright.ration;

import static haywright.ration.Lots.cold;
import static haywright.ration.Lots.lot;

import haywright.cattle.AnimalClass;
import haywright.cattle.need.Need;
import haywright.chance.Draws;
import haywright.diet.DietOptions;
import haywright.diet.WayOfFeeding;
import haywright.forage.Analyte;
import haywright.forage.FeedClass;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;

/** Ranches by chance: what is fed to whom, in what weather, at what price. The same seed, the same ranch. */
final class RandomQuestions {
    private final Draws draws;

    RandomQuestions(long seed) {
        draws = new Draws(seed);
    }

    /** What is offered to whom. A loose mineral is always among it, as it is to a rancher. */
    record Asked(List<PricedFeed> feeds, Need need, DietOptions options) {
        LeastCostRation as(haywright.diet.Sureness sureness, LeastCostRation.Amounts amounts) {
            return new LeastCostRation(feeds, need, options, sureness, amounts);
        }

        Asked with(List<PricedFeed> other) {
            return new Asked(other, need, options);
        }

        Asked with(DietOptions other) {
            return new Asked(feeds, need, other);
        }
    }

    double from(double low, double high) {
        return low + (high - low) * draws.uniform();
    }

    int below(int bound) {
        return draws.below(bound);
    }

    /** Hay of any sort, and each of straw, legume hay, grain, distillers and meal as often as not. */
    Asked next() {
        var ways = WayOfFeeding.values();
        return new Asked(feeds(), need(), DietOptions.USUAL.with(ways[below(ways.length)]));
    }

    List<PricedFeed> feeds() {
        var feeds = new ArrayList<PricedFeed>();
        for (int i = 0; i <= below(3); i++) {
            feeds.add(hay("hay " + i));
        }
        if (below(2) == 0) {
            feeds.add(priced("straw", FeedClass.STRAW, 35, 80, Map.of()));
        }
        if (below(2) == 0) {
            feeds.add(priced("alfalfa", FeedClass.LEGUME_HAY, 140, 260, Map.of()));
        }
        if (below(2) == 0) {
            feeds.add(priced("barley", FeedClass.GRAIN, 150, 300, Map.of()));
        }
        if (below(2) == 0) {
            feeds.add(priced("distillers", FeedClass.DISTILLERS_GRAINS, 160, 320, Map.of()));
        }
        if (below(2) == 0) {
            feeds.add(priced("soybean meal", FeedClass.PROTEIN_MEAL, 350, 550, Map.of()));
        }
        return new ArrayList<>(UsualMineral.beside(feeds));
    }

    PricedFeed hay(String name) {
        return priced(name, FeedClass.GRASS_HAY, 80, 220, Map.of(Analyte.TDN, from(44, 64), Analyte.CP, from(5, 13)));
    }

    PricedFeed priced(String name, FeedClass kind, double low, double high, Map<Analyte, Double> figures) {
        var row = kind == FeedClass.PROTEIN_MEAL ? "C121" : "";
        return Lots.fed(lot(name, kind, row, from(low, high), figures), from(0, 20), from(0, 15), below(2) == 0);
    }

    Need need() {
        double celsius = from(-28, 12);
        return switch (below(5)) {
            case 0 -> cold(Lots.of(AnimalClass.BULL, from(1500, 2200), 2200, 0, 0, 0), celsius);
            case 1 -> cold(Lots.calf(from(420, 800), from(0.5, 1.8)), celsius);
            case 2 -> cold(Lots.of(AnimalClass.BRED_HEIFER, from(900, 1150), 1300, from(120, 270), 0, 0), celsius);
            case 3 -> cold(Lots.cow(from(1100, 1550), 0, from(1, 20)), celsius);
            default -> cold(Lots.cow(from(1100, 1550), from(100, 278), 0), celsius);
        };
    }
}
