package haywright.cattle;

import haywright.workings.Refused;

/**
 * What the weather of a day does to cattle that stand in it.
 *
 * @param temperature mean of the day, °C
 * @param wind mean of the day, km/h, in the open
 * @param windbreak whether they can stand behind one; it halves the increment of the rule of thumb, or leaves the heat
 *     balance three tenths of the wind, never both
 */
public record Exposure(double temperature, double wind, Coat coat, Hide hide, boolean windbreak, ColdSystem system) {
    /** @throws Refused for a temperature or a wind that cannot be */
    public Exposure {
        WindChill.check(temperature, wind);
    }

    Cold cold(Animal animal) {
        return system == ColdSystem.RULE_OF_THUMB ? new ColdByRule(animal, this) : new ColdByBalance(animal, this);
    }
}
