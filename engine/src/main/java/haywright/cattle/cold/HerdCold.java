package haywright.cattle.cold;

import static haywright.quantity.Unit.MEGACALORIE;
import static haywright.quantity.Unit.NONE;

import haywright.workings.Input;
import haywright.workings.Line;
import haywright.workings.Source;
import java.util.List;

/**
 * The cold of a herd whose own winter has shown what it costs them.
 * <pre>
 * NEmc = h·NEmc0      Mcal a day
 * </pre>
 *
 * @param cold by the equations
 * @param factor h
 */
record HerdCold(Cold cold, double factor) implements Cold {
    private static final Source LAST_WINTER = Source.judgment("what was fed last winter, against what was needed");

    @Override
    public double nem() {
        return factor * cold.nem();
    }

    @Override
    public List<Line> lines() {
        return List.of(Line.of(
                "NEmc",
                "h·NEmc0",
                nem(),
                MEGACALORIE,
                LAST_WINTER,
                Input.typed("h", factor, NONE),
                Input.computed("NEmc0", cold.nem(), MEGACALORIE, cold)));
    }
}
