package haywright.cattle;

import haywright.workings.Refused;

/**
 * What the weather of a day does to cattle that stand in it.
 *
 * @param temperature mean of the day, °C
 * @param wind mean of the day, km/h, in the open
 * @param windbreak whether they can stand behind one; it halves the increment of the rule of thumb, or leaves the heat
 *     balance three tenths of the wind, never both
 * @param herd what the cold costs this herd for each Mcal that the equations say, as a winter that was fed has shown; 1
 *     where nothing is known of it
 */
public record Exposure(
        double temperature, double wind, Coat coat, Hide hide, boolean windbreak, ColdSystem system, double herd) {
    /** Of a herd that nothing is known of. */
    public Exposure(double temperature, double wind, Coat coat, Hide hide, boolean windbreak, ColdSystem system) {
        this(temperature, wind, coat, hide, windbreak, system, 1);
    }

    /** @throws Refused for a temperature or a wind that cannot be */
    public Exposure {
        WindChill.check(temperature, wind);
    }

    /** The same day for cattle with this on their coats. */
    public Exposure with(Hide other) {
        return new Exposure(temperature, wind, coat, other, windbreak, system, herd);
    }

    /** The same day for a herd whose cold costs so many times what the equations say. */
    public Exposure ofHerd(double factor) {
        return new Exposure(temperature, wind, coat, hide, windbreak, system, factor);
    }

    Cold cold(Animal animal) {
        var cold = byEquation(animal);
        return herd == 1 ? cold : new HerdCold(cold, herd);
    }

    private Cold byEquation(Animal animal) {
        return system == ColdSystem.RULE_OF_THUMB ? new ColdByRule(animal, this) : new ColdByBalance(animal, this);
    }
}
