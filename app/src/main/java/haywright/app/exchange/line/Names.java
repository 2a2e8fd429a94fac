package haywright.app.exchange.line;

import haywright.app.exchange.lab.Heading;
import haywright.app.exchange.lab.Label;
import haywright.app.exchange.lab.Vocabulary;
import java.util.HashMap;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** What names mean here, each looked up once: the same ones come again on every page. */
public record Names(
        Vocabulary words,
        Map<String, Optional<Label>> known,
        Map<String, Boolean> beginnings,
        Map<TextLine, List<Row>> rows) {
    private static final int MOST_KNOWN = 20_000;

    public Names(Vocabulary words) {
        this(words, new HashMap<>(), new HashMap<>(), new IdentityHashMap<>());
    }

    /** The rows of a whole line, taken apart once. */
    public List<Row> rows(TextLine line) {
        return rows.computeIfAbsent(line, l -> Rows.of(l.words(), l.isAligned(), this));
    }

    /** Whether a name can begin with this word; most words are sooner told by it than by taking names apart. */
    public boolean canBegin(String word) {
        var before = beginnings.get(word);
        if (before != null) {
            return before;
        }
        var key = Heading.key(word);
        boolean can = Label.canBegin(word) || words.own().keySet().stream().anyMatch(own -> own.startsWith(key));
        if (beginnings.size() < MOST_KNOWN) {
            beginnings.put(word, can);
        }
        return can;
    }

    public Optional<Label> label(String written) {
        var before = known.get(written);
        if (before == null) {
            before = words.label(written);
            if (known.size() < MOST_KNOWN) {
                known.put(written, before);
            }
        }
        return before;
    }

    public Optional<Heading> heading(String written) {
        return label(written).map(Label::heading);
    }

    /** A unit column can say "% of CP" too, alone or once more. */
    public Optional<Heading> headingWithUnit(String written, String unit) {
        if (words.own().containsKey(Heading.key(written))) {
            return words.label(written, unit).map(Label::heading);
        }
        return heading(written + ", " + unit)
                .or(() -> heading(written).flatMap(h -> Heading.measured(h.analyte(), unit)));
    }
}
