package haywright.forage;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import haywright.FormulaCheck;
import haywright.forage.book.FeedBook;
import haywright.forage.book.Prior;
import haywright.forage.hazard.NitrateClass;
import haywright.forage.lab.LabReport;
import haywright.forage.lab.NotMeasured;
import haywright.forage.lab.Reading;
import haywright.forage.lab.Tested;
import haywright.forage.lot.LotComposition;
import haywright.forage.lot.LotEstimate;
import haywright.quantity.Unit;
import haywright.sampling.Design;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** "Less than" is a bound, in the estimate and in what rations count. */
class LessThanTest {
    private static final Optional<FeedBook.Row> GRASS = FeedBook.published().usual(FeedClass.GRASS_HAY);
    private static final Prior KIND = Prior.of(FeedClass.GRASS_HAY, GRASS).orElseThrow();

    private static Tested below(String laboratory, Map<Analyte, Double> values, Map<Analyte, Double> below) {
        return new Tested(laboratory, Tested.Method.WET, laboratory, Design.of(10, 1, 1), 0, values, Map.of(), below);
    }

    private static LotComposition made(NotMeasured... said) {
        var report = new LabReport(
                new UUID(0, 1),
                new UUID(0, 2),
                "A",
                "",
                null,
                LocalDate.of(2026, 10, 14),
                LabReport.HowSampled.PLAN,
                List.of(
                        new Reading(Analyte.DM, 90, Unit.PERCENT, Basis.AS_RECEIVED),
                        new Reading(Analyte.CP, 9, Unit.PERCENT, Basis.DRY_MATTER)),
                List.of(),
                Tested.Method.WET,
                List.of(said));
        var tested = below(
                "A",
                Map.of(Analyte.CP, 9.0),
                Tested.below(FeedClass.GRASS_HAY, GRASS, report.readings(), report.notMeasured()));
        return LotComposition.of(
                FeedClass.GRASS_HAY, GRASS, List.of(report), Optional.of(LotEstimate.of(KIND, List.of(tested))));
    }

    /** Phosphorus under 0.05 % once became 0.14 %. As received 0.045 of 90 % dry matter is 0.05 on dry matter. */
    @Test
    void phosphorusUnderALimitIsNeverTakenForMore() {
        var lot = made(new NotMeasured(Analyte.P, NotMeasured.Why.LESS_THAN, 0.045, Unit.PERCENT, Basis.AS_RECEIVED));
        var p = lot.composition().values().get(Analyte.P);
        assertThat(p.below()).isCloseTo(0.05, within(1e-12));
        assertThat(p.value()).isLessThanOrEqualTo(0.05);
        assertThat(lot.composition().least(Analyte.P)).as("for a need").hasValue(0);
        assertThat(lot.composition().most(Analyte.P).orElseThrow())
                .as("against a ceiling")
                .isCloseTo(0.05, within(1e-12));
        lot.composition().values().values().forEach(known -> {
            if (known.origin() instanceof haywright.workings.Origin.Computed by) {
                FormulaCheck.reEvaluates(by.by());
            }
        });
    }

    /** Of a feed that nobody knows the spread of, the book's figure is cut at the limit. */
    @Test
    void theBooksFigureIsCutAtTheLimit() {
        var lot = made(new NotMeasured(Analyte.CU, NotMeasured.Why.LESS_THAN, 1.0, Unit.PPM, Basis.DRY_MATTER));
        var copper = lot.composition().values().get(Analyte.CU);
        assertThat(copper.below()).isEqualTo(1.0);
        assertThat(copper.value()).isLessThanOrEqualTo(1.0);
    }

    @Test
    void theLimitOfADangerCountsAsFound() {
        var lot = made(new NotMeasured(Analyte.NO3N, NotMeasured.Why.LESS_THAN, 50.0, Unit.PPM, Basis.DRY_MATTER));
        var nitrate = lot.composition().values().get(Analyte.NO3N);
        assertThat(nitrate.value()).isEqualTo(50);
        assertThat(nitrate.below()).isEqualTo(50);
        assertThat(lot.composition().upper(Analyte.NO3N).orElseThrow()).isGreaterThanOrEqualTo(50);
    }

    /** Printed in both columns, as received "<50" and on dry matter "<50": the one on dry matter counts, and stays a "less than". */
    @ParameterizedTest
    @EnumSource(
            value = Analyte.class,
            names = {"NO3N", "NO3", "KNO3", "HCN"})
    void aLimitInBothColumnsStaysOne(Analyte danger) {
        var received = new NotMeasured(danger, NotMeasured.Why.LESS_THAN, 50.0, Unit.PPM, Basis.AS_RECEIVED);
        var dry = new NotMeasured(danger, NotMeasured.Why.LESS_THAN, 50.0, Unit.PPM, Basis.DRY_MATTER);
        var counted = danger == Analyte.HCN ? danger : Analyte.NO3N;
        var alone = made(dry).composition().values().get(counted);
        for (var lot : List.of(made(received, dry), made(dry, received))) {
            var known = lot.composition().values().get(counted);
            assertThat(known.value()).isEqualTo(alone.value());
            assertThat(known.below()).isNotNull().isEqualTo(alone.below());
        }
    }

    /** Testing never punishes: "not detected" is at least as good as any figure at the usual limit. */
    @ParameterizedTest
    @EnumSource(
            value = Analyte.class,
            names = {"NO3N", "NO3", "KNO3"})
    void nitrateThatWasNotDetectedIsAResult(Analyte form) {
        var lot = made(new NotMeasured(form, NotMeasured.Why.NOT_DETECTED, null, null, null));
        var nitrate = lot.composition().values().get(Analyte.NO3N);
        assertThat(nitrate.below()).isCloseTo(NotMeasured.USUAL_NITRATE_LIMIT_PPM, within(1e-6));
        assertThat(nitrate.value())
                .isLessThanOrEqualTo(NotMeasured.USUAL_NITRATE_LIMIT_PPM + 1e-6)
                .isLessThan(NitrateClass.safeForPregnant().safeUpTo());
        var both = made(
                new NotMeasured(form, NotMeasured.Why.NOT_DETECTED, null, null, null),
                new NotMeasured(Analyte.NO3N, NotMeasured.Why.LESS_THAN, 40.0, Unit.PPM, Basis.DRY_MATTER));
        assertThat(both.composition().value(Analyte.NO3N)).as("a printed limit").hasValue(40);
        var toxin = made(new NotMeasured(Analyte.DON, NotMeasured.Why.NOT_DETECTED, null, null, null));
        assertThat(toxin.composition().knows(Analyte.DON)).isFalse();
    }

    @Test
    void theOrderOfTheReportsDoesNotMatterAndABoundNarrows() {
        var tested = new ArrayList<>(List.of(
                below("A", Map.of(Analyte.CP, 8.0), Map.of(Analyte.P, 0.05, Analyte.S, 0.1)),
                below("B", Map.of(Analyte.CP, 9.5, Analyte.K, 1.4), Map.of(Analyte.P, 0.08)),
                below("C", Map.of(), Map.of(Analyte.CA, 0.3))));
        var one = LotEstimate.of(KIND, tested);
        Collections.reverse(tested);
        var other = LotEstimate.of(KIND, tested);
        for (var estimate : one.estimates()) {
            var again = other.estimate(estimate.analyte()).orElseThrow();
            assertThat(again.now().center())
                    .isCloseTo(
                            estimate.now().center(),
                            within(1e-7 * estimate.now().center()));
            assertThat(again.now().sd()).isCloseTo(estimate.now().sd(), within(1e-7));
        }
        var p = one.estimate(Analyte.P).orElseThrow();
        assertThat(p.measured()).isZero();
        assertThat(p.below()).isEqualTo(0.05);
        assertThat(p.now().sd()).isLessThan(p.before().sd());
        assertThat(p.now().center()).isLessThan(0.08);
        assertThat(one.issues()).as("a bound is no strange figure").isEmpty();
    }

    @Test
    void aFigureOfAnotherReportCountsBeforeABound() {
        var both = LotEstimate.of(
                KIND,
                List.of(below("A", Map.of(Analyte.P, 0.21), Map.of()), below("B", Map.of(), Map.of(Analyte.P, 0.3))));
        assertThat(both.estimate(Analyte.P).orElseThrow().below()).isNull();
    }
}
