package haywright.season.play;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import haywright.season.given.Forecast;
import haywright.season.given.Season;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** What holds of every winter that is played, whatever its figures. */
class WinterLawsTest {
    private static final Season USUAL = Invented.season(110, 0);
    private static final Season TIGHT = Invented.season(85, 0);

    /** Energy of growth is held by tangents from outside: a plan may be cheaper than the judge by so much. */
    private static final double TANGENTS = 0.002;

    private static Replanned replanned(Season season, Forecast forecast, double h) {
        return new Replanned(season, forecast, List.of(h), new Planner(new Planner.Programs(season, Blocks.FEW, 1)));
    }

    @ParameterizedTest
    @ValueSource(ints = {0, 7, 20})
    void whatLayThereAndWhatCameIsFedLostOrLeftToTheGram(int winter) {
        var judge = new Judge(TIGHT);
        var forecast = new Forecast(TIGHT, winter);
        for (long seed = 1; seed < 4; seed++) {
            var truth = Truth.drawn(TIGHT, winter, seed);
            for (Policy policy : List.of(
                    replanned(TIGHT, forecast, 0.5), new InOrder(TIGHT, forecast), new RanchsOwn(TIGHT, forecast))) {
                try (policy) {
                    assertThat(judge.play(truth, forecast, policy).open()).isZero();
                }
            }
        }
    }

    @ParameterizedTest
    @ValueSource(ints = {1, 12, 25})
    void aWinterKnownInAdvanceCostsWhatItsOwnPlanSays(int winter) {
        var judge = new Judge(TIGHT);
        var forecast = new Forecast(TIGHT, winter);
        for (var truth : List.of(Truth.expected(TIGHT, winter), Truth.drawn(TIGHT, winter, 3))) {
            var foreseen = judge.foreseen(truth, forecast);
            var played = judge.play(truth, forecast, new Followed(foreseen.decisions()));
            double spent = played.bought() + 1;
            assertThat(played.cost() - foreseen.cost()).isBetween(-1.0, TANGENTS * Math.max(spent, 20_000));
        }
    }

    @Test
    void noPolicyCostsLessThanKnowingAll() {
        for (var season : List.of(USUAL, TIGHT)) {
            var judge = new Judge(season);
            for (int winter = 2; winter < season.record().size(); winter += 9) {
                var forecast = new Forecast(season, winter);
                var truth = Truth.drawn(season, winter, winter);
                double bound = judge.foreseen(truth, forecast).cost();
                for (double h : new double[] {0, 1}) {
                    try (var policy = replanned(season, forecast, h)) {
                        assertThat(judge.play(truth, forecast, policy).cost()).isGreaterThan(bound - 1);
                    }
                }
            }
        }
    }

    @Test
    void moreFeedNeverCostsMore() {
        double last = Double.POSITIVE_INFINITY;
        for (double tons : new double[] {0.5, 60, 85, 110, 150, 10_000}) {
            var season = Invented.season(tons, 0);
            var judge = new Judge(season);
            double cost = judge.foreseen(Truth.expected(season, 5), new Forecast(season, 5))
                    .cost();
            assertThat(cost).isLessThan(last + 1);
            last = cost;
        }
    }

    @Test
    void aColderRecordNeverLastsLonger() {
        var lasted = new ArrayList<Long>();
        var emergency = new ArrayList<Double>();
        for (double warmer : new double[] {-6, 0, 6}) {
            var season = Invented.season(102, warmer);
            var judge = new Judge(season);
            long count = 0;
            double kg = 0;
            for (int winter = 0; winter < season.record().size(); winter += 4) {
                var forecast = new Forecast(season, winter);
                try (var policy = new InOrder(season, forecast)) {
                    var played = judge.play(Truth.expected(season, winter), forecast, policy);
                    count += played.lasted() ? 1 : 0;
                    kg += played.emergencyKg();
                }
            }
            lasted.add(count);
            emergency.add(kg);
        }
        assertThat(lasted).isSorted();
        assertThat(emergency.get(0)).isGreaterThan(emergency.get(2));
    }

    @Test
    void halvingEveryStretchMovesTheCostByNoMoreThanATwentieth() {
        var forecast = new Forecast(USUAL, -1);
        var costs = new ArrayList<Double>();
        for (var growing : List.of(List.of(1, 2, 4), List.of(1, 1, 2), List.of(1))) {
            try (var policy = new Replanned(
                    USUAL, forecast, List.of(0.5), new Planner(new Planner.Programs(USUAL, growing, 1)))) {
                costs.add(policy.plan(Judge.start(USUAL)).cost());
            }
        }
        double worth = USUAL.feeds().stream()
                .mapToDouble(feed -> feed.kg() * feed.carryValue())
                .sum();
        assertThat(costs.get(0)).isCloseTo(costs.get(2), within(worth / 20));
        assertThat(costs.get(1)).isCloseTo(costs.get(2), within(worth / 20));
    }

    @Test
    void grassComesOnTheDaySaidInHalfOfAllWintersAndNeverBefore() {
        var late = USUAL.record().late();
        assertThat(late).hasSize(28);
        assertThat(Arrays.stream(late).filter(days -> days == 0).count()).isBetween(14L, 18L);
        assertThat(Arrays.stream(late).max().orElseThrow()).isBetween(3, 21);
    }

    @Test
    void aHardWinterIsHardOnTheWholeSum() {
        var forecast = new Forecast(USUAL, -1);
        double usual = 0;
        double hard = 0;
        var sums = new double[USUAL.record().size()];
        for (int e = 0; e < USUAL.eaters().size(); e++) {
            int head = USUAL.eaters().get(e).head();
            for (int t = 0; t < USUAL.weeks(); t++) {
                usual += head * forecast.nem(e, t, 0, 0, 0);
                hard += head * forecast.nem(e, t, 0, 0, 1);
                for (int w = 0; w < sums.length; w++) {
                    sums[w] += head * USUAL.record().need(w, e, t).nem();
                }
            }
        }
        double mean = Arrays.stream(sums).average().orElseThrow();
        double sd = Math.sqrt(
                Arrays.stream(sums).map(s -> (s - mean) * (s - mean)).average().orElseThrow());
        assertThat(usual).isCloseTo(mean, within(1e-6 * mean));
        assertThat(hard - usual).isCloseTo(sd, within(1e-6 * sd));
    }
}
