package haywright.cattle.need;

import static haywright.quantity.Unit.GRAM_A_DAY;
import static haywright.quantity.Unit.KILOGRAM;
import static haywright.quantity.Unit.KILOGRAM_A_DAY;

import haywright.cattle.Animal;
import haywright.cattle.Growth;
import haywright.workings.Input;
import haywright.workings.Line;
import haywright.workings.Source;
import haywright.workings.Worked;
import java.util.ArrayList;
import java.util.List;

/**
 * Calcium and phosphorus to be eaten.
 * <pre>
 * Ca = (0.0154·SBW + 1.23·Y + 0.071·NPg + CBW·13.7/90) / 0.50       g a day
 * P  = (0.016·SBW + 0.95·Y + 0.039·NPg + CBW·7.6/90) / 0.68         g a day
 * </pre>
 * The calf's part only in the last 90 days; milk Y in kg a day, NPg the net protein of gain in g a day.
 *
 * @see "NRC, Nutrient Requirements of Beef Cattle, 1996/2000, p. 55 (read; 0.50 and the phosphorus line from memory)"
 */
public record CalciumPhosphorus(Animal animal) implements Worked {
    private static final Source CALCIUM = Source.reproduces("NRC 1996/2000 p. 55; Univ. Arizona AZ9523");
    private static final Source PHOSPHORUS = Source.memory("NRC 1996/2000 ch. 5");

    /** g a day. */
    public double calcium() {
        return (0.0154 * animal.weight().shrunk() + 1.23 * animal.milk() + 0.071 * gained() + lateCalf() * 13.7 / 90)
                / 0.50;
    }

    /** g a day. */
    public double phosphorus() {
        return (0.016 * animal.weight().shrunk() + 0.95 * animal.milk() + 0.039 * gained() + lateCalf() * 7.6 / 90)
                / 0.68;
    }

    /** NPg, g a day. */
    private double gained() {
        return animal.gain() > 0 ? Growth.of(animal).netProtein() : 0;
    }

    /** Birth weight in the last 90 days, else 0. */
    private double lateCalf() {
        var pregnancy = animal.pregnancy();
        return pregnancy != null && pregnancy.late() ? pregnancy.birthWeight() : 0;
    }

    @Override
    public List<Line> lines() {
        var inputs = new ArrayList<Input>();
        var calcium = new StringBuilder("(0.0154·SBW");
        var phosphorus = new StringBuilder("(0.016·SBW");
        inputs.add(Input.computed("SBW", animal.weight().shrunk(), KILOGRAM, animal.weight()));
        var lactation = animal.lactation();
        if (lactation != null) {
            inputs.add(Input.computed("Y", lactation.milk(), KILOGRAM_A_DAY, lactation));
            calcium.append(" + 1.23·Y");
            phosphorus.append(" + 0.95·Y");
        }
        if (animal.gain() > 0) {
            var growth = Growth.of(animal);
            inputs.add(Input.computed("NPg", growth.netProtein(), GRAM_A_DAY, growth));
            calcium.append(" + 0.071·NPg");
            phosphorus.append(" + 0.039·NPg");
        }
        if (lateCalf() > 0) {
            inputs.add(Input.typed("CBW", lateCalf(), KILOGRAM));
            calcium.append(" + CBW·13.7/90");
            phosphorus.append(" + CBW·7.6/90");
        }
        return List.of(
                new Line("Ca", calcium + ") / 0.50", calcium(), GRAM_A_DAY, CALCIUM, inputs),
                new Line("P", phosphorus + ") / 0.68", phosphorus(), GRAM_A_DAY, PHOSPHORUS, inputs));
    }
}
