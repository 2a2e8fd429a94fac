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
 * NEmc = max(0, pct/100·b·(NEmm − SBW^0.75·a2) − A)       Mcal a day; b is 0.5 behind a windbreak, else 1
 * </pre>
 * The rule counts the whole cold and acclimatization counts last month's: what maintenance already has of it is taken off,
 * so that a cold month is never counted twice.
 */
public record ColdByRule(Animal animal, Exposure exposure) implements Cold {
    private static final double SHELTERED = 0.5;
    private static final Source WINDBREAK =
            Source.read("Drovers, Temperature is not the only measure of cold: a windbreak halves the increment");
    private static final Source ONCE = Source.judgment("the same cold is counted once");

    /** How far it lies under the temperature at which cold begins to cost, and the percent of that. */
    public ColdStress stress() {
        return ColdStress.of(
                new LowerCritical(exposure.coat(animal), exposure.hide().wet(), animal.conditionScore()),
                new CattleWindChill(exposure.temperature(), exposure.wind()));
    }

    /** The share of it that reaches them: half behind a windbreak. */
    public double shelter() {
        return exposure.windbreak() ? SHELTERED : 1;
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
        return Math.max(0, stress().percent() / 100 * shelter() * mild() - learned());
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
                        "max(0, pct/100·b·(NEmm − SBW^0.75·a2) − A)",
                        nem(),
                        MEGACALORIE,
                        ONCE,
                        Input.computed("pct", stress.percent(), PERCENT, stress),
                        Input.published("b", shelter(), NONE, WINDBREAK),
                        Input.computed("NEmm", maintenance.nem(), MEGACALORIE, maintenance),
                        weight,
                        a2));
    }
}
