package haywright.forage;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import haywright.FormulaCheck;
import haywright.chance.Draws;
import haywright.chance.Normal;
import haywright.forage.book.BookSpread;
import haywright.forage.book.FeedBook;
import haywright.forage.book.Prior;
import haywright.forage.book.WidestSpread;
import haywright.forage.lab.LabReport;
import haywright.forage.lab.Reading;
import haywright.forage.lab.Tested;
import haywright.forage.lot.LotComposition;
import haywright.forage.lot.LotEstimate;
import haywright.forage.lot.ResultError;
import haywright.forage.lot.Weighed;
import haywright.quantity.Unit;
import haywright.sampling.Design;
import haywright.workings.Origin;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;

/** What a lot is made of once its estimate is its composition. Expected values by closed forms, worked here. */
class LotAsEstimatedTest {
    private static final double SAME = 1e-9;
    private static final FeedBook BOOK = FeedBook.published();

    private static LabReport report(Reading... readings) {
        return new LabReport(
                new UUID(0, 1),
                new UUID(0, 2),
                "A",
                "",
                null,
                LocalDate.of(2026, 10, 14),
                LabReport.HowSampled.PLAN,
                List.of(readings),
                List.of());
    }

    private static LotComposition made(FeedBook.Row row, int places, Reading... readings) {
        var prior = Prior.of(row.feedClass(), Optional.of(row)).orElseThrow();
        var tested = new ArrayList<Tested>();
        for (var reading : readings) {
            tested.add(new Tested(
                    "A",
                    Tested.Method.WET,
                    "bag",
                    Design.of(places, 1, 1),
                    0,
                    Map.of(reading.analyte(), reading.value())));
        }
        return LotComposition.of(
                row.feedClass(),
                Optional.of(row),
                readings.length == 0 ? List.of() : List.of(report(readings)),
                Optional.of(LotEstimate.of(prior, tested)));
    }

    static List<FeedBook.Row> rowsWithASpread() {
        return BOOK.rows().stream()
                .filter(r -> Prior.of(r.feedClass(), Optional.of(r)).isPresent())
                .toList();
    }

    static List<FeedBook.Row> rowsWithTheirOwnSpread() {
        return rowsWithASpread().stream()
                .filter(r -> Prior.of(r.feedClass(), Optional.of(r))
                        .orElseThrow()
                        .id()
                        .equals(r.id()))
                .filter(r -> BookSpread.prior(r).isPresent())
                .toList();
    }

    @ParameterizedTest
    @MethodSource("rowsWithASpread")
    void anUntestedLotKeepsTheFiguresOfItsRowAndNeverGetsNitrate(FeedBook.Row row) {
        var plain =
                LotComposition.of(row.feedClass(), Optional.of(row), List.of()).composition();
        var lot = made(row, 1);
        plain.values().forEach((analyte, known) -> {
            if (lot.composition().knows(analyte)) { // a part that its row's own whole rules out is left out
                assertThat(lot.composition().value(analyte).orElseThrow())
                        .as("%s", analyte)
                        .isCloseTo(known.value(), within(SAME));
            }
        });
        assertThat(lot.composition().knows(Analyte.NO3N)).isFalse();
        var cell = lot.estimate().orElseThrow().prior().cells().stream()
                .filter(c -> c.analyte() == Analyte.CP)
                .findFirst();
        cell.ifPresent(c -> plain.value(Analyte.CP)
                .ifPresent(cp -> assertThat(c.marginal().mean()).isCloseTo(cp, within(SAME))));
    }

    /**
     * Barley of the row C048: protein 12.8 in the middle, lots differ by 1.3, one load by 1.4, a laboratory by 0.5 in all;
     * its kind does not hang together.
     */
    @Test
    void aMeasuredFigureMovesToItsKindAsFarAsItCanMissTheLot() {
        var row = BOOK.row("C048").orElseThrow();
        var lot = made(row, 4, new Reading(Analyte.CP, 14, Unit.PERCENT, Basis.DRY_MATTER));
        double kind = 1 / (1.3 * 1.3);
        double result = 1 / (1.4 * 1.4 / 4 + 0.5 * 0.5);
        var known = lot.composition().values().get(Analyte.CP);
        assertThat(known).isNotNull();
        assertThat(known.value()).isCloseTo((12.8 * kind + 14 * result) / (kind + result), within(SAME));
        assertThat(known.lot()).isNotNull();
        assertThat(known.lot().sd()).isCloseTo(1 / Math.sqrt(kind + result), within(SAME));
        var by = ((Origin.Computed) known.origin()).by();
        FormulaCheck.reEvaluates(by);
        assertThat(((Weighed) by).words())
                .isEqualTo("report of Oct 14, 2026, A says 14 %; moved toward its kind, barley grain");
        // What was not measured stays where it was: barley's figures are taken apart.
        assertThat(lot.composition().value(Analyte.NDF)).hasValue(18.3);
    }

    /**
     * Nitrate of one bale about the lot 45 %; a laboratory 15 %; lots of a kind by 1.1 on the logarithm. Of 100 normal
     * values 99 lie below 2.3263 and 90 below 1.2816. The lot is the mean of its bales, which of a skewed spread lies above the middle bale.
     */
    @ParameterizedTest
    @CsvSource({"350", "100", "3000"})
    void nitrateOfALotCountsAtItsUpperNinetyAndNeverBelowWhatWasFound(double found) {
        var row = BOOK.usual(FeedClass.CEREAL_HAY).orElseThrow();
        var lot = made(row, 10, new Reading(Analyte.NO3N, found, Unit.PPM, Basis.DRY_MATTER));
        double more = Math.max(1, 50 / found / 0.15); // two results within 100 ppm are no different
        double error = Math.log1p(0.45 * 0.45 / 10) + Math.log1p(0.15 * 0.15 * more * more);
        double kind = 1.1 * 1.1;
        double usual = lot.estimate()
                .orElseThrow()
                .estimate(Analyte.NO3N)
                .orElseThrow()
                .before()
                .center();
        double left = 1 / (1 / kind + 1 / error);
        double middle = left * (Math.log(usual) / kind + Math.log(found) / error);
        double apart = Math.log1p(0.45 * 0.45);
        double bale = Math.exp(middle - apart / 2 + 2.3263478740408408 * Math.sqrt(left + apart));
        double whole = Math.exp(middle + 1.2815515655446004 * Math.sqrt(left));
        assertThat(lot.composition().value(Analyte.NO3N)).hasValue(found);
        assertThat(lot.composition().oneInAHundred(Analyte.NO3N).orElseThrow()).isCloseTo(bale, within(1e-6 * bale));
        assertThat(lot.composition().upper(Analyte.NO3N).orElseThrow())
                .isCloseTo(Math.max(found, whole), within(1e-6 * whole));
    }

    /**
     * The one study of nitrate bale by bale (Kansas, 23 large round bales of sudangrass from one field): 1,525 to 6,250 about
     * a mean of 2,764. Of such a lot, were it known exactly, the highest of 23 must be no rarity and one in a hundred
     * must lie above it.
     */
    @Test
    void theWorstBaleOfTheStudyIsNoRarity() {
        var prior = Prior.of(FeedClass.CEREAL_HAY, Optional.empty()).orElseThrow();
        double apart = ResultError.ofOneUnit(prior, Analyte.NO3N);
        double far = (Math.log(6250.0 / 2764) + apart / 2) / Math.sqrt(apart);
        double seenIn23 = 1 - Math.pow(Normal.cumulative(far), 23);
        assertThat(seenIn23).isBetween(0.2, 0.8);
        assertThat(Math.exp(2.3263478740408408 * Math.sqrt(apart) - apart / 2)).isGreaterThan(6250.0 / 2764);
    }

    @Test
    void energyFollowsNdfWhereAdfWasNotMeasured() {
        var row = BOOK.usual(FeedClass.GRASS_HAY).orElseThrow();
        var poor = made(row, 20, new Reading(Analyte.NDF, 72, Unit.PERCENT, Basis.DRY_MATTER));
        var rich = made(row, 20, new Reading(Analyte.NDF, 54, Unit.PERCENT, Basis.DRY_MATTER));
        assertThat(poor.composition().value(Analyte.TDN).orElseThrow())
                .isLessThan(rich.composition().value(Analyte.TDN).orElseThrow() - 2);
        assertThat(poor.notes()).anyMatch(n -> n.contains("ADF that goes with the measured NDF"));
    }

    @Test
    void theRangeOfEnergyLiesAroundTheFigureThatIsTaken() {
        for (var row : rowsWithASpread()) {
            var lot = made(row, 1);
            lot.derived(3).forEach(d -> {
                if (d.analyte() == Analyte.TDN) {
                    assertThat(d.mean())
                            .as(row.id())
                            .isCloseTo(lot.composition().value(Analyte.TDN).orElseThrow(), within(0.2));
                }
            });
        }
    }

    /** Row C079: 24 samples of wheat distillers grains, protein 38.9 and 2.4 about it, fat by 1.0 on a mean below 10. */
    @Test
    void aFeedWithoutAKindScattersAsItsRowPrints() {
        var row = BOOK.row("C079").orElseThrow();
        var prior = Prior.of(row.feedClass(), Optional.of(row)).orElseThrow();
        assertThat(prior.cells())
                .filteredOn(c -> c.analyte() == Analyte.CP)
                .singleElement()
                .satisfies(c -> {
                    assertThat(c.marginal()).isEqualTo(new Marginal(38.9, 2.4, false));
                    assertThat(c.mark()).isEqualTo("feed book: spread of 24 samples");
                });
        double fat = row.composition().value(Analyte.FAT).orElseThrow();
        assertThat(prior.cells())
                .filteredOn(c -> c.analyte() == Analyte.FAT)
                .singleElement()
                .satisfies(c -> {
                    assertThat(c.marginal().mean()).isCloseTo(fat, within(SAME));
                    assertThat(c.marginal().standardDeviation()).isCloseTo(1.0, within(SAME));
                });
        var other = BOOK.row("C134").orElseThrow(); // malt sprouts print no spread; row C076 of the same feed does
        assertThat(Prior.of(other.feedClass(), Optional.of(other)).orElseThrow().cells())
                .isNotEmpty()
                .allMatch(
                        c -> c.mark().equals("feed book row C076: spread of 382 samples") || WidestSpread.isWidest(c));
        var meal = BOOK.usual(FeedClass.PROTEIN_MEAL);
        assertThat(Prior.of(FeedClass.PROTEIN_MEAL, meal).orElseThrow().cells())
                .as("nobody measured meals: the widest of such feeds, marked")
                .isNotEmpty()
                .allMatch(WidestSpread::isWidest);
    }

    /** 2,000 lots drawn from what the row prints, one load of each grabbed and sent to one laboratory. */
    @ParameterizedTest
    @MethodSource("rowsWithTheirOwnSpread")
    void ninetyOfAHundredLotsLieInsideTheirRange(FeedBook.Row row) {
        var prior = Prior.of(row.feedClass(), Optional.of(row)).orElseThrow();
        var draws = new Draws(11);
        var inside = new EnumMap<Analyte, Integer>(Analyte.class);
        int lots = 2000;
        // Feed of the mill: protein 1.4 from load to load; a laboratory 0.5 in all.
        double error = Math.hypot(1.4, 0.5);
        for (int lot = 0; lot < lots; lot++) {
            var z = new double[prior.gaussian().size()];
            for (int i = 0; i < z.length; i++) {
                z[i] = draws.normal();
            }
            var truth = prior.gaussian().at(z);
            double seen = truth[prior.index(Analyte.CP)] + error * draws.normal();
            var tested = new Tested("A", Tested.Method.WET, "", Tested.ONE_GRAB, 0, Map.of(Analyte.CP, seen));
            for (var e : LotEstimate.of(prior, List.of(tested)).estimates()) {
                double t = truth[prior.index(e.analyte())];
                double on = e.now().log() ? Math.exp(t) : t;
                if (on >= e.now().low90() && on <= e.now().high90()) {
                    inside.merge(e.analyte(), 1, Integer::sum);
                }
            }
        }
        assertThat(inside).hasSize((int)
                prior.cells().stream().filter(c -> c.analyte() != Analyte.TDN).count());
        inside.forEach((analyte, count) ->
                assertThat(100.0 * count / lots).as("%s", analyte).isBetween(88.0, 92.0));
    }
}
