package haywright.workings;

import haywright.quantity.Unit;
import java.util.List;

/**
 * One line of workings.
 *
 * @param symbol what the line computes, as the source names it: {@code DDM}
 * @param formula the right-hand side in the source's form, with the symbols of {@code inputs}: {@code 88.9 − 0.779·ADF}.
 *     Written so that a machine can evaluate it again: {@code + − · / ^}, brackets, {@code exp ln sqrt min max abs}
 * @param value the number, unrounded
 * @param unit its unit
 * @param source where the formula is published, or how else it is known
 * @param inputs every symbol of the formula that is not the symbol of an earlier line
 */
public record Line(String symbol, String formula, double value, Unit unit, Source source, List<Input> inputs) {
    public Line {
        inputs = List.copyOf(inputs);
    }

    public static Line of(String symbol, String formula, double value, Unit unit, Source source, Input... inputs) {
        return new Line(symbol, formula, value, unit, source, List.of(inputs));
    }
}
