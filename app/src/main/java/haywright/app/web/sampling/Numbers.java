package haywright.app.web.sampling;

import haywright.app.web.Ask;
import haywright.app.web.Form;
import java.util.ArrayList;
import java.util.List;

/** A box with several numbers in it; blanks, lines, semicolons or commas between them. */
final class Numbers {
    private Numbers() {}

    static List<Double> read(Form form, Ask ask, String fix) {
        var numbers = new ArrayList<Double>();
        for (var words : form.text(ask, fix).split("[\\s;]+")) {
            boolean isOne = words.matches("[0-9]{1,3}(,[0-9]{3})+(\\.[0-9]+)?");
            for (var word : isOne ? List.of(words.replace(",", "")) : List.of(words.split(","))) {
                if (word.matches("[0-9]{1,9}(\\.[0-9]{1,9})?|\\.[0-9]{1,9}")) {
                    numbers.add(Double.valueOf(word));
                } else if (!word.isEmpty()) {
                    form.refuse(
                            ask.name(),
                            word,
                            "each is a number of 0 or more",
                            "Put blanks between them, and no words.");
                }
            }
        }
        return numbers;
    }
}
