package haywright.lp;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/**
 * A linear program: choose an amount for every column, so that each lies within its bounds, each row's sum of
 * coefficient times amount lies within its limits, and the offset plus the sum of cost times amount is least (or most).
 * Immutable. An absent limit is infinite.
 *
 * <p>What is a mistake of the caller throws {@link IllegalArgumentException} here, before the solver sees it: NaN, an
 * infinite cost or coefficient, a name used twice, a column that does not exist or stands twice in a row. A lower limit
 * above its upper one is <em>not</em> refused: two wishes that contradict each other are answered {@link Infeasible},
 * both named. Coefficients smaller than {@value #NOTHING} in size count as zero. Finite limits and costs stay below
 * {@value #HUGE} in size, coefficients below {@value #LARGE}; beyond, the solver would take them for infinite.
 */
public final class LinearProgram {
    static final double NOTHING = 1e-12;
    static final double LARGE = 1e15;
    static final double HUGE = 1e20;

    private final boolean maximising;
    private final double offset;
    private final List<Column> columns;
    private final List<Row> rows;
    private @Nullable Map<String, Integer> columnIndex;
    private @Nullable Map<String, Integer> rowIndex;

    /** Lists are copied; names are the caller's care. */
    LinearProgram(boolean maximising, double offset, List<Column> columns, List<Row> rows) {
        this.maximising = maximising;
        this.offset = offset;
        this.columns = List.copyOf(columns);
        this.rows = List.copyOf(rows);
    }

    public static Builder minimise() {
        return new Builder(false);
    }

    public static Builder maximise() {
        return new Builder(true);
    }

    /**
     * Reads MPS text, fixed or free form. RANGES, every bound of a linear program, OBJSENSE and an objective's constant
     * are understood; whole-number columns are not.
     *
     * @throws haywright.workings.Refused naming the line that could not be read
     */
    public static LinearProgram fromMps(String text) {
        return MpsReader.read(text);
    }

    public List<Column> columns() {
        return columns;
    }

    public List<Row> rows() {
        return rows;
    }

    public boolean maximising() {
        return maximising;
    }

    /** Constant part of the objective. */
    public double offset() {
        return offset;
    }

    /** Index of the column of that name. */
    public int column(String name) {
        if (columnIndex == null) {
            columnIndex = index(columns.stream().map(Column::name).toList());
        }
        return found(columnIndex, name, "column");
    }

    /** Index of the row of that name. */
    public int row(String name) {
        if (rowIndex == null) {
            rowIndex = index(rows.stream().map(Row::name).toList());
        }
        return found(rowIndex, name, "row");
    }

    /** Solves once. */
    public Outcome solve() {
        try (LpSession session = open()) {
            return session.solve();
        }
    }

    /** Opens it for solving again and again with changes, by the thread that calls this and no other. */
    public LpSession open() {
        return new LpSession(this);
    }

    /**
     * Free-format MPS text, for any other solver to check. A maximisation is written as the minimisation of its
     * negative, because not every solver heeds the sense.
     *
     * @throws IllegalStateException if a row's lower limit is above its upper one: MPS cannot say that
     */
    public String toMps() {
        return new MpsWriter(this).text();
    }

    private static Map<String, Integer> index(List<String> names) {
        Map<String, Integer> index = new HashMap<>();
        for (int i = 0; i < names.size(); i++) {
            index.put(names.get(i), i);
        }
        return Map.copyOf(index);
    }

    private static int found(Map<String, Integer> index, String name, String what) {
        Integer i = index.get(name);
        if (i == null) {
            throw new IllegalArgumentException("No " + what + " is named “" + name + "”. Is it spelt as it was added?");
        }
        return i;
    }

    static double finite(double value, double below, String what) {
        if (!(Math.abs(value) < below)) {
            throw new IllegalArgumentException(what + " is " + value + ": it must be a number below " + below
                    + " in size. Was something divided by zero, or not measured?");
        }
        return value;
    }

    /** Whether two limits contradict each other by more than rounding. */
    static boolean crossed(double lower, double upper) {
        return lower - upper > 1e-9 * Math.max(1, Math.abs(upper));
    }

    static void limits(double lower, double upper, String what) {
        if (lower != Double.NEGATIVE_INFINITY) {
            finite(lower, HUGE, "The lower limit of " + what);
        }
        if (upper != Double.POSITIVE_INFINITY) {
            finite(upper, HUGE, "The upper limit of " + what);
        }
    }

    /** An amount to choose: what one unit of it costs, and between which bounds it lies. */
    public record Column(String name, double cost, double lower, double upper) {
        public Column {
            finite(cost, HUGE, "The cost of “" + name + "”");
            limits(lower, upper, "“" + name + "”");
        }
    }

    /**
     * A sum of coefficient times amount and its limits; an equality has both alike. Coefficients of 0 are left out.
     *
     * @param columns indices of the columns in the sum, each once
     * @param coefficients one for each of {@code columns}
     */
    public record Row(String name, double lower, double upper, int[] columns, double[] coefficients) {
        public Row {
            limits(lower, upper, "“" + name + "”");
            if (columns.length != coefficients.length) {
                throw new IllegalArgumentException("Row “" + name + "” has " + columns.length + " columns and "
                        + coefficients.length + " coefficients: one is needed for each.");
            }
            int[] index = new int[columns.length];
            double[] value = new double[columns.length];
            int kept = 0;
            for (int k = 0; k < columns.length; k++) {
                finite(coefficients[k], LARGE, "A coefficient of “" + name + "”");
                if (Math.abs(coefficients[k]) >= NOTHING) {
                    index[kept] = columns[k];
                    value[kept++] = coefficients[k];
                }
            }
            columns = Arrays.copyOf(index, kept);
            coefficients = Arrays.copyOf(value, kept);
        }

        @Override
        public int[] columns() {
            return columns.clone();
        }

        @Override
        public double[] coefficients() {
            return coefficients.clone();
        }

        Row within(double newLower, double newUpper) {
            return new Row(name, newLower, newUpper, columns, coefficients);
        }

        void checkColumns(int count) {
            Set<Integer> seen = new HashSet<>();
            for (int j : columns) {
                if (j < 0 || j >= count) {
                    throw new IllegalArgumentException(
                            "Row “" + name + "” names column " + j + ", but there are " + count + ", counted from 0.");
                }
                if (!seen.add(j)) {
                    throw new IllegalArgumentException(
                            "Row “" + name + "” names column " + j + " twice: add its two coefficients first.");
                }
            }
        }
    }

    /** Collects columns, then rows. */
    public static final class Builder {
        private final boolean maximising;
        private double offset;
        private final List<Column> columns = new ArrayList<>();
        private final List<Row> rows = new ArrayList<>();
        private final Set<String> columnNames = new HashSet<>();
        private final Set<String> rowNames = new HashSet<>();

        private Builder(boolean maximising) {
            this.maximising = maximising;
        }

        /** Adds a column and returns its index, counted from 0. */
        public int column(String name, double cost, double lower, double upper) {
            Column column = new Column(name, cost, lower, upper);
            fresh(columnNames, name, "column");
            columns.add(column);
            return columns.size() - 1;
        }

        /** Adds a row over columns added before and returns its index, counted from 0. */
        public int row(String name, double lower, double upper, int[] columnsOfRow, double[] coefficients) {
            Row row = new Row(name, lower, upper, columnsOfRow, coefficients);
            row.checkColumns(columns.size());
            fresh(rowNames, name, "row");
            rows.add(row);
            return rows.size() - 1;
        }

        /** Constant part of the objective; 0 if never said. */
        public Builder offset(double constant) {
            offset = finite(constant, HUGE, "The constant of the objective");
            return this;
        }

        public LinearProgram build() {
            if (columns.isEmpty()) {
                throw new IllegalArgumentException("A program without columns has nothing to choose.");
            }
            return new LinearProgram(maximising, offset, columns, rows);
        }

        static void fresh(Set<String> names, String name, String what) {
            if (!names.add(name)) {
                throw new IllegalArgumentException("Two " + what + "s are named “" + name + "”: names must differ.");
            }
        }
    }
}
