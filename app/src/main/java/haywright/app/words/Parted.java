package haywright.app.words;

import haywright.quantity.Unit;
import haywright.season.WinterBook.Needed;
import haywright.season.kept.KeptPlan;
import haywright.season.kept.KeptPlan.Buy;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;

/**
 * What a plan buys, parted by a test that is out.
 *
 * @param anyway needed whatever the test says: what the plan with a safe test buys too. @param waits the rest
 */
record Parted(List<Buy> anyway, List<Buy> waits) {
    Parted {
        anyway = List.copyOf(anyway);
        waits = List.copyOf(waits);
    }

    /** The earliest of a feed first. @param needed with a safe test; empty where that was not figured, and then all of it waits */
    static Parted of(KeptPlan plan, List<Needed> needed) {
        var left = new LinkedHashMap<String, Double>();
        needed.forEach(one -> left.merge(one.feed(), one.kg(), Double::sum));
        var anyway = new ArrayList<Buy>();
        var waits = new ArrayList<Buy>();
        for (var buy : plan.buys()) {
            double wanted = Math.min(buy.kg(), left.getOrDefault(buy.feed(), 0.0));
            double kg = whole(buy, wanted);
            left.computeIfPresent(buy.feed(), (feed, kept) -> Math.max(0, kept - kg));
            if (kg > 0) {
                anyway.add(part(buy, kg, Math.min(buy.askedKg(), wanted)));
            }
            if (buy.kg() > kg) {
                waits.add(part(buy, buy.kg() - kg, Math.max(0, buy.askedKg() - kg)));
            }
        }
        return new Parted(anyway, waits);
    }

    /** Loads come whole; less than a ton is no order of its own, whichever part it is in. */
    private static double whole(Buy buy, double kg) {
        double ton = Unit.TON.toBase(1);
        double each = buy.loads() == 0 ? 0 : buy.kg() / buy.loads();
        double rounded = kg < ton ? 0 : each == 0 ? kg : Math.min(buy.kg(), Math.ceil(kg / each - 1e-6) * each);
        return rounded > 0 && buy.kg() - rounded < ton ? buy.kg() : rounded;
    }

    private static Buy part(Buy buy, double kg, double asked) {
        int loads = buy.loads() == 0 ? 0 : (int) Math.round(buy.loads() * kg / buy.kg());
        return new Buy(
                buy.feed(),
                buy.name(),
                buy.by(),
                buy.isNow(),
                kg,
                asked,
                loads,
                buy.dollarsPerKg(),
                buy.isWaitingSaid());
    }
}
