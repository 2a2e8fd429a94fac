package haywright.ration;

import haywright.diet.CheckedNeed;
import haywright.diet.Diet;
import haywright.diet.Sureness;
import haywright.forage.Analyte;
import haywright.lp.LinearProgram;
import haywright.quantity.Unit;
import haywright.workings.Caution;
import haywright.workings.Input;
import haywright.workings.Line;
import haywright.workings.Origin;
import haywright.workings.Source;
import haywright.workings.Worked;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;

/**
 * The cheapest ration that keeps every row.
 *
 * @param portions what is fed, in the order the feeds were offered; feeds with nothing fed are not in it
 * @param notUsed feeds that were offered and allowed, and are not worth their price
 * @param cost dollars a head and day, what is lost in feeding included
 * @param limits every row, with what one unit of it costs
 * @param sureness how surely it keeps its rows: what was asked, or as much of it as these feeds allow
 * @param program the last linear program solved, for anyone to check with another solver
 */
public record Ration(
        Diet diet,
        List<Portion> portions,
        List<NotUsed> notUsed,
        double cost,
        List<LimitAnswer> limits,
        Sureness sureness,
        LinearProgram program)
        implements RationAnswer, Worked {
    public Ration {
        portions = List.copyOf(portions);
        notUsed = List.copyOf(notUsed);
        limits = List.copyOf(limits);
    }

    /** What decided: its cost, and what its feeds are worth to other groups; dollars a head and day. */
    public double weighed() {
        return portions.stream().mapToDouble(Portion::weighed).sum();
    }

    /** Dry matter eaten a head and day, kg. */
    public double kg() {
        return portions.stream().mapToDouble(Portion::kg).sum();
    }

    /** What to watch for with this ration, though it keeps every limit. */
    public List<Caution> cautions() {
        return diet.cautions(amounts());
    }

    /** Needs that decide nothing, by what is known of its feeds. */
    public List<CheckedNeed> checked() {
        return diet.checked(amounts());
    }

    /** How often it meets every need and keeps every danger at once. */
    public JointChance chance() {
        return JointChance.of(diet, amounts());
    }

    /** kg of dry matter eaten a head and day, in the diet's order. */
    double[] amounts() {
        var kg = new double[diet.feeds().size()];
        portions.forEach(p -> kg[diet.feeds().indexOf(p.feed().feed())] = p.kg());
        return kg;
    }

    /** With other amounts of some feeds, kg of dry matter eaten a head and day by feed id; its rows as they were. */
    Ration with(Map<String, Double> eaten) {
        var other = portions.stream()
                .map(p -> {
                    var kg = eaten.get(p.feed().feed().id());
                    return kg == null ? p : Portions.of(p.feed(), kg, p.priceRange());
                })
                .toList();
        return new Ration(
                diet, other, notUsed, other.stream().mapToDouble(Portion::cost).sum(), limits, sureness, program);
    }

    /** What the cheapest to the gram says of feeds that this one does without. */
    Ration withNotUsed(Ration cheapest, List<PricedFeed> feeds) {
        var fed = portions.stream().map(Portion::feed).toList();
        var without = new ArrayList<NotUsed>();
        for (var feed : feeds) {
            if (!fed.contains(feed)) {
                without.add(cheapest.notUsed.stream()
                        .filter(n -> n.feed().equals(feed))
                        .findFirst()
                        // cheapest to the gram has a little of it: at its price, a portion of it is not worth the
                        // handling
                        .orElseGet(() -> new NotUsed(feed, feed.pricePerKgAsFed())));
            }
        }
        return new Ration(diet, portions, without, cost, limits, sureness, program);
    }

    public LimitAnswer limit(String row) {
        return limits.stream()
                .filter(l -> l.row().id().equals(row))
                .findFirst()
                .orElseThrow(() -> new IllegalArgumentException("no row " + row));
    }

    /** Mcal of NEm in a kg of its dry matter. */
    public double dietNem() {
        return mean(Analyte.NEM);
    }

    /** Of the whole ration's dry matter, in the analyte's unit; a feed of which it is not known counts as having none. */
    public double mean(Analyte analyte) {
        double sum = 0;
        for (var portion : portions) {
            sum += portion.kg()
                    * portion.feed().feed().composition().value(analyte).orElse(0);
        }
        return sum / kg();
    }

    @Override
    public List<Line> lines() {
        var formula = new StringBuilder();
        var inputs = new ArrayList<Input>();
        int n = 0;
        for (var portion : portions) {
            n++;
            formula.append(n == 1 ? "" : " + ").append("c%d·x%d".formatted(n, n));
            inputs.add(new Input(
                    "c" + n,
                    portion.feed().costPerKgEaten(),
                    Unit.DOLLAR_PER_KG,
                    new Origin.Typed(portion.feed().feed().name()
                            + ", its price for a kilogram of dry matter eaten, with what is lost in feeding")));
            inputs.add(new Input(
                    "x" + n,
                    portion.kg(),
                    Unit.KILOGRAM_A_DAY,
                    new Origin.Typed(portion.feed().feed().name() + ", chosen by the solver")));
        }
        var source = new Source(
                "linear programming: the least cost under every limit listed, solved exactly", Source.Known.ARITHMETIC);
        return List.of(new Line("cost", formula.toString(), cost, Unit.DOLLAR, source, inputs));
    }
}
