package haywright.cattle.cold;

import haywright.cattle.Animal;
import haywright.workings.Refused;

/**
 * What the weather of a day does to cattle that stand in it.
 *
 * @param temperature mean of the day, °C
 * @param wind mean of the day, km/h, in the open
 * @param windbreak whether they can stand behind one: three tenths of the wind reach them there
 * @param herd what the cold costs this herd for each Mcal that the equations say, as a winter that was fed has shown; 1
 *     where nothing is known of it
 * @param worn whether somebody has said that all wear this coat; else it is the heaviest of the time of year, and cattle
 *     in milk or below score 5 wear no heavier one than the winter class
 */
public record Exposure(
        double temperature,
        double wind,
        HairCoat coat,
        Hide hide,
        boolean windbreak,
        ColdSystem system,
        double herd,
        boolean worn) {
    private static final double BEHIND_A_BREAK = 0.3;

    /** Of a herd that nothing is known of. */
    public Exposure(double temperature, double wind, Coat coat, Hide hide, boolean windbreak, ColdSystem system) {
        this(temperature, wind, HairCoat.of(coat), hide, windbreak, system, 1, true);
    }

    /** @throws Refused for a temperature or a wind that cannot be */
    public Exposure {
        WindChill.check(temperature, wind);
    }

    /** The same day for cattle with this on their coats. */
    public Exposure with(Hide other) {
        return new Exposure(temperature, wind, coat, other, windbreak, system, herd, worn);
    }

    /** The same day for a herd whose cold costs so many times what the equations say. */
    public Exposure ofHerd(double factor) {
        return new Exposure(temperature, wind, coat, hide, windbreak, system, factor, worn);
    }

    /** The same day in the coat of the season, by condition and milk. */
    public Exposure in(HairCoat ofTheSeason) {
        return new Exposure(temperature, wind, ofTheSeason, hide, windbreak, system, herd, false);
    }

    /** The share of the wind that reaches them. */
    double reaching() {
        return windbreak ? BEHIND_A_BREAK : 1;
    }

    /** The coat that an animal wears. */
    public HairCoat coat(Animal animal) {
        return worn ? coat : coat.of(animal);
    }

    public Cold cold(Animal animal) {
        var cold = byEquation(animal);
        return herd == 1 ? cold : new HerdCold(cold, herd);
    }

    private Cold byEquation(Animal animal) {
        return system == ColdSystem.RULE_OF_THUMB ? new ColdByRule(animal, this) : new ColdByBalance(animal, this);
    }
}
