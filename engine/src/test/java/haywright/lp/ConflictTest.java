package haywright.lp;

import static haywright.lp.Published.INF;
import static haywright.lp.Published.dense;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import haywright.lp.LinearProgram.Column;
import haywright.lp.LinearProgram.Row;
import java.io.ByteArrayInputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.FieldSource;
import org.ojalgo.optimisation.ExpressionsBasedModel;
import org.ojalgo.optimisation.Optimisation;

/** Programs without an answer: what is named is infeasible, and feasible once any one of it is left out. */
class ConflictTest {
    static final List<String> IDS = List.of("I01", "I02", "I03", "I04", "I05");

    @ParameterizedTest
    @FieldSource("IDS")
    void theConflictIsIrreducible(String id) {
        LinearProgram program = Published.program(id);
        isIrreducible(program, why(program.solve()));
    }

    @ParameterizedTest
    @FieldSource("IDS")
    void anUnrelatedSolverFindsTheNamedLimitsInConflictToo(String id) {
        LinearProgram program = Published.program(id);
        List<Limit> limits = why(program.solve()).limits();
        assertThat(stateBySecondSolver(only(program, limits))).isEqualTo(Optimisation.State.INFEASIBLE);
    }

    @Test
    void theThreeRowsOfTheTextbookConflictAreNamed() {
        var answer = why(Published.program("I01").solve());
        assertThat(answer.names()).containsExactlyInAnyOrder("C1", "C2", "C3");
        // 220 > 60 + 2·50 by 60: C2 counts twice.
        assertThat(answer.limits()).extracting(answer::givesAlone).containsExactly(60.0, 30.0, 60.0);
    }

    // AMPL book, diet2: vitamin B2 is short while sodium is at its limit; the least sodium limit that works is 48,186.
    @Test
    void theMenuIsStoppedByVitaminAndSodium() {
        var answer = why(Published.program("I02").solve());
        assertThat(answer.limits().stream().filter(Limit::onRow).map(Limit::name))
                .containsExactlyInAnyOrder("B2 at least 700", "NA");
        Limit sodium = answer.limits().stream()
                .filter(l -> l.name().equals("NA"))
                .findFirst()
                .orElseThrow();
        assertThat(40_000 + answer.givesAlone(sodium)).isCloseTo(48_186, within(0.5));
        assertThat(answer.names()).anySatisfy(name -> assertThat(name).matches("[A-Z]+ at (least 2|most 10)"));
        try (Session session = Published.program("I02").open()) {
            int row = session.program().row("NA");
            session.rowBounds(row, -INF, 40_000 + answer.givesAlone(sodium) - 1);
            assertThat(session.solve()).isInstanceOf(Infeasible.class);
            session.rowBounds(row, -INF, 40_000 + answer.givesAlone(sodium) + 1e-3);
            assertThat(session.solve()).isInstanceOf(Optimum.class);
        }
    }

    // Chinneck, netlib lp/infeas readme: woodinfe has a very small conflict, forest6 one of most of its 66 rows.
    @Test
    void netlibsConflictsHaveTheSizeThatIsPublished() {
        assertThat(why(Published.program("I03").solve()).limits()).hasSizeLessThan(4);
        assertThat(why(Published.program("I04").solve()).limits().stream().filter(Limit::onRow))
                .hasSizeGreaterThan(33);
    }

    @Test
    void shortfallsAreTheLeastMiss() {
        var b = LinearProgram.minimize();
        b.column("straw", 1, 0, 10);
        dense(b, "energy", 18, INF, 1.2);
        dense(b, "protein", 0.3, INF, 0.04);
        var answer = why(b.build().solve());
        assertThat(answer.shortfalls()).containsOnlyKeys("energy");
        assertThat(answer.shortfalls().get("energy")).isCloseTo(6, within(1e-9));
        assertThat(answer.names()).containsExactly("energy", "straw at most 10");
    }

    @Test
    void aLimitThatContradictsItselfIsAnsweredAndNotRefused() {
        var b = LinearProgram.minimize();
        int hay = b.column("hay", 1, 0, INF);
        b.row("hay fed", 12, 10.5, new int[] {hay}, new double[] {1});
        var answer = why(b.build().solve());
        assertThat(answer.names()).containsExactly("hay fed at least 12", "hay fed at most 10.5");
        assertThat(answer.limits()).extracting(answer::givesAlone).containsExactly(1.5, 1.5);
        try (Session session = b.build().open()) {
            session.rowBounds(0, 12, 13);
            assertThat(((Optimum) session.solve()).objective()).isCloseTo(12, within(1e-9));
            session.columnBounds(hay, 5, 4);
            assertThat(why(session.solve()).names()).containsExactly("hay at least 5", "hay at most 4");
            session.columnBounds(hay, 5, INF);
            assertThat(((Optimum) session.solve()).objective()).isCloseTo(12, within(1e-9));
        }
    }

    /** Against x at least 1; a limit of 1e-29 is 0 for every purpose. */
    @Test
    void aLimitNextToNothingConflictsLikeOneOfNothing() {
        for (double next : new double[] {0, 1e-29}) {
            var b = LinearProgram.minimize();
            b.column("x", 1, 0, INF);
            b.row("some", 1, INF, new int[] {0}, new double[] {1});
            b.row("none", -INF, next, new int[] {0}, new double[] {1});
            assertThat(why(b.build().solve()).names()).containsExactlyInAnyOrder("some", "none");
        }
    }

    @Test
    void aSecondConflictMakesNoSingleChangeEnough() {
        var b = LinearProgram.minimize();
        b.column("a", 1, 0, 1);
        b.column("b", 1, 0, 1);
        dense(b, "more a", 2, INF, 1, 0);
        dense(b, "more b", 2, INF, 0, 1);
        var answer = why(b.build().solve());
        assertThat(answer.names()).hasSize(2);
        assertThat(answer.limits())
                .allSatisfy(l -> assertThat(answer.givesAlone(l)).isEqualTo(INF));
        assertThat(answer.shortfalls()).containsOnlyKeys("more a", "more b");
    }

    @Test
    void seededRandomConflictsAreIrreducible() {
        int found = 0;
        for (int seed = 0; seed < 200; seed++) {
            LinearProgram program = RandomPrograms.program(new Random(seed), 2.5);
            if (program.solve() instanceof Infeasible infeasible) {
                Conflict answer = infeasible.why();
                found++;
                isIrreducible(program, answer);
                assertThat(stateBySecondSolver(only(program, answer.limits())))
                        .as("seed %d", seed)
                        .isEqualTo(Optimisation.State.INFEASIBLE);
            }
        }
        assertThat(found).isGreaterThan(20);
    }

    private static Conflict why(Outcome outcome) {
        return ((Infeasible) outcome).why();
    }

    private static void isIrreducible(LinearProgram program, Conflict answer) {
        assertThat(answer.irreducible()).isTrue();
        assertThat(answer.limits()).isNotEmpty();
        assertThat(only(program, answer.limits()).solve()).isInstanceOf(Infeasible.class);
        for (Limit left : answer.limits()) {
            List<Limit> rest = new ArrayList<>(answer.limits());
            rest.remove(left);
            assertThat(only(program, rest).solve())
                    .as("without %s", left.name())
                    .isInstanceOf(Optimum.class);
        }
    }

    /** The rows and columns of the program without costs, and of its limits only these. */
    private static LinearProgram only(LinearProgram program, List<Limit> limits) {
        double[][] column = new double[program.columns().size()][];
        double[][] row = new double[program.rows().size()][];
        for (double[][] bounds : List.of(column, row)) {
            for (int i = 0; i < bounds.length; i++) {
                bounds[i] = new double[] {-INF, INF};
            }
        }
        limits.forEach(l -> (l.onRow() ? row : column)[l.index()][l.lower() ? 0 : 1] = l.bound());
        var b = LinearProgram.minimize();
        for (int j = 0; j < column.length; j++) {
            Column c = program.columns().get(j);
            b.column(c.name(), 0, column[j][0], column[j][1]);
        }
        for (int i = 0; i < row.length; i++) {
            Row r = program.rows().get(i);
            b.row(r.name(), row[i][0], row[i][1], r.columns(), r.coefficients());
        }
        return b.build();
    }

    private static Optimisation.State stateBySecondSolver(LinearProgram program) {
        var in = new ByteArrayInputStream(program.toMps().getBytes(StandardCharsets.UTF_8));
        return ExpressionsBasedModel.parse(in, ExpressionsBasedModel.FileFormat.MPS)
                .minimise()
                .getState();
    }
}
