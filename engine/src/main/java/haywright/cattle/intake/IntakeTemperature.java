package haywright.cattle.intake;

import static haywright.quantity.Unit.CELSIUS;
import static haywright.quantity.Unit.NONE;

import haywright.cattle.Breed;
import haywright.cattle.Limits;
import haywright.workings.Input;
import haywright.workings.Line;
import haywright.workings.PublishedTable;
import haywright.workings.Worked;
import java.util.List;

/**
 * How much more or less than in mild weather cattle eat at a temperature: a factor of expected intake, by classes as
 * printed. On snow-covered or stockpiled grass they may graze less in the cold instead: do not credit it there.
 *
 * @param temperature mean of the days, °C
 * @see "Ohio State University, Cold stress and beef cows, 2021: the four cold classes (read); the warm ones from memory"
 */
public record IntakeTemperature(double temperature) implements Worked {
    private static final List<PublishedTable.Row> CLASSES = PublishedTable.read(
                    IntakeTemperature.class, "intake_temperature.csv")
            .rows();

    public IntakeTemperature {
        Limits.of("day_temperature").check("temperature", temperature, CELSIUS).refuse();
    }

    private PublishedTable.Row row() {
        var row = CLASSES.get(0);
        for (var next : CLASSES) {
            row = temperature > next.number("above_c").orElseThrow() ? next : row;
        }
        return row;
    }

    public double factor() {
        return row().number("factor").orElseThrow();
    }

    @Override
    public List<Line> lines() {
        var source = Breed.source(row());
        return List.of(Line.of("k", "k0", factor(), NONE, source, Input.published("k0", factor(), NONE, source)));
    }
}
