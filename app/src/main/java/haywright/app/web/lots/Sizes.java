package haywright.app.web.lots;

import haywright.app.web.Ask;
import haywright.app.web.Form;
import haywright.quantity.Quantity;
import java.util.Map;

/**
 * Sizes as a form has them; one beyond what is usual is asked about, unless it stood there before.
 *
 * @param before what the form showed when it was opened
 */
record Sizes(Form form, Map<String, String> before) {
    /** @param low, high the usual, in the unit of the box */
    Quantity of(Ask ask, String fix, double low, double high) {
        var size = form.quantity(ask, fix);
        boolean stood = form.value(ask).equals(before.get(ask.name()));
        if (!stood && size.base() > 0) {
            form.doubtUnless(ask, null, size, Quantity.of(low, ask.unit()), Quantity.of(high, ask.unit()));
        }
        return size;
    }
}
