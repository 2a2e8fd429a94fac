package haywright.app.words;

import haywright.outlook.LotTons;
import haywright.outlook.UsualPrices;
import haywright.quantity.Unit;
import haywright.ranch.Ranch;
import haywright.sampling.CompositeMass;
import haywright.sampling.Material;
import haywright.sampling.Purpose;
import haywright.sampling.SamplingPlan;
import haywright.sampling.stock.Stock;
import haywright.sampling.stock.UsualBale;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;

/** How much a sample comes to, in pounds, and what to do about it. */
public final class MassWords {
    private MassWords() {}

    public static String of(SamplingPlan plan) {
        if (plan.aim().purpose() == Purpose.MOULDS && plan.grams() >= plan.needGrams()) {
            return "%s, as much as the %s test needs. Send all of it. A wider probe needs fewer cores."
                    .formatted("About " + pounds(plan.grams() / 1000), pounds(plan.needGrams() / 1000));
        }
        return plan.mass().map(MassWords::cored).orElseGet(() -> grabbed(plan));
    }

    private static String cored(CompositeMass mass) {
        var all = "About " + pounds(mass.kg());
        if (!mass.isEnough()) {
            return "%s; the laboratory needs %s: take %d more cores, go deeper, or use a wider probe."
                    .formatted(
                            all, pounds(mass.needKg()), (int) Math.ceil((mass.needKg() - mass.kg()) / mass.coreKg()));
        }
        if (mass.kg() > mass.bucketKg()) {
            return all + ", more than a 5-gallon bucket holds: use a narrower probe. Send every core taken.";
        }
        return all
                + (mass.isTooMuch()
                        ? ", more than one bag holds: send it all in two bags marked as one sample; ask the laboratory"
                                + " to grind it all before splitting. Never split cored hay yourself."
                        : "; it fits one bag. Send all of it.");
    }

    private static String grabbed(SamplingPlan plan) {
        if (plan.subject().material() == Material.STOCK_WATER) {
            return "One quart from each source.";
        }
        var need = pounds(plan.needGrams() / 1000);
        var all = "About " + pounds(plan.grams() / 1000);
        if (plan.grams() < plan.needGrams()) {
            return "%s; the laboratory needs %s: take larger ones, or from more places.".formatted(all, need);
        }
        return plan.subject().material().maySplit() && plan.grams() > 2 * plan.needGrams()
                ? "%s. Quarter it down to about %s: keep two opposite quarters, mix, and quarter again."
                        .formatted(all, need)
                : "%s; the laboratory needs %s.".formatted(all, need);
    }

    private static String pounds(double kg) {
        return Show.significant(Unit.POUND.fromBase(kg), 2) + " lb";
    }

    /** What is taken of lots since nobody said it, each with its figure in brackets. */
    static List<String> assumed(Ranch ranch) {
        var taken = new ArrayList<String>();
        for (var lot : ranch.lots().values()) {
            if (lot.replacementPrice() == null && !(lot.stock() instanceof Stock.Standing)) {
                taken.add("price of %s (%s)".formatted(lot.name(), Show.price(UsualPrices.of(lot))));
            }
        }
        for (var lot : ranch.lots().values()) {
            if (lot.stock() instanceof Stock.Bales bales
                    && bales.baleWeight() == null
                    && lot.weighings().isEmpty()) {
                taken.add(
                        "bale weight of %s (%s)".formatted(lot.name(), Show.quantity(UsualBale.weight(bales.bale()))));
            }
        }
        return taken;
    }

    /** All lots whose tons are known, straw and what may not be fed too: whoever shows it says so. */
    public static String onHand(Ranch ranch) {
        return Show.totalTons(ranch.lots().values().stream()
                .map(lot -> LotTons.of(lot).kg())
                .filter(OptionalDouble::isPresent)
                .mapToDouble(OptionalDouble::getAsDouble));
    }
}
