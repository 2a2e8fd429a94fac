package haywright.cattle.need;

import static haywright.quantity.Unit.MEGACALORIE;

import haywright.cattle.Animal;
import haywright.cattle.AnimalClass;
import haywright.cattle.Growth;
import haywright.cattle.Maintenance;
import haywright.cattle.RequirementSystem;
import haywright.cattle.cold.Cold;
import haywright.cattle.cold.Exposure;
import haywright.cattle.cold.MeanCold;
import haywright.cattle.herd.Group;
import haywright.cattle.herd.HerdCheck;
import haywright.cattle.herd.Regain;
import haywright.cattle.intake.ExpectedIntake;
import haywright.cattle.intake.IntakeTemperature;
import haywright.workings.Input;
import haywright.workings.Line;
import haywright.workings.Refused;
import haywright.workings.Source;
import haywright.workings.Worked;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * What one animal needs on a day.
 * <pre>
 * NEm = NEmm + NEmy + NEml + NEmc + NEmr      Mcal a day
 * NEg = RE                             Mcal a day, for the wanted gain
 * </pre>
 *
 * @param weather the day it stands in, or several that are equally likely, over which the cold is meant; empty for a mild
 *     day, whose cold is nothing
 * @param regain of thin cattle that are to calve in better condition; null where no score is wanted
 */
public record Requirement(
        Animal animal,
        RequirementSystem system,
        List<Exposure> weather,
        @Nullable Regain regain) implements Need {
    private static final Source SUM = Source.memory("NRC 1996/2000 ch. 10: the parts add up");

    public Requirement {
        weather = List.copyOf(weather);
    }

    /** Of an animal that is to keep the score it has. */
    public Requirement(Animal animal, RequirementSystem system, List<Exposure> weather) {
        this(animal, system, weather, null);
    }

    /** On a mild day. */
    public Requirement(Animal animal, RequirementSystem system) {
        this(animal, system, List.of());
    }

    /**
     * What the same animal needs in other weather, whatever else it needs.
     *
     * @param previousTemperature mean of the month before, °C
     * @param other days that are equally likely; empty for mild ones
     */
    Requirement in(double previousTemperature, List<Exposure> other) {
        return new Requirement(animal.after(previousTemperature), system, other, regain);
    }

    /**
     * What one head of a group needs on a day: the mean over its calving weeks.
     *
     * @throws Refused when {@link HerdCheck} finds something impossible
     */
    public static GroupRequirement of(Group group, LocalDate date, RequirementSystem system) {
        return of(group, date, system, Animal.NO_ACCLIMATIZATION, List.of());
    }

    /**
     * The same, in weather that is known by chance only.
     *
     * @param previousTemperature mean of the month before, °C
     * @param weather days that are equally likely; empty for mild ones
     */
    public static GroupRequirement of(
            Group group, LocalDate date, RequirementSystem system, double previousTemperature, List<Exposure> weather) {
        HerdCheck.findings(group, date).refuse();
        return GroupRequirement.checked(group, date, system, previousTemperature, weather);
    }

    @Override
    public AnimalClass animals() {
        return animal.animals();
    }

    @Override
    public double bodyWeight() {
        return animal.weight().full();
    }

    @Override
    public double shrunkWeight() {
        return animal.weight().shrunk();
    }

    @Override
    public double milk() {
        return animal.milk();
    }

    @Override
    public double pregnantShare() {
        return animal.pregnancy() == null ? 0 : 1;
    }

    @Override
    public double daysPregnant() {
        var pregnancy = animal.pregnancy();
        return pregnancy == null ? 0 : pregnancy.day();
    }

    @Override
    public double milkingShare() {
        return animal.lactation() == null ? 0 : 1;
    }

    @Override
    public double nemMaintenance() {
        return new Maintenance(animal).nem();
    }

    @Override
    public double nemPregnancy() {
        var pregnancy = animal.pregnancy();
        return pregnancy == null ? 0 : pregnancy.nem();
    }

    @Override
    public double nemLactation() {
        var lactation = animal.lactation();
        return lactation == null ? 0 : lactation.nem();
    }

    @Override
    public double nemCold() {
        return weather.isEmpty() ? 0 : cold().nem();
    }

    @Override
    public double nemRegain() {
        return regain == null ? 0 : regain.nem();
    }

    @Override
    public double nemAcclimatization() {
        return new Maintenance(animal).nemAcclimatization();
    }

    @Override
    public double intakeFactor() {
        return weather.stream()
                .mapToDouble(day -> new IntakeTemperature(day.temperature()).factor())
                .average()
                .orElse(ExpectedIntake.NO_FACTOR);
    }

    @Override
    public double neg() {
        return animal.gain() > 0 ? Growth.of(animal).neg() : 0;
    }

    @Override
    public double gain() {
        return animal.gain();
    }

    @Override
    public double gainOn(double otherNeg) {
        return Growth.of(animal).gainOn(otherNeg);
    }

    @Override
    public Requirement gaining(double neg) {
        return new Requirement(animal.gaining(gainOn(neg)), system, weather, regain);
    }

    @Override
    public double metabolizableProtein() {
        return new MetabolizableProtein(animal).grams();
    }

    @Override
    public double crudeProtein() {
        return new MetabolizableProtein(animal).crudeProtein();
    }

    @Override
    public double calcium() {
        return new CalciumPhosphorus(animal).calcium();
    }

    @Override
    public double phosphorus() {
        return new CalciumPhosphorus(animal).phosphorus();
    }

    @Override
    public double water() {
        return drinks().liters();
    }

    /** At the mean temperature of the days. */
    private Water drinks() {
        double temperature =
                weather.stream().mapToDouble(Exposure::temperature).average().orElse(Water.COLDEST_PRINTED);
        return new Water(animals(), bodyWeight(), milk(), temperature);
    }

    @Override
    public List<Line> lines() {
        var parts = new ArrayList<Input>();
        parts.add(Input.computed("NEmm", nemMaintenance(), MEGACALORIE, new Maintenance(animal)));
        Worked pregnancy = animal.pregnancy();
        if (pregnancy != null) {
            parts.add(Input.computed("NEmy", nemPregnancy(), MEGACALORIE, pregnancy));
        }
        Worked lactation = animal.lactation();
        if (lactation != null) {
            parts.add(Input.computed("NEml", nemLactation(), MEGACALORIE, lactation));
        }
        if (!weather.isEmpty()) {
            parts.add(Input.computed("NEmc", nemCold(), MEGACALORIE, cold()));
        }
        if (regain != null) {
            parts.add(Input.computed("NEmr", nemRegain(), MEGACALORIE, regain));
        }
        var lines = new ArrayList<Line>();
        lines.add(new Line("NEm", Input.sum(parts), nem(), MEGACALORIE, SUM, parts));
        if (animal.gain() > 0) {
            var growth = Growth.of(animal);
            lines.add(Line.of("NEg", "RE", neg(), MEGACALORIE, SUM, Input.computed("RE", neg(), MEGACALORIE, growth)));
        }
        lines.addAll(new MetabolizableProtein(animal).lines());
        lines.addAll(new CalciumPhosphorus(animal).lines());
        lines.addAll(drinks().lines());
        return List.copyOf(lines);
    }

    /** The cold of its days, of which there must be one. */
    Cold cold() {
        var days = weather.stream().map(day -> day.cold(animal)).toList();
        return days.size() == 1 ? days.get(0) : new MeanCold(days);
    }
}
