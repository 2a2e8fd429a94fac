package haywright.forage.lot;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import haywright.FormulaCheck;
import haywright.forage.Analyte;
import haywright.forage.Basis;
import haywright.forage.FeedClass;
import haywright.forage.book.FeedBook;
import haywright.forage.energy.AdfTdn;
import haywright.forage.energy.NetEnergy;
import haywright.forage.lab.LabReport;
import haywright.forage.lab.NotMeasured;
import haywright.forage.lab.Reading;
import haywright.forage.lab.ReportCheck;
import haywright.forage.lab.Tested;
import haywright.quantity.Unit;
import haywright.workings.Origin;
import haywright.workings.Refused;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class LotCompositionTest {
    private static final Optional<FeedBook.Row> MEADOW = FeedBook.published().row("C161");

    private static Reading dry(Analyte analyte, double value) {
        return new Reading(analyte, value, analyte.unit(), Basis.DRY_MATTER);
    }

    private static Reading wet(Analyte analyte, double value) {
        return new Reading(analyte, value, analyte.unit(), Basis.AS_RECEIVED);
    }

    private static LabReport report(int day, Reading... readings) {
        return new LabReport(
                new UUID(0, day),
                new UUID(0, 0),
                "Tin Valley laboratory",
                "TL-" + day,
                null,
                LocalDate.of(2026, 10, day),
                LabReport.HowSampled.PLAN,
                List.of(readings),
                List.of());
    }

    private static double value(LotComposition lot, Analyte analyte) {
        return lot.composition().value(analyte).orElseThrow();
    }

    private static Origin origin(LotComposition lot, Analyte analyte) {
        return lot.composition().values().get(analyte).origin();
    }

    // 0.40 % KNO3 · 14.007 / 101.10 = 554 ppm NO3-N; 0.25 % NO3 · 14.007 / 62.005 = 565 ppm
    @Test
    void ofTwoFormsOfNitrateTheOneThatSaysMoreCounts() {
        for (var forms : List.of(List.of(0.25, 0.40, 565.0), List.of(0.24, 0.40, 554.0))) {
            var report = report(1, dry(Analyte.NO3, forms.get(0)), dry(Analyte.KNO3, forms.get(1)));
            assertThat(value(LotComposition.of(FeedClass.CEREAL_HAY, Optional.empty(), List.of(report)), Analyte.NO3N))
                    .isCloseTo(forms.get(2), within(0.5));
            assertThat(Tested.measured(ReportCheck.check(FeedClass.CEREAL_HAY, Optional.empty(), report.readings())))
                    .hasEntrySatisfying(Analyte.NO3N, no3n -> assertThat(no3n).isCloseTo(forms.get(2), within(0.5)));
        }
    }

    @Test
    void anUntestedLotIsItsBookRowAndSaysSo() {
        var lot = LotComposition.of(FeedClass.GRASS_HAY, MEADOW, List.of());
        assertThat(value(lot, Analyte.CP)).isEqualTo(7);
        assertThat(value(lot, Analyte.TDN)).isEqualTo(50);
        assertThat(value(lot, Analyte.NEM)).isEqualTo(1.1); // as the row prints it, not from its TDN
        assertThat(origin(lot, Analyte.NEM)).isInstanceOf(Origin.Published.class);
        assertThat(lot.composition().knows(Analyte.RFV)).isFalse();
        assertThat(lot.notes()).first().asString().contains("Not tested", "Meadow hay", "C161");
    }

    @Test
    void aReportWinsOverTheBookAndTheRestIsLent() {
        var lot = LotComposition.of(
                FeedClass.GRASS_HAY,
                MEADOW,
                List.of(report(
                        12, dry(Analyte.DM, 88), wet(Analyte.CP, 8.8), dry(Analyte.ADF, 38), dry(Analyte.NDF, 60))));
        assertThat(value(lot, Analyte.CP)).isCloseTo(10, within(1e-12));
        assertThat(value(lot, Analyte.CA)).isEqualTo(0.61);
        assertThat(value(lot, Analyte.DM)).isEqualTo(88);
        assertThat(origin(lot, Analyte.ADF))
                .isEqualTo(new Origin.Typed("report of Oct 12, 2026, Tin Valley laboratory"));
        // by hand, a native meadow: 98.625 − 1.048·38 = 58.801; RFV = (88.9 − 0.779·38)·(120/60)/1.29
        assertThat(value(lot, Analyte.TDN)).isCloseTo(58.801, within(1e-9));
        assertThat(value(lot, Analyte.RFV)).isCloseTo(59.298 * 2 / 1.29, within(1e-9));
        assertThat(value(lot, Analyte.NEM)).isCloseTo(new NetEnergy(58.801).nem(), within(1e-9));
        assertThat(lot.tdn()).containsInstanceOf(AdfTdn.class);
        assertThat(lot.notes()).anyMatch(n -> n.contains("TDN 58.8 % is from the measured ADF"));
    }

    @Test
    void everyFigureWorkedOutLeadsBackToTheReport() {
        var lot = LotComposition.of(
                FeedClass.MIXED_HAY,
                Optional.empty(),
                List.of(report(
                        12,
                        dry(Analyte.MOISTURE, 12),
                        dry(Analyte.N, 2),
                        wet(Analyte.ADF, 33),
                        wet(Analyte.NDF, 46),
                        dry(Analyte.KNO3, 0.4))));
        int computed = 0;
        for (var known : lot.composition().values().values()) {
            if (known.origin() instanceof Origin.Computed by) {
                computed++;
                FormulaCheck.reEvaluates(by.by());
                var lines = by.by().lines();
                assertThat(lines.get(lines.size() - 1)).isNotNull();
                for (var line : lines) {
                    assertThat(line.inputs()).noneMatch(i -> i.origin() == Origin.TYPED);
                }
            }
        }
        assertThat(computed).isEqualTo(9); // DM, CP, ADF, NDF, TDN, NEm, NEg, RFV, NO3-N
        assertThat(value(lot, Analyte.CP)).isEqualTo(12.5);
        assertThat(value(lot, Analyte.NO3N)).isCloseTo(4000 * 14.007 / 101.10, within(1e-9));
        assertThat(value(lot, Analyte.NO3N)).isCloseTo(4000 / 7.22, within(0.5));
    }

    @Test
    void theNewestReportWinsAnalyteByAnalyteWhateverTheOrder() {
        var older = report(3, dry(Analyte.CP, 9), dry(Analyte.CA, 0.5));
        var newer = report(20, dry(Analyte.CP, 11));
        for (var reports : List.of(List.of(older, newer), List.of(newer, older))) {
            var lot = LotComposition.of(FeedClass.GRASS_HAY, MEADOW, reports);
            assertThat(value(lot, Analyte.CP)).isEqualTo(11);
            assertThat(value(lot, Analyte.CA)).isEqualTo(0.5);
        }
    }

    @Test
    void theLaboratorysTdnStandsWhereNoLineThatWasReadDoes() {
        var straw = LotComposition.of(
                FeedClass.STRAW,
                FeedBook.published().usual(FeedClass.STRAW),
                List.of(report(1, dry(Analyte.ADF, 50), dry(Analyte.TDN, 45.2))));
        assertThat(value(straw, Analyte.TDN)).isEqualTo(45.2);
        assertThat(straw.notes()).anyMatch(n -> n.contains("laboratory's own"));
        var hay = LotComposition.of(
                FeedClass.GRASS_HAY, Optional.empty(), List.of(report(1, dry(Analyte.ADF, 38), dry(Analyte.TDN, 63))));
        assertThat(value(hay, Analyte.TDN)).isCloseTo(59.298, within(1e-9));
        assertThat(hay.notes()).anyMatch(n -> n.contains("The laboratory prints 63 %."));
    }

    @Test
    void printedNetEnergyOfALaboratoryIsNotASecondMeasurement() {
        var lot = LotComposition.of(
                FeedClass.GRASS_HAY, MEADOW, List.of(report(1, dry(Analyte.ADF, 38), dry(Analyte.NEM, 1.9))));
        assertThat(value(lot, Analyte.NEM)).isCloseTo(new NetEnergy(58.801).nem(), within(1e-9));
    }

    @Test
    void impossibleFiguresAreLeftOutAndSaidSo() {
        var lot = LotComposition.of(
                FeedClass.GRASS_HAY,
                MEADOW,
                List.of(report(1, dry(Analyte.CP, 400), dry(Analyte.ADF, 66), dry(Analyte.NDF, 41))));
        assertThat(value(lot, Analyte.CP)).isEqualTo(7);
        assertThat(value(lot, Analyte.ADF)).isEqualTo(44);
        assertThat(value(lot, Analyte.NDF)).isEqualTo(70);
        assertThat(lot.notes())
                .anyMatch(n -> n.contains("Left out of the report of Oct 1, 2026") && n.contains("400 %"));
    }

    @Test
    void theBookDoesNotContradictAReport() {
        var lot = LotComposition.of(FeedClass.GRASS_HAY, MEADOW, List.of(report(1, dry(Analyte.NDF, 42))));
        assertThat(lot.composition().knows(Analyte.ADF)).isFalse();
        assertThat(lot.notes()).anyMatch(n -> n.contains("Acid detergent fiber is left out"));
    }

    @Test
    void dryMatterIsLentByAnotherRowAndSaysWhose() {
        var lot = LotComposition.of(FeedClass.MIXED_HAY, FeedBook.published().usual(FeedClass.MIXED_HAY), List.of());
        assertThat(value(lot, Analyte.DM)).isEqualTo(89);
        assertThat(lot.notes()).anyMatch(n -> n.contains("Dry matter 89 % is that of Alfalfa hay, midbloom"));
    }

    @Test
    void aBoughtFeedGoesThroughTheSameDoor() {
        var tag = List.of(
                new Reading(Analyte.CP, 32, Unit.PERCENT, Basis.AS_RECEIVED),
                new Reading(Analyte.DM, 90, Unit.PERCENT, Basis.AS_RECEIVED));
        var meal = LotComposition.ofTag(
                FeedClass.PROTEIN_MEAL, FeedBook.published().usual(FeedClass.PROTEIN_MEAL), "feed tag", tag);
        assertThat(value(meal, Analyte.CP)).isCloseTo(32 / 0.9, within(1e-9));
        assertThat(value(meal, Analyte.TDN)).isEqualTo(78);
        assertThat(value(meal, Analyte.NEM)).isCloseTo(new NetEnergy(78).nem(), within(1e-9));
        assertThat(LotComposition.ofTag(FeedClass.MINERAL, FeedBook.published().row("C107"), "feed tag", List.of())
                        .composition()
                        .values())
                .containsOnlyKeys(Analyte.DM, Analyte.CA);
    }

    @Test
    void nothingKnownIsNothing() {
        var lot = LotComposition.of(FeedClass.MINERAL, Optional.empty(), List.of());
        assertThat(lot.composition().values()).isEmpty();
        assertThat(lot.tdn()).isEmpty();
    }

    /** Every usual row makes a composition whose workings re-evaluate. */
    @Test
    void everyClassHasSomethingToStartFrom() {
        for (var feedClass : FeedClass.values()) {
            var lot = LotComposition.of(feedClass, FeedBook.published().usual(feedClass), List.of());
            for (var known : lot.composition().values().values()) {
                if (known.origin() instanceof Origin.Computed by) {
                    FormulaCheck.reEvaluates(by.by());
                }
            }
            if (feedClass != FeedClass.MINERAL && feedClass != FeedClass.NPN && feedClass != FeedClass.TUB) {
                assertThat(lot.composition().values())
                        .containsKeys(Analyte.DM, Analyte.CP, Analyte.TDN, Analyte.NEM, Analyte.NEG);
            }
        }
    }

    private static LabReport withNotMeasured(List<Reading> readings, NotMeasured... said) {
        var plain = report(14, readings.toArray(new Reading[0]));
        return new LabReport(
                plain.id(),
                plain.lot(),
                plain.laboratory(),
                plain.sampleCode(),
                plain.sampled(),
                plain.reported(),
                plain.howSampled(),
                plain.readings(),
                plain.confirmed(),
                Tested.Method.WET,
                List.of(said));
    }

    private static NotMeasured less(Analyte analyte, double limit, @Nullable Basis basis) {
        return new NotMeasured(analyte, NotMeasured.Why.LESS_THAN, limit, analyte.unit(), basis);
    }

    @Test
    void lessThanIsABoundAndOnlyThat() {
        var book = value(LotComposition.of(FeedClass.GRASS_HAY, MEADOW, List.of()), Analyte.CA);
        var lot = LotComposition.of(
                FeedClass.GRASS_HAY,
                MEADOW,
                List.of(withNotMeasured(
                        List.of(dry(Analyte.CP, 9)),
                        less(Analyte.CA, 0.01, Basis.DRY_MATTER),
                        new NotMeasured(Analyte.S, NotMeasured.Why.NOT_DETECTED, null, null, null),
                        new NotMeasured(Analyte.K, NotMeasured.Why.NOT_TESTED, null, null, null))));
        assertThat(value(lot, Analyte.CA)).isLessThanOrEqualTo(0.01).isLessThan(book);
        assertThat(lot.composition().values().get(Analyte.CA).below()).isEqualTo(0.01);
        for (var said : List.of(Analyte.S, Analyte.K)) {
            var known = lot.composition().values().get(said);
            assertThat(known == null || known.below() == null)
                    .as("no bound was printed")
                    .isTrue();
        }
    }

    @Test
    void ofADangerTheLimitItselfCountsOnDryMatter() {
        var lot = LotComposition.of(
                FeedClass.CEREAL_HAY,
                Optional.empty(),
                List.of(withNotMeasured(
                        List.of(wet(Analyte.DM, 80)),
                        less(Analyte.NO3N, 200, Basis.AS_RECEIVED),
                        less(Analyte.NO3, 0.1, Basis.AS_RECEIVED)))); // the same danger once more
        assertThat(value(lot, Analyte.NO3N)).isEqualTo(250); // 200 / 0.80
        var untold = LotComposition.of(
                FeedClass.CEREAL_HAY,
                Optional.empty(),
                List.of(withNotMeasured(
                        List.of(wet(Analyte.DM, 80)),
                        new NotMeasured(Analyte.HCN, NotMeasured.Why.NOT_DETECTED, null, null, null))));
        assertThat(untold.composition().knows(Analyte.HCN)).isFalse(); // below a limit that nobody printed
    }

    @Test
    void whatIsNoLimitIsRefused() {
        assertThatThrownBy(() -> new NotMeasured(Analyte.CA, NotMeasured.Why.LESS_THAN, null, null, null))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("less than");
        assertThatThrownBy(() -> less(Analyte.CA, 0, Basis.DRY_MATTER)).isInstanceOf(Refused.class);
        assertThatThrownBy(() ->
                        new NotMeasured(Analyte.CA, NotMeasured.Why.LESS_THAN, 1.0, Unit.MCAL_PER_KG, Basis.DRY_MATTER))
                .isInstanceOf(Refused.class);
        assertThatThrownBy(() -> less(Analyte.CA, 0.01, null)).isInstanceOf(Refused.class);
    }

    /** The higher of two counts until a newer sample was taken by a plan; of two by a plan always the higher. */
    @ParameterizedTest
    @CsvSource({"GRAB, GRAB, 900", "GRAB, PLAN, 100", "PLAN, PLAN, 900", "PLAN, GRAB, 900"})
    void aRetestByPlanClearsWhatAGrabFound(LabReport.HowSampled older, LabReport.HowSampled newer, double counts) {
        var reports = List.of(nitrate(1, older, 900), nitrate(2, newer, 100));
        assertThat(LotComposition.of(FeedClass.CEREAL_HAY, Optional.empty(), reports)
                        .composition()
                        .value(Analyte.NO3N))
                .hasValue(counts);
    }

    /** Twenty cores in one bag do not say that a hot place is gone; one below the first line is no danger. */
    @Test
    void whatOnePlaceHadStaysSaidUntilItsReportIsDeleted() {
        var grab = nitrate(1, LabReport.HowSampled.GRAB, 2400);
        var plan = nitrate(2, LabReport.HowSampled.PLAN, 100);
        var lot = LotComposition.of(FeedClass.CEREAL_HAY, Optional.empty(), List.of(grab, plan));
        assertThat(lot.composition().value(Analyte.NO3N)).hasValue(100);
        assertThat(lot.single()).containsExactly(Map.entry(Analyte.NO3N, 2400.0));
        assertThat(lot.notes()).anyMatch(note -> note.contains("2400") && note.contains("one place"));
        var mild = nitrate(1, LabReport.HowSampled.GRAB, 300);
        assertThat(LotComposition.of(FeedClass.CEREAL_HAY, Optional.empty(), List.of(mild, plan))
                        .single())
                .isEmpty();
        assertThat(LotComposition.of(FeedClass.CEREAL_HAY, Optional.empty(), List.of(plan))
                        .single())
                .isEmpty();
    }

    /** No NIR calibration finds nitrate: a low figure clears nothing, a high one is not passed over. */
    @ParameterizedTest
    @CsvSource({"NIR, 100, ", "NIR, 2400, 2400", "WET, 100, 100"})
    void nitrateByNirClearsNothing(Tested.Method method, double ppm, Double counts) {
        var report = new LabReport(
                new UUID(0, 1),
                new UUID(0, 9),
                "",
                "",
                LocalDate.of(2026, 10, 1),
                null,
                LabReport.HowSampled.PLAN,
                List.of(new Reading(Analyte.NO3N, ppm, Unit.PPM, Basis.DRY_MATTER, method)),
                List.of());
        var lot = LotComposition.of(FeedClass.CEREAL_HAY, Optional.empty(), List.of(report));
        assertThat(lot.composition().value(Analyte.NO3N).stream().boxed().toList())
                .isEqualTo(counts == null ? List.of() : List.of(counts));
    }

    private static LabReport nitrate(int day, LabReport.HowSampled how, double ppm) {
        return new LabReport(
                new UUID(0, day),
                new UUID(0, 9),
                "",
                "",
                LocalDate.of(2026, 10, day),
                null,
                how,
                List.of(new Reading(Analyte.NO3N, ppm, Unit.PPM, Basis.DRY_MATTER)),
                List.of());
    }
}
