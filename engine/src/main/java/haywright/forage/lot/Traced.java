package haywright.forage.lot;

import haywright.workings.Input;
import haywright.workings.Line;
import haywright.workings.Origin;
import haywright.workings.Worked;
import java.util.List;
import java.util.Map;

/**
 * The same work with its inputs' origins filled in: an equation holds numbers only, and does not know that its ADF came
 * from a report. Nothing is built before the lines are asked for.
 *
 * @param origins by the symbol the work uses
 */
record Traced(Worked work, Map<String, Origin> origins) implements Worked {
    @Override
    public List<Line> lines() {
        return work.lines().stream()
                .map(line -> new Line(
                        line.symbol(),
                        line.formula(),
                        line.value(),
                        line.unit(),
                        line.source(),
                        line.inputs().stream().map(this::traced).toList()))
                .toList();
    }

    private Input traced(Input input) {
        var origin = origins.get(input.symbol());
        return origin == null ? input : new Input(input.symbol(), input.value(), input.unit(), origin);
    }
}
