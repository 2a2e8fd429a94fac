package haywright.forage.lot;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import haywright.chance.Conditional;
import haywright.chance.Draws;
import haywright.forage.Analyte;
import haywright.forage.Basis;
import haywright.forage.FeedClass;
import haywright.forage.Made;
import haywright.forage.book.FeedBook;
import haywright.forage.book.Prior;
import haywright.forage.lab.LabReport;
import haywright.forage.lab.Reading;
import haywright.forage.lab.Tested;
import haywright.sampling.Design;
import java.time.LocalDate;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeSet;
import java.util.UUID;
import java.util.function.ToDoubleFunction;
import java.util.stream.IntStream;
import org.hipparchus.distribution.multivariate.MultivariateNormalDistribution;
import org.hipparchus.random.Well19937a;
import org.hipparchus.stat.descriptive.DescriptiveStatistics;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** One road from what is not known to every figure; held against sampling by a general-purpose library. */
class LotDistributionTest {
    private static final int DRAWS = 40_000;

    private static Prior prior(FeedClass feedClass) {
        return Prior.of(feedClass, FeedBook.published().usual(feedClass)).orElseThrow();
    }

    private static Tested tested(String laboratory, double cp, double adf, double ndf) {
        return new Tested(
                laboratory,
                Tested.Method.WET,
                "",
                Design.of(20, 1, 1),
                200,
                Map.of(Analyte.CP, cp, Analyte.ADF, adf, Analyte.NDF, ndf));
    }

    private static LotComposition lot(FeedClass feedClass, List<Tested> tested) {
        var reports = tested.stream()
                .map(one -> new LabReport(
                        new UUID(0, 1),
                        new UUID(0, 2),
                        one.laboratory(),
                        "",
                        null,
                        LocalDate.of(2026, 10, 14),
                        LabReport.HowSampled.PLAN,
                        one.values().entrySet().stream()
                                .map(e -> new Reading(
                                        e.getKey(), e.getValue(), e.getKey().unit(), Basis.DRY_MATTER))
                                .toList(),
                        List.of()))
                .toList();
        return LotComposition.of(
                feedClass,
                FeedBook.published().usual(feedClass),
                reports,
                Optional.of(LotEstimate.of(prior(feedClass), tested)));
    }

    private static final List<Tested> TWO = List.of(tested("A", 17, 34, 44), tested("A", 18.5, 33, 43));

    /** What the own part and the shared doubts make together is all that is left after the reports, no more and no less. */
    @Test
    void ownAndSharedPartsMakeTheWhole() {
        var prior = prior(FeedClass.LEGUME_HAY);
        var estimate = LotEstimate.of(prior, TWO);
        var seen = Seen.of(prior, TWO, new java.util.ArrayList<>());
        Conditional told = seen.given(prior);
        for (int i = 0; i < prior.cells().size(); i++) {
            assertThat(estimate.theta().mean(i)).isCloseTo(told.posterior().mean(i), within(1e-9));
            for (int j = 0; j < prior.cells().size(); j++) {
                assertThat(estimate.theta().covariance(i, j))
                        .isCloseTo(told.posterior().covariance(i, j), within(1e-9));
            }
        }
    }

    /** Two reports of one laboratory share what it reads high; those of two laboratories do not. */
    @Test
    void aLaboratorysDoubtIsOneUnknownWhereverItStands() {
        var hay = LotDistribution.of(lot(FeedClass.LEGUME_HAY, TWO));
        var straw = LotDistribution.of(lot(FeedClass.GRASS_HAY, List.of(tested("a ", 9, 38, 60))));
        var other = LotDistribution.of(lot(FeedClass.GRASS_HAY, List.of(tested("B", 9, 38, 60))));
        var cp = new Shared("bias", "a|wet|cp");
        assertThat(hay.shared()).contains(cp);
        assertThat(straw.shared()).contains(cp);
        assertThat(other.shared()).doesNotContain(cp).contains(new Shared("bias", "b|wet|cp"));
        ToDoubleFunction<Made> protein = made -> made.value(Analyte.CP).orElseThrow();
        assertThat(hay.of(protein).shared().get(cp)).isPositive();
    }

    /** Draws of every figure, worked out or not, scatter as those of a library that shares nothing with this code. */
    @Test
    void drawsScatterAsIndependentOnesDo() {
        var lot = lot(FeedClass.LEGUME_HAY, TWO);
        var distribution = LotDistribution.of(lot);
        var estimate = lot.estimate().orElseThrow();
        var prior = estimate.prior();
        var seen = Seen.of(prior, TWO, new java.util.ArrayList<>());
        var whole = seen.given(prior).posterior();
        int n = prior.cells().size();
        var mean = new double[n];
        var covariance = new double[n][n];
        for (int i = 0; i < n; i++) {
            mean[i] = whole.mean(i);
            for (int j = 0; j < n; j++) {
                covariance[i][j] = whole.covariance(i, j);
            }
        }
        var library = new MultivariateNormalDistribution(new Well19937a(4), mean, covariance);
        var random = new Well19937a(5);
        var theirs = new HashMap<Analyte, DescriptiveStatistics>();
        var ours = new HashMap<Analyte, DescriptiveStatistics>();
        var analytes = List.of(Analyte.CP, Analyte.ADF, Analyte.CA, Analyte.TDN, Analyte.NEM);
        analytes.forEach(a -> {
            theirs.put(a, new DescriptiveStatistics());
            ours.put(a, new DescriptiveStatistics());
        });
        var line = haywright.forage.energy.AdfEquation.usual(FeedClass.LEGUME_HAY, Optional.of(prior.id()))
                .orElseThrow()
                .equation();
        double middle = lot.composition().value(Analyte.TDN).orElseThrow();
        double adf0 = lot.composition().value(Analyte.ADF).orElseThrow();
        double residual = lot.tdn().flatMap(t -> t.residual()).map(r -> r.sd()).orElse(3.0);
        for (int draw = 0; draw < DRAWS; draw++) {
            var theta = library.sample();
            for (var analyte : List.of(Analyte.CP, Analyte.ADF, Analyte.CA)) {
                int i = prior.index(analyte);
                theirs.get(analyte).addValue(prior.cells().get(i).marginal().log() ? Math.exp(theta[i]) : theta[i]);
            }
            double tdn =
                    middle + line.slope() * (theta[prior.index(Analyte.ADF)] - adf0) + residual * random.nextGaussian();
            theirs.get(Analyte.TDN).addValue(tdn);
            // DE = 0.04409·TDN, ME = 0.82·DE and the cubic of the NRC, written out anew
            double me = 0.82 * 0.04409 * tdn;
            theirs.get(Analyte.NEM).addValue(1.37 * me - 0.138 * me * me + 0.0105 * me * me * me - 1.12);
        }
        var draws = new Draws(6);
        for (int draw = 0; draw < DRAWS; draw++) {
            var doubts = new HashMap<Shared, Double>();
            distribution.shared().forEach(doubt -> doubts.put(doubt, draws.normal()));
            var own = IntStream.range(0, distribution.size())
                    .mapToDouble(i -> draws.normal())
                    .toArray();
            var state = distribution.at(own, doubts::get);
            analytes.forEach(a -> ours.get(a).addValue(state.value(a).orElseThrow()));
        }
        for (var analyte : analytes) {
            double sd = theirs.get(analyte).getStandardDeviation();
            assertThat(ours.get(analyte).getMean())
                    .as("%s", analyte)
                    .isCloseTo(theirs.get(analyte).getMean(), within(5 * sd * Math.sqrt(2.0 / DRAWS)));
            assertThat(ours.get(analyte).getStandardDeviation())
                    .as("%s", analyte)
                    .isCloseTo(sd, within(0.03 * sd));
            for (double p : new double[] {5, 95}) {
                assertThat(ours.get(analyte).getPercentile(p))
                        .as("%s at %s", analyte, p)
                        .isCloseTo(theirs.get(analyte).getPercentile(p), within(0.06 * sd));
            }
        }
    }

    /** Of a figure that goes with a normal in a straight line the differences are exact; the mean is the plain figure. */
    @Test
    void spreadIsFoundWithoutDraws() {
        var lot = lot(FeedClass.LEGUME_HAY, TWO);
        var distribution = LotDistribution.of(lot);
        var spread = distribution.of(made -> made.value(Analyte.CP).orElseThrow() * 10);
        var now =
                lot.estimate().orElseThrow().estimate(Analyte.CP).orElseThrow().now();
        assertThat(spread.mean()).isEqualTo(lot.composition().value(Analyte.CP).orElseThrow() * 10);
        assertThat(spread.sd()).isCloseTo(10 * now.sd(), within(1e-9));
    }

    /** However far out: nothing throws, no figure leaves what a feed can be, and no part is more than its whole. */
    @ParameterizedTest
    @EnumSource(FeedClass.class)
    void everyStateIsAFeed(FeedClass feedClass) {
        if (FeedBook.published().usual(feedClass).isEmpty()
                || Prior.of(feedClass, FeedBook.published().usual(feedClass)).isEmpty()) {
            return;
        }
        var distribution = LotDistribution.of(lot(feedClass, List.of()));
        var draws = new Draws(9);
        int moved = 0;
        for (int draw = 0; draw < 400; draw++) {
            double far = draw < 300 ? 1 : 6;
            var own = IntStream.range(0, distribution.size())
                    .mapToDouble(i -> far * draws.normal())
                    .toArray();
            var state = distribution.at(own, doubt -> far * draws.normal());
            moved += state.moved() ? 1 : 0;
            distribution.expected().values().keySet().forEach(a -> {
                double value = state.value(a).orElseThrow();
                var known = distribution.expected().values().get(a);
                if (known != null && value != known.value() && a != Analyte.RFV) {
                    assertThat(a.possible().holds(value)).as("%s %s", a, value).isTrue();
                }
            });
            var adf = state.value(Analyte.ADF);
            var ndf = state.value(Analyte.NDF);
            if (adf.isPresent() && ndf.isPresent()) {
                assertThat(adf.getAsDouble()).isLessThanOrEqualTo(ndf.getAsDouble());
            }
        }
        assertThat(moved).isLessThan(400);
    }

    /** A tag is no promise of one load, and a fellow of a draw is its mirror. */
    @Test
    void aTaggedFeedScattersToo() {
        var row = FeedBook.published().usual(FeedClass.PROTEIN_MEAL);
        var feed = LotComposition.ofTag(FeedClass.PROTEIN_MEAL, row, "feed tag", List.of());
        var distribution = LotDistribution.of(feed);
        assertThat(distribution.size()).isPositive();
        assertThat(distribution.of(m -> m.value(Analyte.CP).orElseThrow()).sd()).isPositive();
        var own = new double[distribution.size()];
        Arrays.fill(own, 0.1);
        double cp = feed.composition().value(Analyte.CP).orElseThrow();
        double up = distribution.at(own, d -> 0).value(Analyte.CP).orElseThrow();
        Arrays.fill(own, -0.1);
        double down = distribution.at(own, d -> 0).value(Analyte.CP).orElseThrow();
        assertThat(up).isGreaterThan(down);
        assertThat((up + down) / 2).isCloseTo(cp, within(0.02 * cp));
        assertThat(new TreeSet<>(distribution.shared())).isEqualTo(distribution.shared());
    }
}
