package haywright.outlook;

import static org.assertj.core.api.Assertions.assertThat;

import haywright.forage.Analyte;
import haywright.forage.Basis;
import haywright.forage.FeedClass;
import haywright.forage.lab.LabReport;
import haywright.forage.lab.NotMeasured;
import haywright.forage.lab.Reading;
import haywright.outlook.TestedFor.Part;
import haywright.quantity.Unit;
import java.util.ArrayList;
import java.util.List;
import java.util.UUID;
import org.junit.jupiter.api.Test;

/** What a lot was tested for is what its reports print, and no more. */
class TestedForTest {
    private static LabReport report(List<NotMeasured> none, Analyte... analytes) {
        var readings = new ArrayList<Reading>();
        for (var analyte : analytes) {
            readings.add(new Reading(analyte, 1, analyte.unit(), Basis.DRY_MATTER));
        }
        return new LabReport(
                UUID.randomUUID(),
                UUID.randomUUID(),
                "",
                "",
                null,
                null,
                LabReport.HowSampled.GRAB,
                readings,
                List.of(),
                null,
                none);
    }

    private static TestedFor of(LabReport... reports) {
        return TestedFor.of(FeedClass.GRASS_HAY, List.of(reports));
    }

    @Test
    void aReportWithoutAProteinFigureIsNoTestForProtein() {
        var nitrate = of(report(List.of(), Analyte.DM, Analyte.NO3N));
        assertThat(nitrate.parts()).containsExactly(Part.NITRATE, Part.DRY_MATTER);
        assertThat(nitrate.isForFeeding()).isFalse();
        assertThat(nitrate.lacks()).contains("protein");
        var both = of(report(List.of(), Analyte.NO3N), report(List.of(), Analyte.CP, Analyte.ADF));
        assertThat(both.isForFeeding()).isTrue();
        assertThat(both.lacks()).isEmpty();
        assertThat(of(report(List.of(), Analyte.CP)).isForFeeding()).isFalse();
        assertThat(of().isForFeeding()).isFalse();
    }

    @Test
    void lessThanIsAResultAndNotTestedIsNone() {
        var less = new NotMeasured(Analyte.CP, NotMeasured.Why.LESS_THAN, 3.0, Unit.PERCENT, Basis.DRY_MATTER);
        var not = new NotMeasured(Analyte.ADF, NotMeasured.Why.NOT_TESTED, null, null, null);
        assertThat(of(report(List.of(less, not))).parts()).containsExactly(Part.PROTEIN);
    }

    @Test
    void ofAMineralAnyFigureIsWhatThereIsToKnow() {
        assertThat(TestedFor.of(FeedClass.MINERAL, List.of(report(List.of(), Analyte.CA)))
                        .isForFeeding())
                .isTrue();
    }
}
