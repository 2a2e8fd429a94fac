package haywright.app.web.sampling;

import haywright.app.web.Ask;
import haywright.app.web.Form;
import java.util.ArrayList;
import java.util.List;

/** A box with several numbers in it, blanks or lines between them. */
final class Numbers {
    private Numbers() {}

    static List<Double> read(Form form, Ask ask, String fix) {
        var numbers = new ArrayList<Double>();
        for (var word : form.text(ask, fix).split("[\\s;]+")) {
            if (word.isEmpty()) {
                continue;
            }
            try {
                numbers.add(Double.valueOf(word.replace(",", "")));
            } catch (NumberFormatException e) {
                form.refuse(ask.name(), word, "this is not a number", "Put blanks between them.");
            }
        }
        return numbers;
    }
}
