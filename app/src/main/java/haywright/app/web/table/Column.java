package haywright.app.web.table;

import haywright.app.web.Option;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/**
 * A box that a column may fill in.
 *
 * @param box its name
 * @param headings by which it goes, the one of our own tables first; in small letters, without a unit
 * @param choices where it is one of a few, in words; empty for what is typed
 */
public record Column(String box, List<String> headings, List<Option> choices) {
    public Column {
        headings = List.copyOf(headings);
        choices = List.copyOf(choices);
    }

    public static Column typed(String box, String... headings) {
        return new Column(box, List.of(headings), List.of());
    }

    public static Column chosen(String box, List<Option> choices, String... headings) {
        return new Column(box, List.of(headings), choices);
    }

    /** What the box holds for a cell: a choice by its words or the beginning of one of them; what is none of them stays. */
    String value(String cell) {
        var typed = key(cell);
        if (choices.isEmpty() || typed.isEmpty()) {
            return cell;
        }
        return choices.stream()
                .filter(one ->
                        key(one.words()).equals(typed) || key(one.value()).equals(typed))
                .findFirst()
                .or(() -> {
                    var some = choices.stream()
                            .filter(one -> key(one.words()).startsWith(typed))
                            .toList();
                    return some.size() == 1 ? some.stream().findFirst() : Optional.<Option>empty();
                })
                .map(Option::value)
                .orElse(cell);
    }

    static String key(String words) {
        return words.toLowerCase(Locale.ROOT).replaceAll("[\\s_().,:#*-]+", " ").strip();
    }
}
