package haywright.app.web;

import haywright.app.words.Measures;
import haywright.app.words.Show;
import haywright.quantity.Quantity;
import haywright.quantity.Unit;

/**
 * One field of a form: asked by the template, read by the handler, named in the error summary.
 *
 * @param name of the record component it becomes
 * @param label above the box; names the unit where it could be doubted
 * @param unit that a bare number is taken to be in, and the suffix beside the box; {@code NONE} shows none
 * @param hint one sentence under the label; empty for none
 * @param width of the box in characters: as wide as the answer
 */
public record Ask(String name, String label, Unit unit, String hint, int width) {
    /** In the words of the ranch whose page asks. */
    @Override
    public String label() {
        return Measures.say(label);
    }

    /** The unit that it asks for in the U.S. */
    public Unit us() {
        return unit;
    }

    /** In the units of the ranch whose page asks. */
    @Override
    public Unit unit() {
        return Measures.of(unit);
    }

    @Override
    public String hint() {
        return Measures.say(hint);
    }

    public static Ask text(String name, String label, String hint) {
        return new Ask(name, label, Unit.NONE, hint, 36);
    }

    public static Ask amount(String name, String label, Unit unit, String hint) {
        return new Ask(name, label, unit, hint, 9);
    }

    /** A whole number, or a bare number without a unit. */
    public static Ask number(String name, String label, String hint) {
        return new Ask(name, label, Unit.NONE, hint, 6);
    }

    public static Ask date(String name, String label, String hint) {
        return new Ask(name, label, Unit.NONE, hint, 14);
    }

    public static Ask choice(String name, String label, String hint) {
        return new Ask(name, label, Unit.NONE, hint, 0);
    }

    /** A number alone where it is in the unit that the box shows, otherwise with its own. */
    public String typed(Quantity quantity) {
        return quantity.unit() == unit() ? Show.significant(quantity.value(), 12) : Show.typed(quantity);
    }
}
