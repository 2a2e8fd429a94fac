package haywright.sampling;

import haywright.workings.Source;

/**
 * What to load and how long it takes.
 *
 * @param minutes at the lot, without the drive
 * @param batteries charged drill batteries to carry, spares among them; 0 where nothing is drilled
 */
public record Outing(int minutes, int batteries, Source source) {
    /** Cores of one charged battery; half as many in the cold, and one spare is always carried. Judged. */
    private static final int CORES_A_BATTERY = 40;

    static Outing of(Material material, Design design) {
        double minutes = material.take("minutes_set_up")
                + design.units() * material.take("minutes_unit")
                + design.cores() * material.take("minutes_increment");
        boolean cored = material.way() == Material.Way.CORED;
        int batteries = cored ? 1 + (int) Math.ceil(2.0 * design.cores() / CORES_A_BATTERY) : 0;
        return new Outing(
                (int) Math.ceil(minutes),
                batteries,
                Source.judgment("minutes and cores a battery, judged: half the cores in the cold, and a spare"));
    }
}
