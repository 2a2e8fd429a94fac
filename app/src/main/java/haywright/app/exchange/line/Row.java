package haywright.app.exchange.line;

import haywright.app.exchange.lab.Heading;
import haywright.app.exchange.lab.Legend;
import haywright.app.exchange.line.TextLine.Word;
import haywright.forage.Basis;
import haywright.quantity.Unit;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;

/**
 * A name with the figures behind it.
 *
 * @param heading what the name means; null where it is not known, or its figure not to be taken
 * @param words all of the row's, figures and name
 * @param figures and signs that there is none, from left to right
 * @param unit as the row says it; null where it says none
 * @param bases as the row says them, by the figure they stand behind; under −1 what stands before all of them
 * @param why it is not to be taken, in words; empty where it is
 */
public record Row(
        String name,
        @Nullable Heading heading,
        List<Word> words,
        List<Word> figures,
        @Nullable Unit unit,
        Map<Integer, Basis> bases,
        String why) {
    public Row {
        words = List.copyOf(words);
        figures = List.copyOf(figures);
        bases = Map.copyOf(bases);
    }

    /** The basis of one of its figures; null where the row says none. */
    @Nullable
    public Basis basis(int figure) {
        var own = bases.getOrDefault(figure, bases.get(-1));
        // in a column of units on the right, behind signs that there is no other figure
        int last = figures.size() - 1;
        return own == null
                        && figures.subList(figure + 1, figures.size()).stream().allMatch(Word::isNothing)
                ? bases.get(last)
                : own;
    }

    /** Several figures in a row, and each has its own basis behind it. */
    public boolean areTold() {
        var own = new ArrayList<Basis>();
        for (int i = 0; i < figures.size(); i++) {
            var basis = bases.get(i);
            if (basis == null || own.contains(basis)) {
                return false;
            }
            own.add(basis);
        }
        return true;
    }

    /** Whether each figure stands in a cell of its own; two with one space between may be one that a scan has parted. */
    public boolean hasCells() {
        return IntStream.range(1, figures.size()).noneMatch(at -> Rows.isInCell(figures, at));
    }

    public boolean isTold() {
        return heading != null || !why.isEmpty();
    }

    /** @param figure which of its figures a mark stands behind; −1 at its name */
    public Row with(Legend.Meaning mark, int figure, Names names) {
        if (!mark.why().isEmpty()) {
            return not(mark.why());
        }
        var told = mark.share().isEmpty()
                ? heading
                : names.headingWithUnit(name, mark.share()).orElse(null);
        if (!mark.form().isEmpty()) {
            told = names.heading(name + " " + mark.form()).orElse(null);
        }
        var on = new HashMap<>(bases);
        if (mark.basis() != null) {
            on.putIfAbsent(figure, mark.basis());
        }
        var row = new Row(name, told, words, figures, mark.share().isEmpty() ? unit : Unit.PERCENT, on, why);
        return heading != null && told == null ? row.not("its unit does not fit") : row;
    }

    public Row not(String because) {
        return new Row(name, heading, words, figures, unit, bases, why.isEmpty() ? because : why);
    }

    /** What was not understood behind its figure is asked for itself. */
    public Row without(String because) {
        return why.startsWith(Behind.QUOTE + because + "” ")
                ? new Row(name, heading, words, figures, unit, bases, "")
                : this;
    }

    public Row on(Basis basis) {
        if (!bases.isEmpty()) {
            return this;
        }
        return new Row(name, heading, words, figures, unit, Map.of(-1, basis), why);
    }

    /** In this unit, where it says none and can be measured in it. */
    public Row in(Unit other) {
        var known = heading;
        boolean isBare = known != null
                && unit == null
                && known.unit() == null
                && known.share() == null
                && known.analyte().unit().kind() == other.kind();
        return isBare ? new Row(name, heading, words, figures, other, bases, why) : this;
    }
}
