package haywright.forage.lot;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import haywright.FormulaCheck;
import haywright.chance.Draws;
import haywright.forage.Analyte;
import haywright.forage.Basis;
import haywright.forage.FeedClass;
import haywright.forage.book.FeedBook;
import haywright.forage.book.Prior;
import haywright.forage.energy.AdfEquation;
import haywright.forage.lab.Issue;
import haywright.forage.lab.LabReport;
import haywright.forage.lab.Reading;
import haywright.forage.lab.ReportCheck;
import haywright.forage.lab.Tested;
import haywright.quantity.Unit;
import haywright.sampling.Design;
import java.util.ArrayList;
import java.util.Collections;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.UUID;
import org.hipparchus.linear.Array2DRowRealMatrix;
import org.hipparchus.linear.ArrayRealVector;
import org.hipparchus.linear.LUDecomposition;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/**
 * Figures of the kinds, of cores and of laboratories are those of priors.csv, within_lot.csv and laboratory.csv; what must
 * come out is worked from them here by closed forms, by an unrelated library, or by drawing lots bale by bale.
 */
class LotEstimateTest {
    private static final double SAME = 1e-9;

    private static Prior prior(FeedClass feedClass) {
        return Prior.of(feedClass, Optional.empty()).orElseThrow();
    }

    /** Its analytes do not hang together, so that each can be worked out alone. */
    private static final Prior BARLEY = Prior.named("barley_grain").orElseThrow();

    private static Tested wet(String laboratory, String bag, Design design, Map<Analyte, Double> values) {
        return new Tested(laboratory, Tested.Method.WET, bag, design, 0, values);
    }

    private static LotEstimate.Estimate of(LotEstimate estimate, Analyte analyte) {
        return estimate.estimates().stream()
                .filter(e -> e.analyte() == analyte)
                .findFirst()
                .orElseThrow();
    }

    private static double variance(Prior prior, List<Tested> tested, Analyte analyte) {
        return Math.pow(of(LotEstimate.of(prior, tested), analyte).now().sd(), 2);
    }

    /** CP of barley 12.3, SD 1.3; one load 1.4 about the lot; laboratory 0.5 about the truth, 0.25 of it its own repeats. */
    @Test
    void moreLoadsAndRepeatsShrinkTheSpreadAsTheoryHasItAndTheBiasStays() {
        double kind = 1.3 * 1.3;
        double load = 1.4 * 1.4;
        double repeat = 0.25 * 0.25;
        double bias = 0.5 * 0.5 - repeat;
        for (int n : new int[] {1, 4, 20, 500}) {
            var one = wet("A", "", Design.of(n, 1, 1), Map.of(Analyte.CP, 13.0));
            double error = load / n + bias + repeat;
            assertThat(variance(BARLEY, List.of(one), Analyte.CP)).isCloseTo(1 / (1 / kind + 1 / error), within(SAME));
            assertThat(of(LotEstimate.of(BARLEY, List.of(one)), Analyte.CP)
                            .now()
                            .mean())
                    .isCloseTo((12.3 / kind + 13.0 / error) / (1 / kind + 1 / error), within(SAME));
        }
        for (int k : new int[] {1, 2, 10, 200}) {
            var sameBag = Collections.nCopies(k, wet("A", "bag 1", Design.of(20, 1, 1), Map.of(Analyte.CP, 13.0)));
            double error = load / 20 + bias + repeat / k;
            assertThat(variance(BARLEY, sameBag, Analyte.CP)).isCloseTo(1 / (1 / kind + 1 / error), within(SAME));
            var ownBags = Collections.nCopies(k, wet("A", "", Design.of(20, 1, 1), Map.of(Analyte.CP, 13.0)));
            error = (load / 20 + repeat) / k + bias;
            assertThat(variance(BARLEY, ownBags, Analyte.CP)).isCloseTo(1 / (1 / kind + 1 / error), within(SAME));
            var laboratories = new ArrayList<Tested>();
            for (int i = 0; i < k; i++) {
                laboratories.add(wet("laboratory " + i, "bag 1", Design.of(20, 1, 1), Map.of(Analyte.CP, 13.0)));
            }
            error = load / 20 + (bias + repeat) / k;
            assertThat(variance(BARLEY, laboratories, Analyte.CP)).isCloseTo(1 / (1 / kind + 1 / error), within(SAME));
        }
    }

    private static final List<Tested> THREE = List.of(
            new Tested(
                    "North",
                    Tested.Method.WET,
                    "S1-1",
                    Design.of(20, 1, 1),
                    150,
                    Map.of(Analyte.CP, 16.1, Analyte.ADF, 35.0, Analyte.NDF, 46.0, Analyte.CA, 1.2)),
            new Tested(
                    "North",
                    Tested.Method.WET,
                    "S1-1",
                    Design.of(20, 1, 1),
                    150,
                    Map.of(Analyte.CP, 16.6, Analyte.ADF, 34.1, Analyte.NDF, 45.2)),
            new Tested(
                    "South",
                    Tested.Method.NIR,
                    "",
                    Tested.ONE_GRAB,
                    0,
                    Map.of(Analyte.CP, 17.5, Analyte.NDF, 43.0, Analyte.P, 0.25)));

    @Test
    void theOrderOfReportsDoesNotMatter() {
        var orders = List.of(
                List.of(0, 1, 2),
                List.of(0, 2, 1),
                List.of(1, 0, 2),
                List.of(1, 2, 0),
                List.of(2, 0, 1),
                List.of(2, 1, 0));
        var prior = prior(FeedClass.LEGUME_HAY);
        var first = LotEstimate.of(prior, THREE).theta();
        for (var order : orders) {
            var other = LotEstimate.of(prior, order.stream().map(THREE::get).toList())
                    .theta();
            for (int i = 0; i < first.size(); i++) {
                assertThat(other.mean(i)).isCloseTo(first.mean(i), within(SAME));
                for (int j = 0; j < first.size(); j++) {
                    assertThat(other.covariance(i, j)).isCloseTo(first.covariance(i, j), within(SAME));
                }
            }
        }
    }

    /**
     * The state written out: the lot, an error for each of two bags and a bias for each of two laboratories, with only
     * the repeats as noise; conditioned by Hipparchus.
     */
    @Test
    void sameAsWithOneErrorForEachBagAndOneBiasForEachLaboratory() {
        var prior = prior(FeedClass.LEGUME_HAY);
        var lot = prior.gaussian();
        int m = lot.size();
        int size = 5 * m; // the lot, bag S1-1, the grab, North, South
        var sigma = new Array2DRowRealMatrix(size, size);
        var rows = new ArrayList<double[]>();
        var values = new ArrayList<Double>();
        var repeats = new ArrayList<Double>();
        for (int i = 0; i < m; i++) {
            for (int j = 0; j < m; j++) {
                sigma.setEntry(i, j, lot.covariance(i, j));
            }
        }
        for (int report = 0; report < 3; report++) {
            var one = THREE.get(report);
            int bag = (report < 2 ? 1 : 2) * m;
            int laboratory = (report < 2 ? 3 : 4) * m;
            for (var a : one.values().keySet()) {
                int i = prior.index(a);
                var error = ResultError.of(prior, a, one);
                sigma.setEntry(laboratory + i, laboratory + i, error.bias());
                for (var b : one.values().keySet()) {
                    int j = prior.index(b);
                    double rho = lot.covariance(i, j) / lot.sd(i) / lot.sd(j);
                    sigma.setEntry(
                            bag + i,
                            bag + j,
                            rho
                                    * Math.sqrt(error.sampling()
                                            * ResultError.of(prior, b, one).sampling()));
                }
                var row = new double[size];
                row[i] = 1;
                row[bag + i] = 1;
                row[laboratory + i] = 1;
                rows.add(row);
                var marginal = prior.cells().get(i).marginal();
                double value = one.values().get(a);
                values.add((marginal.log() ? Math.log(value) : value) - lot.mean(i));
                repeats.add(error.repeat());
            }
            // What the second report of the bag lacks, the first has: put the bag's whole covariance back.
            if (report == 1) {
                fillBag(prior, sigma, m, THREE.get(0));
            }
        }
        var h = new Array2DRowRealMatrix(rows.toArray(double[][]::new));
        var s = h.multiply(sigma).multiply(h.transpose());
        for (int k = 0; k < repeats.size(); k++) {
            s.addToEntry(k, k, repeats.get(k));
        }
        var gain = sigma.multiply(h.transpose())
                .multiply(new LUDecomposition(s).getSolver().getInverse());
        var moved = gain.operate(
                new ArrayRealVector(values.stream().mapToDouble(v -> v).toArray()));
        var left = sigma.subtract(gain.multiply(h).multiply(sigma));

        var estimate = LotEstimate.of(prior, THREE);
        for (int i = 0; i < m; i++) {
            assertThat(estimate.theta().mean(i)).isCloseTo(lot.mean(i) + moved.getEntry(i), within(SAME));
            for (int j = 0; j < m; j++) {
                assertThat(estimate.theta().covariance(i, j)).isCloseTo(left.getEntry(i, j), within(SAME));
            }
        }
        for (var e : estimate.estimates()) {
            assertThat(e.lotShare() + e.samplingShare() + e.laboratoryShare()).isCloseTo(1, within(SAME));
        }
        FormulaCheck.reEvaluates(estimate.weighing());
    }

    private static void fillBag(Prior prior, Array2DRowRealMatrix sigma, int m, Tested first) {
        for (var a : first.values().keySet()) {
            for (var b : first.values().keySet()) {
                int i = prior.index(a);
                int j = prior.index(b);
                sigma.setEntry(
                        m + i,
                        m + j,
                        prior.correlation(i, j)
                                * Math.sqrt(ResultError.of(prior, a, first).sampling()
                                        * ResultError.of(prior, b, first).sampling()));
            }
        }
    }

    /**
     * 2,000 lots of 150 bales each: the lot from its kind, every bale and every core about it, 20 cores in one bag, a
     * laboratory with its own bias. The figures are those of alfalfa hay: within a lot CP 0.9, ADF 1.6, NDF 2.1, half
     * between bales; laboratories 0.25 and 0.5, 0.5 and 1.0, 0.7 and 1.4.
     */
    @Test
    void nineLotsInTenLieInTheirIntervals() {
        var prior = prior(FeedClass.LEGUME_HAY);
        var analytes = List.of(Analyte.CP, Analyte.ADF, Analyte.NDF);
        double[] within = {0.9, 1.6, 2.1};
        double[] same = {0.25, 0.5, 0.7};
        double[] across = {0.5, 1.0, 1.4};
        double[][] together = {{1, -0.45, -0.5}, {-0.45, 1, 0.85}, {-0.5, 0.85, 1}};
        var bell = new haywright.chance.Gaussian(new double[3], together);
        var draws = new Draws(20261125);
        int lots = 2000;
        int bales = 150;
        int cored = 20;
        var inside = new EnumMap<Analyte, Integer>(Analyte.class);
        for (int lot = 0; lot < lots; lot++) {
            var truth = prior.gaussian().at(normals(draws, prior.gaussian().size()));
            var bale = new double[bales][];
            var mean = new double[3];
            for (int b = 0; b < bales; b++) {
                bale[b] = bell.at(normals(draws, 3));
                for (int a = 0; a < 3; a++) {
                    mean[a] += bale[b][a] / bales;
                }
            }
            var composite = new double[3];
            for (int b = 0; b < cored; b++) {
                var core = bell.at(normals(draws, 3));
                for (int a = 0; a < 3; a++) {
                    composite[a] += within[a] * Math.sqrt(0.5) * (bale[b][a] - mean[a] + core[a]) / cored;
                }
            }
            var values = new EnumMap<Analyte, Double>(Analyte.class);
            for (int a = 0; a < 3; a++) {
                double bias = Math.sqrt(across[a] * across[a] - same[a] * same[a]) * draws.normal();
                values.put(
                        analytes.get(a),
                        truth[prior.index(analytes.get(a))] + composite[a] + bias + same[a] * draws.normal());
            }
            var estimate = LotEstimate.of(
                    prior, List.of(new Tested("A", Tested.Method.WET, "", Design.of(cored, 1, 1), bales, values)));
            for (var e : estimate.estimates()) {
                double true1 = truth[prior.index(e.analyte())];
                double on = e.now().log() ? Math.exp(true1) : true1;
                if (on >= e.now().low90() && on <= e.now().high90()) {
                    inside.merge(e.analyte(), 1, Integer::sum);
                }
            }
        }
        assertThat(inside).hasSize(13);
        inside.forEach((analyte, count) ->
                assertThat(100.0 * count / lots).as("%s", analyte).isBetween(88.0, 92.0));
    }

    private static double[] normals(Draws draws, int n) {
        var z = new double[n];
        for (int i = 0; i < n; i++) {
            z[i] = draws.normal();
        }
        return z;
    }

    @ParameterizedTest
    @EnumSource(
            value = FeedClass.class,
            names = {"LEGUME_HAY", "GRASS_HAY", "MIXED_HAY", "CEREAL_HAY", "STRAW", "CORN_SILAGE", "PASTURE"})
    void aLotNeverTestedIsItsKindVisiblyWide(FeedClass feedClass) {
        var prior = prior(feedClass);
        var untested = LotEstimate.of(prior, List.of());
        for (var e : untested.estimates()) {
            assertThat(e.now().sd()).isCloseTo(e.before().sd(), within(SAME));
            assertThat(e.lotShare()).isEqualTo(1);
            assertThat(e.cell().mark()).contains("judgment");
        }
        var tested = LotEstimate.of(
                prior,
                List.of(wet(
                        "",
                        "",
                        Design.of(20, 1, 1),
                        Map.of(Analyte.CP, of(untested, Analyte.CP).now().center()))));
        assertThat(of(tested, Analyte.CP).now().high90()
                        - of(tested, Analyte.CP).now().low90())
                .isLessThan(0.75
                        * (of(untested, Analyte.CP).now().high90()
                                - of(untested, Analyte.CP).now().low90()));
        FormulaCheck.reEvaluates(untested.weighing());
    }

    @Test
    void whatALaboratoryCalculatesIsNoObservation() {
        assertThatIllegalArgumentException().isThrownBy(() -> wet("", "", Tested.ONE_GRAB, Map.of(Analyte.TDN, 60.0)));
        var printed = List.of(
                new Reading(Analyte.CP, 11, Unit.PERCENT, Basis.DRY_MATTER),
                new Reading(Analyte.TDN, 60, Unit.PERCENT, Basis.DRY_MATTER),
                new Reading(Analyte.RFV, 95, Unit.NONE, Basis.DRY_MATTER),
                new Reading(Analyte.ACP, 10.5, Unit.PERCENT, Basis.DRY_MATTER));
        assertThat(Tested.measured(ReportCheck.check(FeedClass.GRASS_HAY, Optional.empty(), printed)))
                .containsOnlyKeys(Analyte.CP);
    }

    /** Every kind, every way, every analyte at once: nothing breaks, and what was taken moves and narrows. */
    @Test
    void everyKindTakesEveryMeasurement() {
        for (var prior : Prior.all()) {
            var values = new EnumMap<Analyte, Double>(Analyte.class);
            for (var analyte : Analyte.values()) {
                if (analyte.isMeasured()) {
                    values.put(analyte, 1.0);
                }
            }
            prior.cells().stream()
                    .filter(c -> c.analyte().isMeasured())
                    .forEach(c -> values.put(c.analyte(), c.marginal().center()));
            for (var method : Tested.Method.values()) {
                var estimate = LotEstimate.of(
                        prior, List.of(new Tested("A", method, "bag", Design.of(20, 1, 1), 100, values)));
                assertThat(estimate.issues()).isEmpty();
                assertThat(estimate.derived(1)).isNotEmpty();
                for (var e : estimate.estimates()) {
                    assertThat(e.now().center())
                            .isCloseTo(
                                    e.before().center(),
                                    within(1e-6 * e.before().center()));
                    if (e.measured() > 0) {
                        assertThat(e.now().sd()).isLessThan(e.before().sd());
                    }
                }
            }
        }
        var grains = Prior.named("corn_ddgs").orElseThrow();
        var nitrate = LotEstimate.of(grains, List.of(wet("", "", Tested.ONE_GRAB, Map.of(Analyte.NO3N, 40.0))));
        assertThat(nitrate.notes()).singleElement().asString().contains("nobody says");
    }

    @Test
    void nitrateByNirAndANoughtAreLeftOutAndSaid() {
        var prior = prior(FeedClass.CEREAL_HAY);
        var nir = new Tested("", Tested.Method.NIR, "", Tested.ONE_GRAB, 0, Map.of(Analyte.NO3N, 3000.0));
        var estimate = LotEstimate.of(prior, List.of(nir));
        assertThat(of(estimate, Analyte.NO3N).measured()).isZero();
        assertThat(estimate.notes()).singleElement().asString().contains("chemistry");
        var nought = LotEstimate.of(prior, List.of(wet("", "", Tested.ONE_GRAB, Map.of(Analyte.NO3N, 0.0))));
        assertThat(of(nought, Analyte.NO3N).measured()).isZero();
        assertThat(nought.notes()).singleElement().asString().contains("less than");
    }

    /** Fiber by NIR and minerals by wet chemistry on one sheet: each figure as if the whole sheet were by its method. */
    @Test
    void aFigureWithAMethodOfItsOwnCountsAsItWasMeasured() {
        var prior = prior(FeedClass.GRASS_HAY);
        var design = Design.of(20, 1, 1);
        for (var analyte : List.of(Analyte.NDF, Analyte.CA, Analyte.NO3N)) {
            double value = prior.cells().get(prior.index(analyte)).marginal().center() * 1.2;
            var values = Map.of(analyte, value);
            var wet = new Tested("A", Tested.Method.WET, "", design, 100, values);
            var nir = new Tested("A", Tested.Method.NIR, "", design, 100, values);
            var own = new Tested(
                    "A", Tested.Method.NIR, "", design, 100, values, Map.of(analyte, Tested.Method.WET), Map.of());
            var now = of(LotEstimate.of(prior, List.of(own)), analyte).now();
            assertThat(now)
                    .isEqualTo(of(LotEstimate.of(prior, List.of(wet)), analyte).now());
            assertThat(now.sd())
                    .isLessThan(of(LotEstimate.of(prior, List.of(nir)), analyte)
                            .now()
                            .sd());
        }
    }

    /** What a method is printed beside is not always what is counted: nitrogen for protein, KNO3 for NO3-N. */
    @Test
    void theMethodOfAFormIsThatOfWhatItCountsAs() {
        var readings = List.of(
                new Reading(Analyte.N, 1.6, Unit.PERCENT, Basis.DRY_MATTER, Tested.Method.WET),
                new Reading(Analyte.KNO3, 0.4, Unit.PERCENT, Basis.DRY_MATTER, Tested.Method.WET),
                new Reading(Analyte.NDF, 60, Unit.PERCENT, Basis.DRY_MATTER));
        var id = new UUID(0, 1);
        var report = new LabReport(
                id,
                id,
                "",
                "",
                null,
                null,
                LabReport.HowSampled.GRAB,
                readings,
                List.of(),
                Tested.Method.NIR,
                List.of());
        assertThat(report.methods())
                .containsEntry(Analyte.CP, Tested.Method.WET)
                .containsEntry(Analyte.NO3N, Tested.Method.WET)
                .doesNotContainKey(Analyte.NDF);
    }

    /** ADF and NDF typed into each other's row, or a figure as received: asked about, with the analyte named. */
    @Test
    void aReportFarFromItsKindIsAskedAbout() {
        var prior = prior(FeedClass.GRASS_HAY);
        var usual = wet("", "", Design.of(20, 1, 1), Map.of(Analyte.CP, 10.0, Analyte.ADF, 37.0, Analyte.NDF, 61.0));
        assertThat(LotEstimate.of(prior, List.of(usual)).issues()).isEmpty();
        var strange = wet("", "", Design.of(20, 1, 1), Map.of(Analyte.CP, 27.0, Analyte.ADF, 37.0, Analyte.NDF, 61.0));
        assertThat(LotEstimate.of(prior, List.of(usual, strange)).issues())
                .singleElement()
                .satisfies(issue -> {
                    assertThat(issue.field()).isEqualTo(Analyte.CP);
                    assertThat(issue.level()).isEqualTo(Issue.Level.W);
                    assertThat(issue.words()).contains("27 %");
                });
    }

    /** TDN is linear in ADF, so that its spread has a closed form; the equation's own 3 points come on top. */
    @Test
    void derivedFiguresScatterAsTheirEquationsDo() {
        var prior = prior(FeedClass.LEGUME_HAY);
        var estimate = LotEstimate.of(prior, THREE);
        var adf = of(estimate, Analyte.ADF).now();
        var line = AdfEquation.usual(FeedClass.LEGUME_HAY).orElseThrow().equation();
        var tdn = estimate.derived(7).get(0);
        double sd = Math.hypot(line.slope() * adf.sd(), 3);
        assertThat(tdn.analyte()).isEqualTo(Analyte.TDN);
        assertThat(tdn.mean()).isCloseTo(line.intercept() + line.slope() * adf.center(), within(SAME));
        // 4,000 draws: the standard error of a spread is sd/sqrt(2n), of a 5 % quantile 2.11·sd/sqrt(n).
        assertThat(tdn.sd()).isCloseTo(sd, within(4 * sd / Math.sqrt(4000)));
        assertThat(tdn.low90()).isCloseTo(tdn.mean() - 1.645 * sd, within(4 * 2.11 * sd / Math.sqrt(4000)));
        assertThat(estimate.derived(7)).isEqualTo(estimate.derived(7)).isNotEqualTo(estimate.derived(8));
        assertThat(estimate.derived(7)).extracting(Derived::analyte).contains(Analyte.NEM, Analyte.NEG, Analyte.RFV);
        assertThat(tdn.sd())
                .isLessThan(
                        estimate.derivedBefore(OptionalDouble.empty(), 7).get(0).sd());
    }

    @Test
    void aKindIsFoundByItsClassOrByItsFeedInTheBook() {
        var meadow = FeedBook.published().rows(FeedClass.GRASS_HAY).stream()
                .filter(r -> r.group().equals("meadow hay"))
                .findFirst();
        assertThat(Prior.of(FeedClass.GRASS_HAY, meadow).orElseThrow().id()).isEqualTo("native_or_meadow_hay");
        assertThat(prior(FeedClass.GRASS_HAY).id()).isEqualTo("cool_season_grass_hay");
        assertThat(Prior.of(FeedClass.PROTEIN_MEAL, Optional.empty())).isEmpty();
        assertThat(Prior.all()).hasSize(15);
        assertThat(prior(FeedClass.LEGUME_HAY).cells()).noneMatch(c -> c.analyte() == Analyte.TDN);
    }
}
