package haywright.app.exchange.csv;

import haywright.app.exchange.lab.ColumnIs;
import haywright.app.exchange.lab.ColumnWords;
import haywright.app.exchange.lab.Heading;
import haywright.forage.Basis;
import java.util.HashMap;
import java.util.HashSet;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.IntFunction;
import java.util.function.IntPredicate;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;

/** Where each line is a sample on one basis: a column says which, or the words behind the sample's name. */
final class BasisOfLines {
    private final Grid grid;
    /** The column that says it; −1 where none does. */
    private final int column;
    /** Which lines have it behind the name of their sample. */
    private final Map<Integer, Heading.Side> sides = new HashMap<>();

    /** @param isOfFigures whether a column has figures of an analyte */
    BasisOfLines(Grid grid, int head, int first, IntPredicate isOfFigures) {
        this.grid = grid;
        this.column = IntStream.range(0, grid.width(head))
                .filter(at -> !isOfFigures.test(at))
                .filter(at -> ColumnWords.isBasis(grid.cell(head, at)) || holdsBases(at, first))
                .findFirst()
                .orElse(-1);
    }

    /** Only bases, and more than one of them; "dry" alone under "Type" may be a kind of feed. */
    private boolean holdsBases(int at, int first) {
        var cells = IntStream.range(first, grid.height())
                .mapToObj(row -> grid.cell(row, at))
                .filter(cell -> !cell.isBlank())
                .map(Heading::basis)
                .toList();
        return cells.stream().allMatch(Optional::isPresent)
                && cells.stream().distinct().count() > 1;
    }

    /** "East (as fed)", "East (dry)": taken apart where a sample has both, or every name ends so and says it beyond doubt. */
    void names(int first, IntFunction<String> name) {
        var all = new HashMap<Integer, Heading.Side>();
        IntStream.range(first, grid.height())
                .forEach(row -> Heading.side(name.apply(row)).ifPresent(side -> all.put(row, side)));
        Map<String, Set<Basis>> of = all.values().stream()
                .collect(Collectors.groupingBy(
                        side -> Heading.key(side.sample()),
                        Collectors.mapping(Heading.Side::basis, Collectors.toCollection(HashSet::new))));
        boolean areAll = IntStream.range(first, grid.height())
                .filter(row -> !name.apply(row).isBlank())
                .allMatch(row ->
                        all.containsKey(row) && !Heading.key(name.apply(row)).matches(".*[\\s(]dry\\)?"));
        all.forEach((row, side) -> {
            if (column < 0
                    && (areAll
                            || of.getOrDefault(Heading.key(side.sample()), Set.of())
                                            .size()
                                    > 1)) {
                sides.put(row, side);
            }
        });
    }

    boolean isAt(int other) {
        return column == other;
    }

    /** The name of a line's sample without its basis. */
    String bare(int row, String name) {
        var side = sides.get(row);
        return side == null || Heading.side(name).isEmpty() ? name : side.sample();
    }

    /** @param basis null where the line says none @param isOpen whether what it says is not understood, and is listed */
    record Line(@Nullable Basis basis, boolean isOpen) {}

    Line of(int row, String name, Taking taking) {
        var side = sides.get(row);
        if (side != null) {
            return new Line(side.basis(), false);
        }
        if (column < 0 || grid.isNothing(row, column)) {
            return new Line(null, false);
        }
        var written = grid.cell(row, column);
        grid.settle(row, column);
        var known = Heading.basis(written).or(() -> taking.legend.letter(written));
        if (known.isPresent()) {
            return new Line(known.get(), false);
        }
        var said = taking.said(written, name, row);
        return new Line(said == null ? null : said.basis(), said == null || said == ColumnIs.LEFT_OUT);
    }
}
