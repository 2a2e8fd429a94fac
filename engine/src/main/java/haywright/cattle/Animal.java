package haywright.cattle;

import static haywright.quantity.Unit.CELSIUS;
import static haywright.quantity.Unit.KILOGRAM;
import static haywright.quantity.Unit.KILOGRAM_A_DAY;
import static haywright.quantity.Unit.NONE;

import haywright.quantity.Unit;
import haywright.workings.Note;
import haywright.workings.Note.Level;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * One head on one day.
 *
 * @param weight without the unborn calf
 * @param conditionScore 1 to 9
 * @param pregnancy null when she is open
 * @param lactation null when she is dry
 * @param gain wanted, kg a day of shrunk weight; 0 for cattle that hold
 * @param matureWeight kg at condition 5, grown up, shrunk or full as {@code weight} is; for steers and bulls that are fed
 *     out the final weight
 * @param previousTemperature mean of the last month, °C; {@value #NO_ACCLIMATIZATION} leaves it out
 */
public record Animal(
        AnimalClass animals,
        Breed breed,
        LiveWeight weight,
        double conditionScore,
        @Nullable Pregnancy pregnancy,
        @Nullable Lactation lactation,
        double gain,
        double matureWeight,
        double previousTemperature) {
    /** °C: the last month's mean that changes nothing. */
    public static final double NO_ACCLIMATIZATION = 20;

    public Animal {
        check(animals, weight, conditionScore, pregnancy, lactation, gain, matureWeight, previousTemperature)
                .refuse();
    }

    /** A mature cow, open, dry and holding at condition 5. */
    public static Animal matureCow(LiveWeight weight) {
        return new Animal(
                AnimalClass.MATURE_COW, Breed.AVERAGE, weight, 5, null, null, 0, weight.kg(), NO_ACCLIMATIZATION);
    }

    /** The same after another month. */
    public Animal after(double otherTemperature) {
        return otherTemperature == previousTemperature
                ? this
                : new Animal(
                        animals,
                        breed,
                        weight,
                        conditionScore,
                        pregnancy,
                        lactation,
                        gain,
                        matureWeight,
                        otherTemperature);
    }

    /**
     * One that is heavier or fatter.
     *
     * @param times how many times the weight, now and grown up
     * @param scores how many scores more; the scale ends at 1 and 9
     */
    public Animal varied(double times, double scores) {
        return new Animal(
                animals,
                breed,
                new LiveWeight(weight.kg() * times, weight.isShrunk()),
                Math.max(1, Math.min(9, conditionScore + scores)),
                pregnancy,
                lactation,
                gain,
                matureWeight * times,
                previousTemperature);
    }

    /** The mature weight after shrink, kg. */
    double shrunkMatureWeight() {
        return new LiveWeight(matureWeight, weight.isShrunk()).shrunk();
    }

    /** kg a day; 0 when dry. */
    public double milk() {
        return lactation == null ? 0 : lactation.milk();
    }

    /** Which figures are unusual, though possible. */
    public List<Note> notes() {
        var own = check(animals, weight, conditionScore, pregnancy, lactation, gain, matureWeight, previousTemperature);
        return Findings.of(
                        own,
                        pregnancy == null ? Findings.NONE : pregnancy.findings(),
                        lactation == null ? Findings.NONE : lactation.findings())
                .notes();
    }

    private static Findings check(
            AnimalClass animals,
            LiveWeight weight,
            double conditionScore,
            @Nullable Pregnancy pregnancy,
            @Nullable Lactation lactation,
            double gain,
            double matureWeight,
            double previousTemperature) {
        return Findings.of(
                animals.checkWeight("bodyWeight", weight.kg(), matureWeight, KILOGRAM),
                Limits.of("condition_score").check("conditionScore", conditionScore, NONE),
                Limits.of("gain").check("gain", gain, KILOGRAM_A_DAY),
                growing(weight.kg(), matureWeight, KILOGRAM, gain),
                Limits.of("month_mean_temperature").check("previousTemperature", previousTemperature, CELSIUS),
                sex(animals, pregnancy, lactation));
    }

    /** @param unit of both weights */
    public static Findings growing(double weight, double matureWeight, Unit unit, double gain) {
        return !(gain > 0 && weight > matureWeight)
                ? Findings.NONE
                : Findings.one(
                        Level.REFUSE,
                        "grown_and_growing",
                        "matureWeight",
                        Limits.said(matureWeight, unit),
                        "An animal of " + Limits.said(weight, unit) + " that gains is below its mature or final weight",
                        "Check the mature weight, or set the gain to 0.");
    }

    private static Findings sex(AnimalClass animals, @Nullable Pregnancy pregnancy, @Nullable Lactation lactation) {
        boolean neverCalves = animals == AnimalClass.BULL || animals == AnimalClass.GROWING;
        return Findings.of(
                pregnancy != null && neverCalves
                        ? Findings.one(
                                Level.REFUSE,
                                "pregnant_class",
                                "daysPregnant",
                                "day " + Limits.said(pregnancy.day()),
                                "In " + animals.words() + " none is pregnant",
                                "If they are bred heifers, change the class.")
                        : Findings.NONE,
                lactation != null && (neverCalves || animals == AnimalClass.BRED_HEIFER)
                        ? Findings.one(
                                Level.REFUSE,
                                "milking_class",
                                "weeksInMilk",
                                "week " + Limits.said(lactation.weeks()),
                                "In " + animals.words() + " none is in milk",
                                "If they are first-calf heifers or cows, change the class.")
                        : Findings.NONE);
    }

    /** The same animal at another gain, kg a day. */
    public Animal gaining(double other) {
        return new Animal(
                animals, breed, weight, conditionScore, pregnancy, lactation, other, matureWeight, previousTemperature);
    }
}
