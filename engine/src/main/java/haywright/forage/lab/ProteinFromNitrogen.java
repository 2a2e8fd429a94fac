package haywright.forage.lab;

import haywright.quantity.Unit;
import haywright.workings.Input;
import haywright.workings.Line;
import haywright.workings.Source;
import haywright.workings.Worked;
import java.util.List;

/** A nitrogen figure that a report prints in place of protein. */
public record ProteinFromNitrogen(double nitrogen) implements Worked {
    public double percent() {
        return 6.25 * nitrogen;
    }

    @Override
    public List<Line> lines() {
        return List.of(Line.of(
                "CP",
                "6.25·N",
                percent(),
                Unit.PERCENT,
                Source.read("Mississippi State University Extension P2620"),
                Input.typed("N", nitrogen, Unit.PERCENT)));
    }
}
