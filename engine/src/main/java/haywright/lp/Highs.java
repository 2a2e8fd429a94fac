package haywright.lp;

import com.sun.jna.Callback;
import com.sun.jna.FunctionMapper;
import com.sun.jna.Library;
import com.sun.jna.Native;
import com.sun.jna.NativeLibrary;
import com.sun.jna.Platform;
import com.sun.jna.Pointer;
import java.lang.reflect.Method;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/**
 * The few functions of HiGHS 1.12's C interface that this room calls; names as there without their prefix
 * {@code Highs_}. Its integers are 32 bits wide. A negative return is an error, 1 a warning.
 */
final class Highs {
    static final int ROW_WISE = 2;
    static final int MINIMIZE = 1;

    static final int DUAL = 1;
    static final int PRIMAL = 4;

    static final int UNKNOWN = 0;
    static final int OPTIMAL = 7;
    static final int INFEASIBLE = 8;
    static final int UNBOUNDED_OR_INFEASIBLE = 9;
    static final int UNBOUNDED = 10;
    static final int TIME_LIMIT = 13;
    static final int SOLUTION_LIMIT = 16;
    static final int INTERRUPTED = 17;

    /** Of {@code primal_solution_status}. */
    static final int FEASIBLE = 2;

    /** Where the solver lets itself be interrupted: within simplex, within interior point, within branch and bound. */
    static final int[] INTERRUPTS = {1, 2, 6};

    static final int AT_LOWER = 0;
    static final int BASIC = 1;
    static final int AT_UPPER = 2;

    /** Kept, because a class that fails to load says why only the first time. */
    private static final @Nullable Throwable FAILURE = loaded();

    private Highs() {}

    private static @Nullable Throwable loaded() {
        Map<String, ?> options = Map.of(Library.OPTION_FUNCTION_MAPPER, (FunctionMapper)
                (NativeLibrary library, Method method) -> "Highs_" + method.getName());
        try {
            String file = NativeLibraryFile.unpacked().toString();
            Native.register(Highs.class, NativeLibrary.getInstance(file, options));
            silence();
            return null;
        } catch (RuntimeException | LinkageError e) {
            return e;
        }
    }

    /**
     * In whole numbers the solver now and then writes a line to C's standard output, past every option of silence, which
     * would stand amid what a command prints. So that output, which Java's own does not pass through, goes nowhere.
     * Windows hides it where this does not reach.
     */
    private static void silence() {
        if (!Platform.isWindows()) {
            NativeLibrary process = NativeLibrary.getProcess();
            Pointer nowhere = process.getFunction("fopen").invokePointer(new Object[] {"/dev/null", "w"});
            process.getGlobalVariableAddress(Platform.isMac() ? "__stdoutp" : "stdout")
                    .setPointer(0, nowhere);
        }
    }

    /**
     * A new handle, to be destroyed.
     *
     * @throws SolverMissing if the library cannot be loaded on this machine
     */
    static Pointer open() {
        if (FAILURE != null) {
            throw new SolverMissing(
                    "The solver cannot be loaded: " + FAILURE.getMessage()
                            + " If its folder is full, or one that nothing may be run from (noexec), name another with"
                            + " -D" + NativeLibraryFile.FOLDER + "=DIR in the environment variable JDK_JAVA_OPTIONS.",
                    FAILURE);
        }
        return create();
    }

    private static native Pointer create();

    static native void destroy(Pointer highs);

    static native int setBoolOptionValue(Pointer highs, String option, int value);

    static native int setIntOptionValue(Pointer highs, String option, int value);

    static native int setDoubleOptionValue(Pointer highs, String option, double value);

    static native int setStringOptionValue(Pointer highs, String option, String value);

    static native int passLp(
            Pointer highs,
            int columns,
            int rows,
            int coefficients,
            int format,
            int sense,
            double offset,
            double[] cost,
            double[] columnLower,
            double[] columnUpper,
            double[] rowLower,
            double[] rowUpper,
            int[] start,
            int[] index,
            double[] value);

    static native int run(Pointer highs);

    static native int clearSolver(Pointer highs);

    static native int getModelStatus(Pointer highs);

    static native double getObjectiveValue(Pointer highs);

    static native int getSolution(
            Pointer highs, double[] value, double[] reducedCost, double[] activity, double[] dual);

    static native int getBasis(Pointer highs, int[] column, int[] row);

    static native int setBasis(Pointer highs, int[] column, int[] row);

    static native int changeColsCostByRange(Pointer highs, int from, int to, double[] cost);

    static native int changeColsBoundsByRange(Pointer highs, int from, int to, double[] lower, double[] upper);

    static native int changeRowsBoundsByRange(Pointer highs, int from, int to, double[] lower, double[] upper);

    static native int changeColsIntegralityByRange(Pointer highs, int from, int to, int[] whole);

    static native int clearIntegrality(Pointer highs);

    /** Rows with a 1 go; the mask comes back as their new places. */
    static native int deleteRowsByMask(Pointer highs, int[] mask);

    static native int getIntInfoValue(Pointer highs, String what, int[] value);

    static native int getDoubleInfoValue(Pointer highs, String what, double[] value);

    static native int zeroAllClocks(Pointer highs);

    static native int setCallback(Pointer highs, Asked asked, @Nullable Pointer nothing);

    static native int startCallback(Pointer highs, int type);

    static native int stopCallback(Pointer highs, int type);

    /**
     * Called by the solver, on the thread that solves. The library keeps only its address: a Java reference must be kept
     * as long. It must not throw. The first 32-bit number of {@code answer} is 1 to stop.
     */
    interface Asked extends Callback {
        void invoke(int type, Pointer message, Pointer state, Pointer answer, Pointer nothing);
    }

    static native int addRow(Pointer highs, double lower, double upper, int count, int[] index, double[] value);

    /** The values at which the basis changes, of costs and of rows' limits; what else the solver knows is not asked. */
    static int ranging(Pointer highs, double[] costUp, double[] costDown, double[] rowUp, double[] rowDown) {
        return getRanging(
                highs, costUp, null, null, null, costDown, null, null, null, null, null, null, null, null, null, null,
                null, rowUp, null, null, null, rowDown, null, null, null);
    }

    /** Each group of four: the value where the basis changes, the objective there, the variable that comes in and out. */
    private static native int getRanging(
            Pointer highs,
            double[] costUp,
            double @Nullable [] costUpObjective,
            int @Nullable [] costUpIn,
            int @Nullable [] costUpOut,
            double[] costDown,
            double @Nullable [] costDownObjective,
            int @Nullable [] costDownIn,
            int @Nullable [] costDownOut,
            double @Nullable [] columnUp,
            double @Nullable [] columnUpObjective,
            int @Nullable [] columnUpIn,
            int @Nullable [] columnUpOut,
            double @Nullable [] columnDown,
            double @Nullable [] columnDownObjective,
            int @Nullable [] columnDownIn,
            int @Nullable [] columnDownOut,
            double[] rowUp,
            double @Nullable [] rowUpObjective,
            int @Nullable [] rowUpIn,
            int @Nullable [] rowUpOut,
            double[] rowDown,
            double @Nullable [] rowDownObjective,
            int @Nullable [] rowDownIn,
            int @Nullable [] rowDownOut);
}
