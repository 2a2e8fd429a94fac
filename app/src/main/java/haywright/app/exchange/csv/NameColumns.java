package haywright.app.exchange.csv;

import haywright.app.exchange.lab.ColumnWords;
import haywright.app.exchange.lab.HalfDry;
import haywright.app.exchange.lab.Heading;
import haywright.forage.Basis;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Predicate;
import java.util.regex.Pattern;
import java.util.stream.IntStream;

/**
 * Where the names of analytes stand down the side of a file.
 *
 * @param head the line with the headings; −1 where the names begin at once
 * @param first the first line with a name
 * @param columns those that hold names, several where tables stand side by side
 */
record NameColumns(int head, int first, List<Integer> columns) {
    private static final int LINES_BEFORE_HEADINGS = 25;

    /** A figure alone, and not a heading with one in it. */
    private static final Predicate<String> BARE =
            Pattern.compile("[<>]?\\s*[0-9][0-9.,]*\\s*%?").asMatchPredicate();

    NameColumns {
        columns = List.copyOf(columns);
    }

    /** Empty where no column has names of analytes under each other. */
    static Optional<NameColumns> of(Grid grid) {
        int best = -1;
        long most = 0;
        for (int column = 0; column < grid.width(); column++) {
            int at = column;
            boolean isBeside = IntStream.range(0, Math.min(grid.height(), LINES_BEFORE_HEADINGS))
                    .anyMatch(row -> isBeside(grid, row, at));
            long labels = isBeside ? 0 : labels(grid, column);
            if (labels > most) {
                most = labels;
                best = column;
            }
        }
        if (best < 0) {
            return headed(grid);
        }
        int first = 0;
        while (!isNamed(grid, first, best)) {
            first++;
        }
        int head = -1;
        for (int row = first - 1; row >= Math.max(0, first - LINES_BEFORE_HEADINGS) && head < 0; row--) {
            head = isHead(grid, row, best) ? row : -1;
        }
        head = head < 0 ? unknownHead(grid, first, best) : head;
        var columns = new ArrayList<Integer>();
        for (int column = 0; column < grid.width(); column++) {
            if (column == best
                    || head >= 0 && grid.isNames(head, column)
                    || labels(grid, column) > 1 && !isBeside(grid, head, column)) {
                columns.add(column);
            }
        }
        return Optional.of(new NameColumns(head, first, columns));
    }

    /** Words over two columns of figures or more, though nobody knows what they say; −1 where there are none. */
    private static int unknownHead(Grid grid, int first, int names) {
        var figures = IntStream.range(names + 1, grid.width())
                .filter(column -> grid.isFigure(first, column))
                .boxed()
                .toList();
        for (int row = first - 1; row >= 0 && figures.size() > 1; row--) {
            int at = row;
            boolean isOver = figures.stream()
                            .filter(column -> !grid.cell(at, column).isBlank())
                            .count()
                    > 1;
            if (isOver && grid.row(row).stream().skip(names + 1L).noneMatch(BARE::test)) {
                return grid.told(row, names).isPresent() ? -1 : row;
            }
        }
        return -1;
    }

    /** Whether its heading says that units or bases stand there, beside names. */
    private static boolean isBeside(Grid grid, int head, int column) {
        var key = head < 0 ? "" : Heading.key(grid.cell(head, column));
        return Grid.isUnits(key) && !grid.isOfUnits(head) || ColumnWords.isBasis(key) && !grid.isOfBases(head);
    }

    /** Headings for names and figures, though no name under them is known. */
    private static Optional<NameColumns> headed(Grid grid) {
        for (int row = 0; row < Math.min(grid.height(), LINES_BEFORE_HEADINGS); row++) {
            for (int column = 0; column < grid.width(row); column++) {
                var names = new NameColumns(row, row + 1, List.of(column));
                if (grid.isNames(row, column) && names.isSaid(grid)) {
                    return Optional.of(names);
                }
            }
        }
        return Optional.empty();
    }

    /** A name that is known, with a figure or a word for none somewhere beside it. */
    private static boolean isNamed(Grid grid, int row, int column) {
        boolean isBeside = false;
        for (int other = column + 1; other < grid.width(row); other++) {
            isBeside |= grid.isFigure(row, other);
        }
        return isBeside && grid.isLabel(row, column);
    }

    static long labelsMost(Grid grid) {
        long most = 0;
        for (int column = 0; column < grid.width(); column++) {
            most = Math.max(most, labels(grid, column));
        }
        return most;
    }

    /** Names that are known, each counted once: "DM" beside every line is a basis. */
    private static long labels(Grid grid, int column) {
        return IntStream.range(0, grid.height())
                .filter(row -> isNamed(grid, row, column))
                .mapToObj(row -> Heading.key(grid.cell(row, column)))
                .distinct()
                .count();
    }

    private static boolean isHead(Grid grid, int row, int names) {
        if (grid.isNames(row, names)) {
            return true;
        }
        for (int column = names + 1; column < grid.width(row); column++) {
            if (grid.isFigure(row, column) && grid.cell(row, column).matches(".*[0-9][.,][0-9].*")) {
                return false; // figures with decimals are no headings, though a basis stands beside them
            }
        }
        for (int column = names + 1; column < grid.width(row); column++) {
            var key = Heading.key(grid.cell(row, column));
            if (isBeside(grid, row, column) || isValue(key) || basis(key).isPresent()) {
                return true;
            }
        }
        return false;
    }

    /** Whether the headings stand once more in this line, or others do: what follows is another table. */
    boolean isHeadAgain(Grid grid, int row) {
        int names = columns.get(0);
        if (row <= head || row < first || grid.isLabel(row, names)) {
            return false;
        }
        long alike = IntStream.range(0, grid.width(row))
                .filter(column -> head >= 0
                        && !grid.isFigure(row, column)
                        && !grid.cell(row, column).isBlank()
                        && Heading.key(grid.cell(row, column)).equals(Heading.key(grid.cell(head, column))))
                .count();
        return alike > 1 || grid.isNames(row, names) || isHead(grid, row, names) && isWithoutFigures(grid, row);
    }

    private static boolean isWithoutFigures(Grid grid, int row) {
        return IntStream.range(0, grid.width(row)).noneMatch(column -> grid.isFigure(row, column))
                && IntStream.range(0, grid.width(row))
                                .filter(column -> basis(grid.cell(row, column)).isPresent()
                                        || isValue(Heading.key(grid.cell(row, column))))
                                .count()
                        > 1;
    }

    static Optional<Basis> basis(String text) {
        var bare = ColumnWords.withoutValue(Heading.key(text)).replaceFirst("\\)$", "");
        return HalfDry.isIn(bare)
                ? Optional.empty()
                : Heading.basis(bare).or(() -> Heading.basis(bare.replaceFirst("[\\s,(]*\\S+$", "")));
    }

    /** As {@link #basis(String)}, and as received where it says "wet" beside a column on dry matter. */
    static Optional<Basis> basis(Grid grid, int row, int column) {
        var own = basis(grid.cell(row, column));
        return own.isEmpty()
                        && Heading.isWet(grid.cell(row, column))
                        && grid.row(row).stream().anyMatch(cell -> basis(cell).equals(Optional.of(Basis.DRY_MATTER)))
                ? Optional.of(Basis.AS_RECEIVED)
                : own;
    }

    static boolean isValue(String key) {
        return Heading.sides(key).stream().anyMatch(ColumnWords::isValue);
    }

    /** Whether its headings say beyond doubt that names stand down the side. */
    boolean isSaid(Grid grid) {
        if (head < 0) {
            return false;
        }
        boolean hasNames = columns.stream().anyMatch(column -> grid.isNames(head, column));
        boolean hasValues = false;
        for (int column = 0; column < grid.width(head); column++) {
            hasValues |= isValue(Heading.key(grid.cell(head, column)))
                    || basis(grid, head, column).isPresent();
        }
        return hasNames && hasValues;
    }
}
