package haywright.lp;

import static haywright.lp.Published.INF;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import haywright.lp.LinearProgram.Column;
import haywright.lp.LinearProgram.Row;
import haywright.workings.PublishedTable;
import haywright.workings.Refused;
import java.io.ByteArrayInputStream;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.FieldSource;
import org.ojalgo.optimisation.ExpressionsBasedModel;

/** MPS in and out, and netlib's small problems through both. */
class MpsTest {
    // Netlib lp/data readme; where its number is an old solver's, the recomputed one of netlib.csv agrees to 1e-6.
    static final List<PublishedTable.Row> NETLIB =
            PublishedTable.read(Published.class, "netlib.csv").rows();

    private static LinearProgram netlib(PublishedTable.Row row) {
        return LinearProgram.fromMps(Published.text("mps/" + row.text("name").toLowerCase(Locale.ROOT) + ".mps"));
    }

    @ParameterizedTest
    @FieldSource("NETLIB")
    void netlibAgrees(PublishedTable.Row row) {
        LinearProgram program = netlib(row);
        assertThat(program.columns()).hasSize((int) row.number("cols").orElseThrow());
        assertThat(program.rows())
                .hasSize((int) row.number("rows_incl_objective").orElseThrow() - 1);
        Optimum best = (Optimum) program.solve();
        for (String column : List.of("verified_objective", "published_optimal_value")) {
            double printed = row.number(column).orElseThrow();
            assertThat(best.objective()).as(column).isCloseTo(printed, within(1e-6 * Math.abs(printed)));
        }
        Certificate.holds(best);
    }

    @ParameterizedTest
    @FieldSource("NETLIB")
    void anUnrelatedSolverReadsOurMpsAndAgrees(PublishedTable.Row row) {
        LinearProgram program = netlib(row);
        double ours = ((Optimum) program.solve()).objective();
        var in = new ByteArrayInputStream(program.toMps().getBytes(StandardCharsets.UTF_8));
        var other = ExpressionsBasedModel.parse(in, ExpressionsBasedModel.FileFormat.MPS)
                .minimise();
        assertThat(other.getState().isOptimal()).isTrue();
        assertThat(other.getValue()).isCloseTo(ours, within(1e-6 * Math.abs(ours)));
    }

    @ParameterizedTest
    @FieldSource("NETLIB")
    void netlibsDualsAreWhatSolvingAgainShows(PublishedTable.Row row) {
        Optimum best = (Optimum) netlib(row).solve();
        int moved = 0;
        for (int i = 0; i < best.program().rows().size() && moved < 12; i++) {
            Row r = best.program().rows().get(i);
            double at = best.activity(i);
            Range range = best.boundRange(i);
            double by = Math.min(Math.min(at - range.low(), range.high() - at) * 0.5, 1 + Math.abs(at));
            if (Math.abs(best.dual(i)) < 1e-9 || by < 1e-3) {
                continue;
            }
            for (double to : new double[] {at - by, at + by}) {
                try (Session session = best.program().open()) {
                    boolean atLower = Math.abs(at - r.lower()) <= Math.abs(at - r.upper());
                    session.rowBounds(i, atLower ? to : r.lower(), atLower && r.lower() != r.upper() ? r.upper() : to);
                    double again = ((Optimum) session.solve()).objective();
                    assertThat(again - best.objective())
                            .as(r.name())
                            .isCloseTo(
                                    best.dual(i) * (to - at), within(1e-7 * Math.max(1, Math.abs(best.objective()))));
                }
            }
            moved++;
        }
        assertThat(moved).isPositive();
    }

    @Test
    void whatIsWrittenReadsBackAlike() {
        for (int seed = 0; seed < 200; seed++) {
            LinearProgram program = RandomPrograms.program(new Random(seed), 0);
            LinearProgram back = LinearProgram.fromMps(program.toMps());
            double sign = program.maximizing() ? -1 : 1;
            assertThat(back.maximizing()).isFalse();
            assertThat(back.offset()).isEqualTo(sign * program.offset());
            for (int j = 0; j < program.columns().size(); j++) {
                Column a = program.columns().get(j);
                Column b = back.columns().get(j);
                assertThat(List.of(b.cost() + 0.0, b.lower(), b.upper()))
                        .isEqualTo(List.of(sign * a.cost() + 0.0, a.lower(), a.upper()));
            }
            for (int i = 0; i < program.rows().size(); i++) {
                Row a = program.rows().get(i);
                Row b = back.rows().get(i);
                near(b.lower(), a.lower());
                near(b.upper(), a.upper());
            }
        }
    }

    private static void near(double ours, double expected) {
        if (Double.isInfinite(expected)) {
            assertThat(ours).isEqualTo(expected);
        } else {
            assertThat(ours).isCloseTo(expected, within(1e-12 * Math.max(1, Math.abs(expected))));
        }
    }

    @Test
    void namesAreMadeSafeUniqueAndExplained() {
        var b = LinearProgram.minimize();
        b.column("oat hay <1>", 1, 0, INF);
        b.column("oat hay (1)", 1, 0, INF);
        b.column("é", 1, 0, INF);
        b.column("", 1, 0, INF);
        b.row("crude protein ≥ 8 %\nof dry matter", 1, INF, new int[] {0, 1, 2, 3}, new double[] {1, 2, 3, 4});
        String mps = b.build().toMps();
        LinearProgram back = LinearProgram.fromMps(mps);
        assertThat(back.columns()).hasSize(4).extracting(Column::name).doesNotHaveDuplicates();
        assertThat(back.columns()).allSatisfy(c -> assertThat(c.name()).matches("[A-Za-z][A-Za-z0-9._]{2,}"));
        assertThat(mps.lines())
                .anyMatch(l -> l.startsWith("* row ") && l.endsWith("crude protein ≥ 8 % of dry matter"));
        assertThat(((Optimum) back.solve()).objective()).isCloseTo(0.25, within(1e-9));
    }

    // RANGES by the rules of the format: R on E with R < 0 lies below its side, with R > 0 above; L below, G above.
    @ParameterizedTest
    @CsvSource({"E, 10, 4, 10, 14", "E, 10, -4, 6, 10", "L, 10, 4, 6, 10", "G, 10, 4, 10, 14", "L, 10, -4, 6, 10"})
    void rangesFollowTheirSignRules(String type, double side, double range, double lower, double upper) {
        Row row = LinearProgram.fromMps(small(type, "RHS s r " + side, "RANGES\n q r " + range, ""))
                .rows()
                .get(0);
        assertThat(row.lower()).isEqualTo(lower);
        assertThat(row.upper()).isEqualTo(upper);
    }

    @ParameterizedTest
    @CsvSource({
        "UP b x 4, 0, 4",
        "UP x 4, 0, 4",
        "UP b x -4, -Infinity, -4",
        "LO b x 2, 2, Infinity",
        "LO b x -2, -2, Infinity",
        "FX b x 3, 3, 3",
        "FR b x, -Infinity, Infinity",
        "FR x, -Infinity, Infinity",
        "MI b x, -Infinity, Infinity",
        "MI b x 0, -Infinity, Infinity",
        "PL b x, 0, Infinity",
        "UP b x 1e30, 0, Infinity"
    })
    void boundsOfEveryTypeAreRead(String bound, double lower, double upper) {
        Column x = LinearProgram.fromMps(small("G", "RHS s r 1", "", "BOUNDS\n " + bound))
                .columns()
                .get(0);
        assertThat(x.lower()).isEqualTo(lower);
        assertThat(x.upper()).isEqualTo(upper);
    }

    @ParameterizedTest
    @CsvSource({"BV b x, 0, 1", "UI b x 4, 0, 4", "LI b x 2, 2, Infinity"})
    void boundsOfWholeColumnsAreRead(String bound, double lower, double upper) {
        Column x = LinearProgram.fromMps(small("G", "RHS s r 1", "", "BOUNDS\n " + bound))
                .columns()
                .get(0);
        assertThat(x).isEqualTo(new Column("x", 1, lower, upper, true));
    }

    @Test
    void columnsBetweenMarkersAreWhole() {
        var b = LinearProgram.minimize();
        b.column("hay", 1, 0, INF);
        b.whole("bales", 2, 0, INF);
        b.whole("loads", 3, 0, 9);
        b.column("straw", 1, 0, 5);
        b.row("fed", 7.5, INF, new int[] {0, 1, 2, 3}, new double[] {0.1, 1, 2, 0.1});
        assertThat(LinearProgram.fromMps(b.build().toMps()).columns())
                .isEqualTo(b.build().columns())
                .extracting(Column::whole)
                .containsExactly(false, true, true, false);
    }

    @Test
    void aNegativeUpperBoundAfterALowerOneKeepsBoth() {
        Column x = LinearProgram.fromMps(small("G", "RHS s r 1", "", "BOUNDS\n LO b x -9\n UP b x -4"))
                .columns()
                .get(0);
        assertThat(List.of(x.lower(), x.upper())).isEqualTo(List.of(-9.0, -4.0));
    }

    @Test
    void anRhsOnTheObjectiveIsMinusItsConstant() {
        LinearProgram program = LinearProgram.fromMps(small("G", "RHS s r 1 o -7", "", ""));
        assertThat(program.offset()).isEqualTo(7);
        assertThat(((Optimum) program.solve()).objective()).isCloseTo(8, within(1e-9));
    }

    @ParameterizedTest
    @CsvSource({"OBJSENSE MAX, true", "OBJSENSE|    MAX, true", "OBJSENSE|    MAXIMIZE, true", "OBJSENSE MIN, false"})
    void theSenseIsHeeded(String section, boolean maximizing) {
        String text = section.replace('|', '\n') + "\n" + small("L", "RHS s r 5", "", "");
        assertThat(LinearProgram.fromMps(text).maximizing()).isEqualTo(maximizing);
    }

    @Test
    void cardsMayHaveNamesWithSpaces() {
        LinearProgram program = LinearProgram.fromMps("""
                NAME          CARDS
                ROWS
                 N  COST
                 G  DRY HAY
                COLUMNS
                    OAT HAY   COST               2.0   DRY HAY            1.0
                    STRAW 1   COST               1.0   DRY HAY            0.5
                RHS
                    RHS       DRY HAY            3.0
                BOUNDS
                 UP BND       STRAW 1            2.0
                ENDATA
                """);
        assertThat(program.columns()).extracting(Column::name).containsExactly("OAT HAY", "STRAW 1");
        assertThat(program.columns().get(1).upper()).isEqualTo(2);
        assertThat(((Optimum) program.solve()).objective()).isCloseTo(6, within(1e-9));
    }

    @Test
    void whatCannotBeReadNamesItsLine() {
        refused(small("G", "RHS s r one", "", ""), "line 8", "“one” is not a number");
        refused(small("G", "RHS s q 1", "", ""), "line 8", "no row is named “q”");
        refused(small("G", "RHS s r 1", "", "BOUNDS\n UP b y 1"), "line 10", "no column is named “y”");
        refused(small("G", "RHS s r 1", "", "BOUNDS\n SC b x 4"), "SC b x", "no bound of a linear program");
        refused("NAME a\nROWS\n N o\n", "line 3", "ends without ENDATA");
        refused("", "line 0", "ends without ENDATA");
        refused("<html>", "<html>", "no section of a linear program");
        refused(small("G", "RHS s r NaN", "", ""), "line", "“r” is NaN");
        refused(small("X", "RHS s r 1", "", ""), "X r", "a row is N, G, L or E");
    }

    private static void refused(String mps, String... words) {
        var refusal = assertThatThrownBy(() -> LinearProgram.fromMps(mps)).isInstanceOf(Refused.class);
        for (String word : words) {
            refusal.hasMessageContaining(word);
        }
    }

    /** One column x of cost 1, one row r with coefficient 1, objective o. */
    private static String small(String type, String rhs, String ranges, String bounds) {
        return "NAME t\nROWS\n N o\n %s r\nCOLUMNS\n x o 1 r 1\nRHS\n%s%s\n%s\nENDATA\n"
                .formatted(type, rhs.replaceFirst("^RHS", ""), ranges.isEmpty() ? "" : "\n" + ranges, bounds);
    }

    @Test
    void aRowThatContradictsItselfCannotBeWritten() {
        var b = LinearProgram.minimize();
        b.column("a", 1, 0, INF);
        b.row("r", 2, 1, new int[] {0}, new double[] {1});
        assertThatThrownBy(() -> b.build().toMps())
                .isInstanceOf(IllegalStateException.class)
                .hasMessageContaining("“r”");
    }
}
