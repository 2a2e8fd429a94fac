package haywright.sampling;

import haywright.workings.Source;
import java.util.ArrayList;
import java.util.List;

/**
 * What to load and how long it takes.
 *
 * @param minutes at the lot, without the drive
 * @param batteries charged drill batteries to carry, spares among them; 0 where nothing is drilled
 */
public record Outing(int minutes, int batteries, List<String> kit, Source source) {
    /** Cores of one charged battery; half as many in the cold, and one spare is always carried. Judged. */
    private static final int CORES_A_BATTERY = 40;

    public Outing {
        kit = List.copyOf(kit);
    }

    static Outing of(Material material, Purpose purpose, Design design) {
        double minutes = material.take("minutes_set_up")
                + design.units() * material.take("minutes_unit")
                + design.cores() * material.take("minutes_increment");
        boolean cored = material.way() == Material.Way.CORED;
        int batteries = cored ? 1 + (int) Math.ceil(2.0 * design.cores() / CORES_A_BATTERY) : 0;
        return new Outing(
                (int) Math.ceil(minutes),
                batteries,
                kit(material, purpose, batteries),
                Source.judgement("minutes and cores a battery, judged: half the cores in the cold, and a spare"));
    }

    private static List<String> kit(Material material, Purpose purpose, int batteries) {
        var kit = new ArrayList<String>();
        switch (material.way()) {
            case CORED -> {
                kit.add("hollow probe with a sharp tip, and its push rod");
                kit.add("drill with a side handle, " + batteries + " charged batteries kept warm");
                kit.add("clean 5-gallon bucket with a lid");
                kit.add("eye protection; mask for dusty hay");
                if (material.isBaled()) {
                    kit.add("scale for 5 to 10 bales, or the loader's");
                }
            }
            case GRABBED -> {
                kit.add("clean scoop");
                kit.add("clean bucket, and a clean tarp to mix and quarter on");
            }
            case CLIPPED -> {
                kit.add("frame of known area, hand shears");
                kit.add("paper bag a plot, small scale that reads 1 g");
                kit.add("the walk on a phone or GPS");
            }
            case BOTTLED -> {
                kit.add("clean bottle from the laboratory, a sterile one for bacteria");
                kit.add("pole with a clamp, so that nobody leans over the edge");
                kit.add("gloves");
            }
        }
        if (material == Material.BAGGED_FEED) {
            kit.add("slotted bag probe, and tape to close the bags");
        }
        if (material == Material.BALEAGE) {
            kit.add("bale tape: every hole is closed at once");
        }
        if (material.needsCold() || purpose == Purpose.PRUSSIC_ACID) {
            kit.add("cooler with ice packs");
        }
        if (material != Material.STOCK_WATER) {
            kit.add(purpose == Purpose.MOULDS ? "breathable bags for ten pounds" : "1-gallon bags that close airtight");
        }
        kit.add("field sheet with its bag labels, pencil");
        return kit;
    }
}
