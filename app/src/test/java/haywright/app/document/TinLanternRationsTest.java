package haywright.app.document;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import haywright.FormulaCheck;
import haywright.cattle.AnimalClass;
import haywright.cattle.cold.Coat;
import haywright.cattle.cold.ColdSystem;
import haywright.cattle.herd.Group;
import haywright.diet.WayOfFeeding;
import haywright.feeding.Rations;
import haywright.forage.Analyte;
import haywright.forage.FeedClass;
import haywright.lp.LinearProgram;
import haywright.lp.Optimum;
import haywright.quantity.Quantity;
import haywright.quantity.Unit;
import haywright.ranch.Outfit;
import haywright.ranch.Ranch;
import haywright.ranch.RanchWeather;
import haywright.ranch.Wishes;
import haywright.ration.LimitAnswer;
import haywright.ration.NoRation;
import haywright.ration.Ration;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.Collections;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.ojalgo.optimisation.ExpressionsBasedModel;

/** Every ration of the demo, solved again from its own MPS by an unrelated solver, and its prices by small changes. */
class TinLanternRationsTest {
    private static final Ranch RANCH = TinLantern.ranch();
    private static final Rations RATIONS = new Rations(RANCH, RANCH.settings().today(LocalDate.EPOCH));

    static List<Group> groups() {
        return List.copyOf(RANCH.groups().values());
    }

    static Stream<Group> fed() {
        return groups().stream().filter(g -> RATIONS.ration(g) instanceof Ration);
    }

    static Stream<Group> unfed() {
        return groups().stream().filter(g -> RATIONS.ration(g) instanceof NoRation);
    }

    @ParameterizedTest
    @MethodSource("fed")
    void anotherSolverFindsTheSameCost(Group group, @TempDir Path folder) throws Exception {
        var ration = (Ration) RATIONS.ration(group);
        var file =
                Files.writeString(folder.resolve("ration.mps"), ration.program().toMps());
        var other = ExpressionsBasedModel.parse(file.toFile()).minimise();
        assertThat(other.getState().isOptimal()).isTrue();
        assertThat(other.getValue()).isCloseTo(ration.weighed(), within(1e-6 * ration.weighed()));
    }

    @ParameterizedTest
    @MethodSource("fed")
    void everyRowIsMetAndTheWorkingsGiveTheCostAgain(Group group) {
        var ration = (Ration) RATIONS.ration(group);
        assertThat(ration.limits()).allMatch(LimitAnswer::isMet);
        FormulaCheck.reEvaluates(ration);
        FormulaCheck.reEvaluates(RATIONS.yard().need(group));
    }

    @ParameterizedTest
    @MethodSource("fed")
    void theDualOfEachRowIsWhatASmallChangeCosts(Group group) {
        var program = ((Ration) RATIONS.ration(group)).program();
        var optimum = (Optimum) program.solve();
        int checked = 0;
        for (int i = 0; i < program.rows().size(); i++) {
            double dual = optimum.dual(i);
            if (dual == 0) {
                continue;
            }
            var row = program.rows().get(i);
            double bound = Double.isFinite(row.lower()) ? row.lower() : row.upper();
            var range = optimum.boundRange(i);
            double up = Math.min(1e-3, (range.high() - bound) / 2);
            double down = Math.min(1e-3, (bound - range.low()) / 2);
            // At a degenerate corner one side has no room: the dual is then one of several that are right.
            for (double step : new double[] {up, -down}) {
                if (Math.abs(step) > 1e-7) {
                    double moved = ((Optimum) moved(program, i, step).solve()).objective();
                    assertThat((moved - optimum.objective()) / step)
                            .as(row.name())
                            .isCloseTo(dual, within(1e-5 * Math.max(1, Math.abs(dual))));
                    checked++;
                }
            }
        }
        assertThat(checked).isPositive();
    }

    /** Some head may eat all that lies there: 0.5 % of body weight for grown cattle, 1 % for growing ones, in one feeding. */
    @Test
    void grainStaysWithinItsLimitAsPutOut() {
        for (var ranch : List.of(RANCH, BentBucket.ranch())) {
            for (var outfit : List.of(ranch.outfit(), Outfit.NOT_SAID)) {
                var rations = new Rations(ranch.with(outfit), RATIONS.day());
                for (var group : ranch.groups().values()) {
                    double grain = rations.toFeed(group).stream()
                            .filter(p -> p.feed().feed().feedClass() == FeedClass.GRAIN)
                            .mapToDouble(p -> p.kgPutOut() * p.feed().dryMatterPercent() / 100)
                            .sum();
                    double share = group.animals() == AnimalClass.GROWING ? 0.01 : 0.005;
                    double weight = rations.yard().need(group).bodyWeight();
                    assertThat(grain)
                            .as(group.name())
                            .isLessThan(1.03 * share * Math.max(1, outfit.timesADay()) * weight);
                }
            }
        }
    }

    /** A group that is said to eat out of a bunk loses little of its grain, whatever the outfit. */
    @Test
    void whatIsFedInABunkIsNotLostOnTheGround() {
        var ranch = RANCH.with(Outfit.NOT_SAID);
        var group = groups().get(4);
        var loss = FeedClass.DISTILLERS_GRAINS;
        assertThat(lost(ranch, group, loss)).isEqualTo(17);
        assertThat(lost(ranch.with(new Wishes(group.id(), List.of(), List.of(), WayOfFeeding.BUNK, null)), group, loss))
                .isEqualTo(5);
    }

    private static double lost(Ranch ranch, Group group, FeedClass kind) {
        return new Rations(ranch, RATIONS.day())
                .question(group).offered().stream()
                        .filter(feed -> feed.feed().feedClass() == kind)
                        .findFirst()
                        .orElseThrow()
                        .feedingLossPercent();
    }

    private static LinearProgram moved(LinearProgram program, int row, double step) {
        var copy = LinearProgram.minimize();
        program.columns().forEach(c -> copy.column(c.name(), c.cost(), c.lower(), c.upper()));
        for (int i = 0; i < program.rows().size(); i++) {
            var r = program.rows().get(i);
            double by = i == row ? step : 0;
            copy.row(r.name(), r.lower() + by, r.upper() + by, r.columns(), r.coefficients());
        }
        return copy.build();
    }

    @ParameterizedTest
    @MethodSource("unfed")
    void whatStandsInTheWayIsIrreducible(Group group) {
        var no = (NoRation) RATIONS.ration(group);
        var ids = new HashSet<String>();
        no.conflicts().forEach(c -> ids.add(c.row().id()));
        assertThat(ids).isNotEmpty().doesNotContain("growth");
        assertThat(canBeKept(no, ids)).isFalse();
        for (var id : ids) {
            var rest = new HashSet<>(ids);
            rest.remove(id);
            assertThat(canBeKept(no, rest)).as("without " + id).isTrue();
        }
    }

    private static boolean canBeKept(NoRation no, Set<String> rows) {
        var program = LinearProgram.minimize();
        var feeds = no.diet().feeds();
        feeds.forEach(f -> program.column(f.id(), 0, 0, Double.POSITIVE_INFINITY));
        var all = IntStream.range(0, feeds.size()).toArray();
        no.diet().rows().stream()
                .filter(r -> rows.contains(r.id()))
                .forEach(r -> program.row(r.id(), r.lower(), r.upper(), all, r.coefficients()));
        return program.build().solve() instanceof Optimum;
    }

    /** The change that is said to lift what stands in the way lifts it. */
    @ParameterizedTest
    @MethodSource("unfed")
    void doingWithoutTheWishThatStandsInTheWayGivesARation(Group group) {
        var no = (NoRation) RATIONS.ration(group);
        assertThat(no.lifts()).isNotEmpty();
        var without = RANCH.with(haywright.ranch.Wishes.none(group.id()));
        var lifted = new Rations(without, RATIONS.day()).ration(group);
        assertThat(lifted).isInstanceOf(Ration.class);
        assertThat(((Ration) lifted).cost()).isCloseTo(no.lifts().get(0).cost(), within(1e-5));
    }

    /**
     * Rule of thumb T10: 240 cows in winter take 7 to 8 round bales of 1,200 lb a day, printed to whole bales. Here the
     * demo's cows at 20 °F in February, on its meadow hay alone, with what its way of feeding wastes.
     */
    @Test
    void aWintersDayTakesTheBalesThatTheTradeSays() {
        var means = Collections.nCopies(12, Quantity.of(20, Unit.FAHRENHEIT));
        var weather = new RanchWeather(
                "invented",
                means,
                Quantity.of(0, Unit.MILE_AN_HOUR),
                Coat.WINTER,
                false,
                ColdSystem.RULE_OF_THUMB,
                null,
                List.of(),
                null);
        var cold = RANCH.with(RANCH.settings().with(weather));
        var rations = new Rations(cold, LocalDate.of(2027, 2, 1));
        var cows = groups().get(0);
        var hay = rations.yard().feeds().stream()
                .filter(f -> f.feed().name().equals("Meadow hay"))
                .findFirst()
                .orElseThrow();
        double eaten = rations.yard().need(cows).nem()
                / hay.feed().composition().value(Analyte.NEM).orElseThrow();
        double bales = Unit.POUND.fromBase(hay.putOut(eaten) * cows.head()) / 1200;
        assertThat(cows.head()).isEqualTo(240);
        assertThat(bales).isBetween(6.5, 8.5);
    }
}
