package haywright.cattle.cold;

import static haywright.quantity.Unit.KILOGRAM;
import static haywright.quantity.Unit.MEGACALORIE;
import static haywright.quantity.Unit.NONE;
import static haywright.quantity.Unit.PERCENT;

import haywright.cattle.Animal;
import haywright.cattle.Maintenance;
import haywright.workings.Input;
import haywright.workings.Line;
import haywright.workings.Source;
import java.util.List;

/**
 * The rule of thumb, of maintenance.
 * <pre>
 * A    = SBW^0.75·max(0, a2)                              acclimatization, in maintenance already
 * NEmc = max(0, pct/100·(NEmm − SBW^0.75·a2) − A)         Mcal a day
 * </pre>
 * A windbreak keeps off wind and no frost: behind one the wind chill is that of the wind that is left. One published sentence
 * halves the whole increment instead, which at −40 °F and 9 mph would take away more than all of the wind does.
 *
 * <p>The rule counts the whole cold and acclimatization counts last month's: what maintenance already has of it is taken off,
 * so that a cold month is never counted twice.
 */
public record ColdByRule(Animal animal, Exposure exposure) implements Cold {
    private static final Source ONCE = Source.judgment("the same cold is counted once");

    /** How far it lies under the temperature at which cold begins to cost, and the percent of that. */
    public ColdStress stress() {
        return ColdStress.of(
                new LowerCritical(exposure.coat(animal), exposure.hide().wet(), animal.conditionScore()),
                new CattleWindChill(exposure.temperature(), exposure.wind(), exposure.reaching()));
    }

    /** Maintenance of cattle that know no cold, Mcal of NEm a day: what the percent is of. */
    public double mild() {
        var maintenance = new Maintenance(animal);
        return maintenance.nem() - maintenance.metabolicWeight() * maintenance.acclimatization();
    }

    /** What last month's cold has put into their maintenance, Mcal of NEm a day. */
    public double learned() {
        return learned(new Maintenance(animal));
    }

    @Override
    public double nem() {
        return Math.max(0, stress().percent() / 100 * mild() - learned());
    }

    private static double learned(Maintenance maintenance) {
        return maintenance.metabolicWeight() * Math.max(0, maintenance.acclimatization());
    }

    @Override
    public List<Line> lines() {
        var maintenance = new Maintenance(animal);
        var weight = Input.computed("SBW", animal.weight().shrunk(), KILOGRAM, animal.weight());
        var a2 = Input.computed("a2", maintenance.acclimatization(), NONE, maintenance);
        var stress = stress();
        return List.of(
                Line.of("A", "SBW^0.75·max(0, a2)", learned(maintenance), MEGACALORIE, ONCE, weight, a2),
                Line.of(
                        "NEmc",
                        "max(0, pct/100·(NEmm − SBW^0.75·a2) − A)",
                        nem(),
                        MEGACALORIE,
                        ONCE,
                        Input.computed("pct", stress.percent(), PERCENT, stress),
                        Input.computed("NEmm", maintenance.nem(), MEGACALORIE, maintenance),
                        weight,
                        a2));
    }
}
