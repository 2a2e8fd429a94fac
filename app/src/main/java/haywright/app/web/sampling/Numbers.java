package haywright.app.web.sampling;

import haywright.app.web.Ask;
import haywright.app.web.Form;
import haywright.app.words.Parse;
import haywright.quantity.Quantity;
import haywright.quantity.Unit;
import haywright.workings.Refused;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Pattern;

/** A box with several numbers in it; blanks, lines, semicolons or commas between them. */
final class Numbers {
    private static final Pattern WITH_UNIT = Pattern.compile("([0-9][0-9.,]*[0-9]|[0-9])\\s*([A-Za-z#]*)");

    private Numbers() {}

    /**
     * Amounts, each with its own unit or none with any; a unit behind the last alone is meant for all.
     *
     * @param asked what a bare number is in
     */
    static List<Quantity> read(Form form, Ask ask, Unit asked, String fix) {
        var typed = form.text(ask, fix);
        var found = WITH_UNIT.matcher(typed);
        var units = new ArrayList<String>();
        while (found.find()) {
            units.add(found.group(2));
        }
        var named = units.stream().filter(u -> !u.isEmpty()).distinct().toList();
        boolean isOfOne = units.stream().filter(u -> !u.isEmpty()).count() == 1
                && !units.get(units.size() - 1).isEmpty();
        if (named.isEmpty()) {
            return read(form, ask, fix).stream().map(n -> Quantity.of(n, asked)).toList();
        }
        var amounts = new ArrayList<Quantity>();
        if (!WITH_UNIT.matcher(typed).replaceAll("").matches("[\\s,;]*")) {
            form.refuse(
                    ask.name(),
                    typed,
                    "each is a number, with or without a unit",
                    "Put spaces between them, and no other words.");
            return amounts;
        }
        if (!isOfOne && units.contains("")) {
            form.refuse(
                    ask.name(), typed, "some have a unit and some have none", "Write it after each, or after none.");
            return amounts;
        }
        found.reset();
        while (found.find()) {
            var unit = isOfOne ? named.get(0) : found.group(2);
            try {
                amounts.add(Parse.quantity(ask.name(), found.group(1) + " " + unit, asked));
            } catch (Refused refused) {
                refused.problems().forEach(p -> form.refuse(p.field(), p.value(), p.rule(), p.fix()));
                return amounts;
            }
        }
        return amounts;
    }

    static List<Double> read(Form form, Ask ask, String fix) {
        form.text(ask, fix);
        return form.numbers(ask);
    }
}
