package haywright.app.exchange.csv;

import haywright.app.exchange.lab.Decimals;
import haywright.app.exchange.lab.Heading;
import haywright.app.exchange.lab.Label;
import haywright.app.exchange.lab.Shares;
import haywright.app.exchange.lab.Understood.Cell;
import haywright.app.exchange.lab.Understood.Named;
import haywright.app.words.Said;
import haywright.forage.Analyte;
import haywright.forage.Basis;
import haywright.forage.lab.Tested;
import haywright.workings.Refused;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/** Figures on their way from cells to samples, and what is said of those that are not taken. */
final class Taking {
    final Grid grid;
    final Map<String, Named> names = new LinkedHashMap<>();
    final Set<String> notTaken = new LinkedHashSet<>();
    private final Set<String> withoutBasis = new LinkedHashSet<>();
    private final Decimals.Sheet decimals;
    private final @Nullable Basis untold;

    Taking(Grid grid, Decimals.Sheet decimals, @Nullable Basis untold) {
        this.grid = grid;
        this.decimals = decimals;
        this.untold = untold;
    }

    void name(String written, String example, @Nullable Heading taken) {
        names.putIfAbsent(Heading.key(written), new Named(written, example, taken, grid.words.leavesOut(written)));
    }

    /** Why the figures of this name are not taken. */
    String unknown(String name) {
        var label = grid.words.label(name).map(Label::why).orElse("");
        if (!label.isEmpty()) {
            return label;
        }
        return Analyte.find(name).isPresent()
                ? "its unit or basis is not understood"
                : "no analyte of this name is known" + near(name);
    }

    /** The name that may be meant, as a question; empty where none is near. */
    private static String near(String name) {
        return Analyte.nearest(name).map(near -> ". Did you mean " + near + "?").orElse("");
    }

    /**
     * The figure of one cell; the cell is settled, taken or not.
     *
     * @param isLess whether a mark beside it makes the figure a "less than"
     * @param method how it was measured, where that stands beside it; null where it does not
     */
    void take(
            Map<String, Cell> cells,
            Heading heading,
            String name,
            int row,
            int column,
            boolean isLess,
            Tested.@Nullable Method method) {
        var analyte = heading.analyte();
        boolean isBare = grid.cell(row, column).matches("[0-9].*");
        var text = (isLess && isBare ? "<" : "") + grid.cell(row, column).replaceFirst("(?<=[0-9])\\s*[*†‡]+$", "");
        boolean isBased = analyte.hasBasis() && heading.share() == null;
        var basis = isBased ? (heading.basis() == null ? untold : heading.basis()) : null;
        grid.settle(row, column);
        if (isBased && basis == null && !Said.isWithoutLimit(text)) {
            withoutBasis.add(name);
            return;
        }
        var ambiguous = Label.asked(name, analyte, heading.unit(), text);
        if (ambiguous.isPresent() && !grid.words.own().containsKey(Heading.key(name))) {
            notTaken.add("Line %d, “%s” %s: %s".formatted(grid.line(row), name, text, ambiguous.get()));
            names.put(Heading.key(name), new Named(name, text, null, false));
            return;
        }
        var cell = new Cell(analyte, heading.unit(), basis, decimals.pointed(text), name, heading.share(), method);
        var key = analyte.id() + " " + basis + (heading.share() == null ? "" : heading.share());
        var before = cells.putIfAbsent(key, cell);
        if (before != null && !before.text().equals(cell.text())) {
            notTaken.add("Line %d, “%s”, %s: %s stands there before it, as %s"
                    .formatted(grid.line(row), name, text, analyte.words(), before.text()));
        }
    }

    List<Cell> carried(Map<String, Cell> cells) {
        return Shares.carried(List.copyOf(cells.values()), notTaken::add);
    }

    void checkBasis() {
        if (!withoutBasis.isEmpty()) {
            throw new Refused(
                    "basis",
                    String.join(", ", withoutBasis),
                    "the file does not say whether these are as received or on dry matter",
                    "Look at the sheet and say which.");
        }
    }
}
