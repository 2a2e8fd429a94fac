package haywright.app.words;

import haywright.sampling.Material;
import haywright.sampling.Method;
import haywright.sampling.Purpose;
import haywright.sampling.SamplingPlan;
import haywright.workings.PublishedTable;

/**
 * What to do at the lot, one thing at a time and in plain words; what the sources say, with their differences, stands in
 * {@link Method}.
 *
 * @param increment what one unit gives, in words: "core", "scoop", "handful"
 * @param mix in what and whether it may be parted
 * @param keep until the laboratory has it
 * @param avoid what spoils the sample or hurts
 */
public record Orders(String increment, String how, String mix, String keep, String avoid) {
    private static final PublishedTable TABLE = PublishedTable.read(Orders.class, "orders.csv");

    public static Orders of(SamplingPlan plan) {
        return of(plan.subject().material(), plan.aim().purpose());
    }

    /** How a purpose wants it kept stands in place of the material's own way, never beside it: the two could differ. */
    static Orders of(Material material, Purpose purpose) {
        var row = TABLE.row("material", material.name());
        var asked = purpose.keep(material);
        return new Orders(
                row.text("increment"),
                row.text("how"),
                row.text("mix"),
                asked.isEmpty() ? row.text("keep") : asked,
                row.text("avoid"));
    }

    /** "20 bales, 2 cores each"; "15 scoops" where what a unit gives is called so itself. */
    public String amount(Material material, int units, int each) {
        var from = "%,d %s".formatted(units, units == 1 ? material.unit() : material.units());
        if (increment.equals(material.unit()) || material == Material.STOCK_WATER) {
            return each == 1 ? from : "%s, %d times each".formatted(from, each);
        }
        return "%s, %s each".formatted(from, each == 1 ? "one " + increment : each + " " + increment + "s");
    }
}
