package haywright.diet;

import static haywright.quantity.Unit.KILOGRAM_A_DAY;
import static haywright.quantity.Unit.MCAL_PER_KG;
import static haywright.quantity.Unit.MEGACALORIE;
import static haywright.quantity.Unit.PERCENT;

import haywright.cattle.intake.ExpectedIntake;
import haywright.cattle.need.Need;
import haywright.forage.energy.NetEnergy;
import haywright.quantity.Unit;
import haywright.workings.Input;
import haywright.workings.Line;
import haywright.workings.Origin;
import haywright.workings.Source;
import haywright.workings.Worked;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.DoubleFunction;

/**
 * The poorest diet that carries a need on what cattle are expected to eat of it: the figure to hold against a hay test and
 * against the rules of thumb, which are percent of dry matter too.
 * <pre>
 * DMI = NEmn/NEm + NEgn/NEg      kg of dry matter a day: what they eat is what the need takes
 * </pre>
 * NEm and NEg follow from TDN, and so does DMI, hence TDN is found by trial. It is no ration: cattle eat more than expected
 * of a good hay, and a cold day is not in it.
 *
 * @param tdn percent of dry matter
 */
public record PoorestDiet(Need need, double tdn) implements Worked {
    /** The energy equations hold from here to there. */
    private static final double LOW = 40;

    private static final double HIGH = 90;

    /** Halvings of 50 points of TDN: to 1e-10. */
    private static final int HALVINGS = 40;

    /** Empty where no diet carries it: a wanted gain that is out of reach. */
    public static Optional<PoorestDiet> of(Need need) {
        double nem = need.nem();
        double neg = need.neg();
        var intake = need.intakes(need.intakeFactor());
        double low = LOW;
        double high = HIGH;
        if (!carries(nem, neg, intake, high)) {
            return Optional.empty();
        }
        for (int i = 0; i < HALVINGS; i++) {
            double middle = (low + high) / 2;
            if (carries(nem, neg, intake, middle)) {
                high = middle;
            } else {
                low = middle;
            }
        }
        return Optional.of(new PoorestDiet(need, high));
    }

    private NetEnergy energy() {
        return new NetEnergy(tdn);
    }

    private static boolean carries(double nem, double neg, DoubleFunction<ExpectedIntake> intake, double tdn) {
        var energy = new NetEnergy(tdn);
        return taken(nem, neg, energy) <= intake.apply(energy.nem()).kilograms();
    }

    /** kg of dry matter a day that would hold the energy needed. */
    private static double taken(double nem, double neg, NetEnergy energy) {
        return nem / energy.nem() + (neg > 0 ? neg / energy.neg() : 0);
    }

    private ExpectedIntake intake() {
        return need.intake(energy().nem());
    }

    /** What they are expected to eat of it, kg of dry matter a head and day; right to 8 to 15 %. */
    public double kilograms() {
        return intake().kilograms();
    }

    /** What another animal is expected to eat of this diet, kg of dry matter a day. */
    public double eatenBy(Need other) {
        return other.intake(energy().nem()).kilograms();
    }

    /** Crude protein it has to hold, percent of dry matter: by need, and never less than the floor. */
    public double crudeProteinPercent() {
        return Math.max(byNeed(), need.proteinFloor().percent());
    }

    /** Crude protein it brings, kg a day: its share of what they eat. */
    public double crudeProtein() {
        return crudeProteinPercent() / 100 * kilograms();
    }

    /** The same of another animal that eats of this diet as much as it wants, and never less than it needs. */
    public double crudeProteinOf(Need other) {
        return Math.max(other.crudeProtein(), other.proteinFloor().percent() / 100 * eatenBy(other));
    }

    private double byNeed() {
        return 100 * need.crudeProtein() / kilograms();
    }

    @Override
    public List<Line> lines() {
        var energy = new ArrayList<Input>();
        energy.add(needed("NEmn", need.nem(), MEGACALORIE));
        energy.add(Input.computed("NEm", energy().nem(), MCAL_PER_KG, energy()));
        if (need.neg() > 0) {
            energy.add(needed("NEgn", need.neg(), MEGACALORIE));
            energy.add(Input.computed("NEg", energy().neg(), MCAL_PER_KG, energy()));
        }
        var found = new Origin.Typed("found by trial, so that DMI and K below are the same");
        return List.of(
                Line.of("TDN", "T", tdn, PERCENT, Source.ARITHMETIC, new Input("T", tdn, PERCENT, found)),
                new Line(
                        "K",
                        need.neg() > 0 ? "NEmn/NEm + NEgn/NEg" : "NEmn/NEm",
                        taken(need.nem(), need.neg(), energy()),
                        KILOGRAM_A_DAY,
                        Source.ARITHMETIC,
                        energy),
                Line.of(
                        "CPn",
                        "100·CP/DMI",
                        byNeed(),
                        PERCENT,
                        Source.ARITHMETIC,
                        needed("CP", need.crudeProtein(), KILOGRAM_A_DAY),
                        Input.computed("DMI", kilograms(), KILOGRAM_A_DAY, intake())),
                Line.of(
                        "CPd",
                        "max(CPn, F)",
                        crudeProteinPercent(),
                        PERCENT,
                        Source.ARITHMETIC,
                        new Input("CPn", byNeed(), PERCENT, new Origin.Typed("the line above")),
                        Input.computed("F", need.proteinFloor().percent(), PERCENT, need.proteinFloor())),
                Line.of(
                        "CPk",
                        "CPd·DMI / 100",
                        crudeProtein(),
                        KILOGRAM_A_DAY,
                        Source.ARITHMETIC,
                        Input.computed("DMI", kilograms(), KILOGRAM_A_DAY, intake())));
    }

    private static Input needed(String symbol, double value, Unit unit) {
        return new Input(symbol, value, unit, new Origin.Typed("the need, worked out beside"));
    }
}
