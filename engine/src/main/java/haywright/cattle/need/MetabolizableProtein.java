package haywright.cattle.need;

import static haywright.quantity.Unit.GRAM_A_DAY;
import static haywright.quantity.Unit.KILOGRAM_A_DAY;

import haywright.cattle.Animal;
import haywright.cattle.Growth;
import haywright.cattle.Maintenance;
import haywright.workings.Input;
import haywright.workings.Line;
import haywright.workings.Source;
import haywright.workings.Worked;
import java.util.ArrayList;
import java.util.List;

/**
 * Protein that must reach the gut, and the shortcut to crude protein.
 * <pre>
 * MP = MPm + MPy + MPl + MPg          g a day
 * CP = MP / 0.67 / 1000               kg a day
 * </pre>
 * The shortcut holds only where the rumen has its degradable protein; the floor of the whole diet is the diet's affair.
 *
 * @see "Arkansas Cooperative Extension MP391: crude protein = metabolizable protein / 0.67 (read)"
 */
public record MetabolizableProtein(Animal animal) implements Worked {
    private static final Source SUM = Source.memory("NRC 1996/2000 ch. 3");
    private static final Source SHORTCUT = Source.read("Arkansas Cooperative Extension MP391: CP = MP / 0.67");

    /** g a day. */
    public double grams() {
        var pregnancy = animal.pregnancy();
        var lactation = animal.lactation();
        return new Maintenance(animal).metabolizableProtein()
                + (pregnancy == null ? 0 : pregnancy.metabolizableProtein())
                + (lactation == null ? 0 : lactation.metabolizableProtein())
                + (animal.gain() > 0 ? Growth.of(animal).metabolizableProtein() : 0);
    }

    /** kg a day. */
    public double crudeProtein() {
        return grams() / 0.67 / 1000;
    }

    @Override
    public List<Line> lines() {
        var parts = new ArrayList<Input>();
        var maintenance = new Maintenance(animal);
        parts.add(Input.computed("MPm", maintenance.metabolizableProtein(), GRAM_A_DAY, maintenance));
        var pregnancy = animal.pregnancy();
        if (pregnancy != null) {
            parts.add(Input.computed("MPy", pregnancy.metabolizableProtein(), GRAM_A_DAY, pregnancy));
        }
        var lactation = animal.lactation();
        if (lactation != null) {
            parts.add(Input.computed("MPl", lactation.metabolizableProtein(), GRAM_A_DAY, lactation));
        }
        if (animal.gain() > 0) {
            var growth = Growth.of(animal);
            parts.add(Input.computed("MPg", growth.metabolizableProtein(), GRAM_A_DAY, growth));
        }
        return List.of(
                new Line("MP", Input.sum(parts), grams(), GRAM_A_DAY, SUM, parts),
                Line.of("CP", "MP / 0.67 / 1000", crudeProtein(), KILOGRAM_A_DAY, SHORTCUT));
    }
}
