package haywright.app.web;

import haywright.app.words.Measures;
import java.util.Arrays;
import java.util.List;
import java.util.function.Function;

/** One of several to choose from. */
public record Option(String value, String words) {
    /** In the words of the ranch whose page it is on. */
    @Override
    public String words() {
        return Measures.say(words);
    }

    /** What a tick box says. */
    public static final List<Option> TICKED = List.of(new Option("yes", "ticked"), new Option("", "not ticked"));

    /** Every constant of an enum, in its order. */
    public static <E extends Enum<E>> List<Option> of(Class<E> type, Function<E, String> words) {
        return Arrays.stream(type.getEnumConstants())
                .map(one -> new Option(Form.id(one), words.apply(one)))
                .toList();
    }
}
