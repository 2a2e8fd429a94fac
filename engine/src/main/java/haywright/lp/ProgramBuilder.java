package haywright.lp;

import haywright.lp.LinearProgram.Column;
import haywright.lp.LinearProgram.Curve;
import haywright.lp.LinearProgram.Matrix;
import haywright.lp.LinearProgram.Row;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Set;

/**
 * Collects columns and rows, and the terms of rows in any order: a stock that many draw on gets its terms from each of
 * them. Indices count from 0. What a part names is its own within a scope ({@link #in}).
 */
public final class ProgramBuilder {
    private final Collected all;
    private final String scope;

    ProgramBuilder(boolean maximizing) {
        this(new Collected(maximizing), "");
    }

    private ProgramBuilder(Collected all, String scope) {
        this.all = all;
        this.scope = scope;
    }

    /** Builds the same program, with this and a slash before every name. */
    public ProgramBuilder in(String inner) {
        return new ProgramBuilder(all, scope + inner + "/");
    }

    /** Adds a column and returns its index. */
    public int column(String name, double cost, double lower, double upper) {
        return add(new Column(scope + name, cost, lower, upper, false));
    }

    /** Adds a column of whole numbers and returns its index. */
    public int whole(String name, double cost, double lower, double upper) {
        return add(new Column(scope + name, cost, lower, upper, true));
    }

    private int add(Column column) {
        finite(column.cost(), LinearProgram.HUGE, "The cost of “" + column.name() + "”");
        limits(column.lower(), column.upper(), column.name());
        fresh(all.columnNames, column.name(), "column");
        all.columns.add(column);
        return all.columns.size() - 1;
    }

    /**
     * Lets a column be nothing, or from {@code least} to {@code most}. Returns the column that is 1
     * where it is something and 0 where it is nothing: it can be counted, and priced by {@link Session#costs}.
     */
    public int portion(int column, double least, double most) {
        String name = all.columns.get(column).name();
        ProgramBuilder unscoped = new ProgramBuilder(all, "");
        int used = unscoped.whole(name + " used", 0, 0, 1);
        int[] both = {column, used};
        unscoped.row(name + " if used, at least", 0, Double.POSITIVE_INFINITY, both, new double[] {1, -least});
        unscoped.row(name + " if used, at most", Double.NEGATIVE_INFINITY, 0, both, new double[] {1, -most});
        return used;
    }

    /** Adds a row without terms and returns its index. */
    public int row(String name, double lower, double upper) {
        limits(lower, upper, scope + name);
        fresh(all.rowNames, scope + name, "row");
        all.rows.add(new Terms(scope + name, lower, upper));
        return all.rows.size() - 1;
    }

    /** Adds a row over columns added before and returns its index. */
    public int row(String name, double lower, double upper, int[] columns, double[] coefficients) {
        Row terms = terms(scope + name, lower, upper, columns, coefficients, all.columns.size());
        int row = row(name, lower, upper);
        for (int k = 0; k < terms.columns().length; k++) {
            all.rows.get(row).add(terms.columns()[k], terms.coefficients()[k]);
        }
        return row;
    }

    /** Adds a term to a row. A column stands in a row once. */
    public ProgramBuilder term(int row, int column, double coefficient) {
        Terms terms = all.rows.get(row);
        inRange(terms.name, column, all.columns.size());
        finite(coefficient, LinearProgram.LARGE, "A coefficient of “" + terms.name + "”");
        terms.add(column, coefficient);
        return this;
    }

    /** Adds a curved row over columns added before and returns its index among the curved ones. */
    public int convex(String name, int[] columns, ConvexRow row) {
        checkColumns(scope + name, columns, all.columns.size());
        all.curves.add(new Curve(scope + name, columns.clone(), row));
        return all.curves.size() - 1;
    }

    /** Constant part of the objective; 0 if never said. */
    public ProgramBuilder offset(double constant) {
        all.offset = finite(constant, LinearProgram.HUGE, "The constant of the objective");
        return this;
    }

    public LinearProgram build() {
        int n = all.columns.size();
        int m = all.rows.size();
        if (n == 0) {
            throw new IllegalArgumentException("A program without columns has nothing to choose.");
        }
        int[] start = new int[m + 1];
        for (int i = 0; i < m; i++) {
            start[i + 1] = start[i] + all.rows.get(i).count;
        }
        int[] index = new int[start[m]];
        double[] value = new double[start[m]];
        int[] lastRow = new int[n];
        for (int i = 0; i < m; i++) {
            Terms row = all.rows.get(i);
            System.arraycopy(row.index, 0, index, start[i], row.count);
            System.arraycopy(row.value, 0, value, start[i], row.count);
            for (int k = 0; k < row.count; k++) {
                if (lastRow[row.index[k]] == i + 1) {
                    throw twice(row.name, row.index[k]);
                }
                lastRow[row.index[k]] = i + 1;
            }
        }
        boolean[] whole = new boolean[n];
        for (int j = 0; j < n; j++) {
            whole[j] = all.columns.get(j).whole();
        }
        return new LinearProgram(
                all.maximizing,
                all.offset,
                new Matrix(
                        all.columns.stream().map(Column::name).toList(),
                        all.rows.stream().map(r -> r.name).toList(),
                        whole,
                        start,
                        index,
                        value),
                all.columns.stream().mapToDouble(Column::cost).toArray(),
                all.columns.stream().mapToDouble(Column::lower).toArray(),
                all.columns.stream().mapToDouble(Column::upper).toArray(),
                all.rows.stream().mapToDouble(r -> r.lower).toArray(),
                all.rows.stream().mapToDouble(r -> r.upper).toArray(),
                List.copyOf(all.curves),
                List.of());
    }

    private static final class Collected {
        final boolean maximizing;
        double offset;
        final List<Column> columns = new ArrayList<>();
        final List<Terms> rows = new ArrayList<>();
        final List<Curve> curves = new ArrayList<>();
        final Set<String> columnNames = new HashSet<>();
        final Set<String> rowNames = new HashSet<>();

        Collected(boolean maximizing) {
            this.maximizing = maximizing;
        }
    }

    /** A row whose terms still come. */
    private static final class Terms {
        final String name;
        final double lower;
        final double upper;
        int[] index = new int[4];
        double[] value = new double[4];
        int count;

        Terms(String name, double lower, double upper) {
            this.name = name;
            this.lower = lower;
            this.upper = upper;
        }

        void add(int column, double coefficient) {
            if (Math.abs(coefficient) < LinearProgram.NOTHING) {
                return;
            }
            if (count == index.length) {
                index = Arrays.copyOf(index, 2 * count);
                value = Arrays.copyOf(value, 2 * count);
            }
            index[count] = column;
            value[count++] = coefficient;
        }
    }

    /** A row as the solver may have it: numbers checked, and what counts as zero left out. */
    static Row terms(String name, double lower, double upper, int[] columns, double[] coefficients, int count) {
        limits(lower, upper, name);
        if (columns.length != coefficients.length) {
            throw new IllegalArgumentException("Row “" + name + "” has " + columns.length + " columns and "
                    + coefficients.length + " coefficients: one is needed for each.");
        }
        checkColumns(name, columns, count);
        int[] index = new int[columns.length];
        double[] value = new double[columns.length];
        int kept = 0;
        for (int k = 0; k < columns.length; k++) {
            finite(coefficients[k], LinearProgram.LARGE, "A coefficient of “" + name + "”");
            if (Math.abs(coefficients[k]) >= LinearProgram.NOTHING) {
                index[kept] = columns[k];
                value[kept++] = coefficients[k];
            }
        }
        return new Row(name, lower, upper, Arrays.copyOf(index, kept), Arrays.copyOf(value, kept));
    }

    private static void checkColumns(String name, int[] columns, int count) {
        Set<Integer> seen = new HashSet<>();
        for (int j : columns) {
            inRange(name, j, count);
            if (!seen.add(j)) {
                throw twice(name, j);
            }
        }
    }

    private static void inRange(String row, int column, int count) {
        if (column < 0 || column >= count) {
            throw new IllegalArgumentException(
                    "Row “" + row + "” names column " + column + ", but there are " + count + ", counted from 0.");
        }
    }

    private static IllegalArgumentException twice(String row, int column) {
        return new IllegalArgumentException(
                "Row “" + row + "” names column " + column + " twice: add its two coefficients first.");
    }

    static double finite(double value, double below, String what) {
        if (!(Math.abs(value) < below)) {
            throw new IllegalArgumentException(what + " is " + value + ": it must be a number below " + below
                    + " in size. Was something divided by zero, or not measured?");
        }
        return value;
    }

    static void limits(double lower, double upper, String name) {
        if (lower != Double.NEGATIVE_INFINITY) {
            finite(lower, LinearProgram.HUGE, "The lower limit of “" + name + "”");
        }
        if (upper != Double.POSITIVE_INFINITY) {
            finite(upper, LinearProgram.HUGE, "The upper limit of “" + name + "”");
        }
    }

    static void fresh(Set<String> names, String name, String what) {
        if (!names.add(name)) {
            throw new IllegalArgumentException("Two " + what + "s are named “" + name + "”: names must differ.");
        }
    }
}
