package haywright.lp;

import haywright.lp.ConvexRow.Cut;
import java.util.AbstractList;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.function.IntFunction;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;

/**
 * A linear program: choose an amount for every column, so that each lies within its bounds, each row's sum of
 * coefficient times amount lies within its limits, and the offset plus the sum of cost times amount is least (or most).
 * Some columns may have to be whole numbers, and some rows may be curved ({@link ConvexRow}). Immutable. An absent limit
 * is infinite.
 *
 * <p>What is a mistake of the caller throws {@link IllegalArgumentException} in {@link ProgramBuilder}, before the solver
 * sees it: NaN, an infinite cost or coefficient, a name used twice, a column that does not exist or stands twice in a
 * row. A lower limit above its upper one is <em>not</em> refused: two wishes that contradict each other are answered
 * {@link Infeasible}, both named. Coefficients smaller than {@value #NOTHING} in size count as zero. Finite limits and
 * costs stay below {@value #HUGE} in size, coefficients below {@value #LARGE}; beyond, the solver would take them for
 * infinite.
 */
public final class LinearProgram {
    static final double NOTHING = 1e-12;
    static final double LARGE = 1e15;
    static final double HUGE = 1e20;

    private final boolean maximizing;
    private final double offset;
    final Matrix matrix;
    final double[] cost;
    final double[] lower;
    final double[] upper;
    final double[] rowLower;
    final double[] rowUpper;
    final List<Curve> curves;
    final List<Taken> cuts;
    private @Nullable Map<String, Integer> columnIndex;
    private @Nullable Map<String, Integer> rowIndex;

    /** Everything is kept, not copied, and never changed again: most programs differ from another in one array. */
    LinearProgram(
            boolean maximizing,
            double offset,
            Matrix matrix,
            double[] cost,
            double[] lower,
            double[] upper,
            double[] rowLower,
            double[] rowUpper,
            List<Curve> curves,
            List<Taken> cuts) {
        this.maximizing = maximizing;
        this.offset = offset;
        this.matrix = matrix;
        this.cost = cost;
        this.lower = lower;
        this.upper = upper;
        this.rowLower = rowLower;
        this.rowUpper = rowUpper;
        this.curves = curves;
        this.cuts = cuts;
    }

    public static ProgramBuilder minimize() {
        return new ProgramBuilder(false);
    }

    public static ProgramBuilder maximize() {
        return new ProgramBuilder(true);
    }

    /**
     * Reads MPS text, fixed or free form. RANGES, every bound of a linear program, whole-number columns, OBJSENSE and an
     * objective's constant are understood.
     *
     * @throws haywright.workings.Refused naming the line that could not be read
     */
    public static LinearProgram fromMps(String text) {
        return MpsReader.read(text);
    }

    public List<Column> columns() {
        return view(
                cost.length, j -> new Column(matrix.columnNames.get(j), cost[j], lower[j], upper[j], matrix.whole[j]));
    }

    /** The rows, and after them the cuts taken so far for those that are curved. */
    public List<Row> rows() {
        return view(rowLower.length + cuts.size(), i -> {
            if (i < rowLower.length) {
                int from = matrix.start[i];
                int to = matrix.start[i + 1];
                return new Row(
                        matrix.rowNames.get(i),
                        rowLower[i],
                        rowUpper[i],
                        Arrays.copyOfRange(matrix.index, from, to),
                        Arrays.copyOfRange(matrix.value, from, to));
            }
            Taken taken = cuts.get(i - rowLower.length);
            String name = curves.get(taken.curve).name + " cut " + (i - rowLower.length + 1);
            return new Row(name, asks(taken), Double.POSITIVE_INFINITY, taken.index.clone(), taken.value.clone());
        });
    }

    private static <T> List<T> view(int size, IntFunction<T> made) {
        return new AbstractList<>() {
            @Override
            public T get(int i) {
                return made.apply(i);
            }

            @Override
            public int size() {
                return size;
            }
        };
    }

    /** The lower limit of the row that a cut stands as. */
    double asks(Taken taken) {
        return taken.scale * curves.get(taken.curve).row.atLeast(taken.cut);
    }

    public boolean maximizing() {
        return maximizing;
    }

    /** Constant part of the objective. */
    public double offset() {
        return offset;
    }

    boolean hasWhole() {
        return IntStream.range(0, matrix.whole.length).anyMatch(j -> matrix.whole[j]);
    }

    /** Index of the column of that name. */
    public int column(String name) {
        if (columnIndex == null) {
            columnIndex = index(matrix.columnNames);
        }
        return found(columnIndex, name, "column");
    }

    /** Index of the row of that name. */
    public int row(String name) {
        if (rowIndex == null) {
            rowIndex = index(matrix.rowNames);
        }
        return found(rowIndex, name, "row");
    }

    /** Solves once. */
    public Outcome solve() {
        try (Session session = open()) {
            return session.solve();
        }
    }

    /** Opens it for solving again and again with changes, by the thread that calls this and no other. */
    public Session open() {
        return new Session(this);
    }

    /**
     * Free-format MPS text, for any other solver to check; of curved rows the cuts taken so far. A maximization is
     * written as the minimization of its negative, because not every solver heeds the sense.
     *
     * @throws IllegalStateException if a row's lower limit is above its upper one: MPS cannot say that
     */
    public String toMps() {
        return new MpsWriter(this).text();
    }

    LinearProgram withCost(double[] other) {
        return new LinearProgram(maximizing, offset, matrix, other, lower, upper, rowLower, rowUpper, curves, cuts);
    }

    LinearProgram withBounds(double[] newLower, double[] newUpper) {
        return new LinearProgram(
                maximizing, offset, matrix, cost, newLower, newUpper, rowLower, rowUpper, curves, cuts);
    }

    LinearProgram withLimits(double[] newLower, double[] newUpper) {
        return new LinearProgram(maximizing, offset, matrix, cost, lower, upper, newLower, newUpper, curves, cuts);
    }

    LinearProgram withCurves(List<Curve> newCurves, List<Taken> newCuts) {
        return new LinearProgram(
                maximizing, offset, matrix, cost, lower, upper, rowLower, rowUpper, newCurves, newCuts);
    }

    LinearProgram withRow(Row row) {
        double[] newLower = Arrays.copyOf(rowLower, rowLower.length + 1);
        double[] newUpper = Arrays.copyOf(rowUpper, rowUpper.length + 1);
        newLower[rowLower.length] = row.lower;
        newUpper[rowLower.length] = row.upper;
        return new LinearProgram(
                maximizing, offset, matrix.and(row), cost, lower, upper, newLower, newUpper, curves, cuts);
    }

    /** Of the same columns and rows, with another objective. */
    LinearProgram asking(boolean most, double[] newCost) {
        return new LinearProgram(most, 0, matrix, newCost, lower, upper, rowLower, rowUpper, curves, cuts);
    }

    /** The same, with no column whole. */
    LinearProgram continuous() {
        return new LinearProgram(
                maximizing, offset, matrix.continuous(), cost, lower, upper, rowLower, rowUpper, curves, cuts);
    }

    /** Linear and continuous: what has been cut so far as rows. */
    LinearProgram flat() {
        LinearProgram flat = continuous().withCurves(List.of(), List.of());
        for (Row cut : rows().subList(rowLower.length, rowLower.length + cuts.size())) {
            flat = flat.withRow(cut);
        }
        return flat;
    }

    /** Whether a limit of a row or column contradicts itself by more than rounding. */
    boolean crossed() {
        return crossed(lower, upper) || crossed(rowLower, rowUpper);
    }

    private static boolean crossed(double[] lower, double[] upper) {
        for (int i = 0; i < lower.length; i++) {
            if (crossed(lower[i], upper[i])) {
                return true;
            }
        }
        return false;
    }

    static boolean crossed(double lower, double upper) {
        return lower - upper > 1e-9 * Math.max(1, Math.abs(upper));
    }

    private static Map<String, Integer> index(List<String> names) {
        Map<String, Integer> index = new HashMap<>();
        for (int i = 0; i < names.size(); i++) {
            index.put(names.get(i), i);
        }
        return index;
    }

    private static int found(Map<String, Integer> index, String name, String what) {
        Integer i = index.get(name);
        if (i == null) {
            throw new IllegalArgumentException(
                    "No " + what + " is named “" + name + "”. Is it spelled as it was added?");
        }
        return i;
    }

    /** An amount to choose: what one unit of it costs, between which bounds it lies, and whether it must be whole. */
    public record Column(String name, double cost, double lower, double upper, boolean whole) {}

    /**
     * A sum of coefficient times amount and its limits; an equality has both alike. Coefficients of 0 are left out.
     *
     * @param columns indices of the columns in the sum, each once
     * @param coefficients one for each of {@code columns}
     */
    @SuppressWarnings("ArrayRecordComponent")
    public record Row(String name, double lower, double upper, int[] columns, double[] coefficients) {}

    /** What stays when costs and limits move: names, which columns are whole, and the coefficients row by row. */
    @SuppressWarnings("ArrayRecordComponent")
    record Matrix(
            List<String> columnNames,
            List<String> rowNames,
            boolean[] whole,
            int[] start,
            int[] index,
            double[] value) {

        Matrix continuous() {
            return new Matrix(columnNames, rowNames, new boolean[whole.length], start, index, value);
        }

        Matrix and(Row row) {
            int count = value.length + row.columns.length;
            int[] newStart = Arrays.copyOf(start, start.length + 1);
            newStart[start.length] = count;
            int[] newIndex = Arrays.copyOf(index, count);
            double[] newValue = Arrays.copyOf(value, count);
            System.arraycopy(row.columns, 0, newIndex, index.length, row.columns.length);
            System.arraycopy(row.coefficients, 0, newValue, value.length, row.columns.length);
            List<String> names = new ArrayList<>(rowNames);
            names.add(row.name);
            return new Matrix(columnNames, names, whole, newStart, newIndex, newValue);
        }
    }

    /** A curved row and where its amounts stand. */
    @SuppressWarnings("ArrayRecordComponent")
    record Curve(String name, int[] columns, ConvexRow row) {
        double[] of(double[] values) {
            return Arrays.stream(columns).mapToDouble(j -> values[j]).toArray();
        }
    }

    /**
     * A cut, as the row it stands as.
     *
     * @param scale a power of 2 that brings the row to a size of about 1, where the solver's exactness is the share of a
     *     row that may be broken
     */
    @SuppressWarnings("ArrayRecordComponent")
    record Taken(int curve, Cut cut, double scale, int[] index, double[] value) {}
}
