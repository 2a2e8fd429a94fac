package haywright.forage;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import haywright.forage.book.FeedBook;
import haywright.forage.book.Prior;
import haywright.forage.lab.LabReport;
import haywright.forage.lab.Reading;
import haywright.forage.lab.ReportCheck;
import haywright.forage.lab.Tested;
import haywright.forage.lot.LotComposition;
import haywright.forage.lot.LotEstimate;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** A report moves what it measured and what follows from that, and nothing else. */
class ReportMovesOnlyItsOwnTest {
    private static final List<Analyte> ENERGY = List.of(Analyte.TDN, Analyte.NEM, Analyte.NEG);
    private static final List<Analyte> FEEDING = Stream.concat(
                    ENERGY.stream(), Stream.of(Analyte.CP, Analyte.ADF, Analyte.NDF, Analyte.CA, Analyte.P))
            .toList();

    private static LotComposition made(FeedClass feedClass, Optional<FeedBook.Row> row, List<LabReport> reports) {
        var estimate = Prior.of(feedClass, row)
                .map(kind -> LotEstimate.of(
                        kind,
                        reports.stream()
                                .map(report -> new Tested(
                                        "",
                                        Tested.Method.WET,
                                        "",
                                        Tested.ONE_GRAB,
                                        0,
                                        Tested.measured(ReportCheck.check(feedClass, row, report.readings()))))
                                .toList()));
        return LotComposition.of(feedClass, row, reports, estimate);
    }

    private static LabReport report(Reading... readings) {
        return new LabReport(
                new UUID(0, 1),
                new UUID(0, 2),
                "",
                "",
                null,
                null,
                LabReport.HowSampled.GRAB,
                List.of(readings),
                List.of());
    }

    private static void leavesAlone(List<Analyte> figures, FeedClass feedClass, Reading reading) {
        var row = FeedBook.published().usual(feedClass);
        assumeTrue(row.isPresent());
        var before = made(feedClass, row, List.of());
        var after = made(feedClass, row, List.of(report(reading)));
        assertThat(after.energy().way()).isEqualTo(before.energy().way());
        for (var analyte : figures) {
            var was = before.composition().value(analyte);
            var is = after.composition().value(analyte);
            assertThat(is.isPresent()).as(analyte.id()).isEqualTo(was.isPresent());
            if (was.isPresent()) {
                assertThat(is.getAsDouble()).as(analyte.id()).isCloseTo(was.getAsDouble(), within(1e-9));
            }
        }
    }

    @ParameterizedTest
    @EnumSource(FeedClass.class)
    void ofMoistureAlone(FeedClass feedClass) {
        leavesAlone(
                FEEDING, feedClass, new Reading(Analyte.MOISTURE, 14.2, Analyte.MOISTURE.unit(), Basis.AS_RECEIVED));
    }

    /** Lots with more nitrate have more protein, so protein may follow; energy comes from fiber, which nobody measured. */
    @ParameterizedTest
    @EnumSource(FeedClass.class)
    void ofNitrateAlone(FeedClass feedClass) {
        leavesAlone(ENERGY, feedClass, new Reading(Analyte.NO3N, 300, Analyte.NO3N.unit(), Basis.DRY_MATTER));
    }

    /** What is measured is no fiber: TDN stays the book's, however protein goes with fiber. */
    @ParameterizedTest
    @EnumSource(
            value = FeedClass.class,
            names = {"GRASS_HAY", "MIXED_HAY", "CEREAL_HAY", "STRAW"})
    void proteinAloneLeavesTdnTheBooks(FeedClass feedClass) {
        var row = FeedBook.published().usual(feedClass);
        var after =
                made(feedClass, row, List.of(report(new Reading(Analyte.CP, 8, Analyte.CP.unit(), Basis.DRY_MATTER))));
        assertThat(after.composition().value(Analyte.TDN)).isEqualTo(after.bookTdn());
    }
}
