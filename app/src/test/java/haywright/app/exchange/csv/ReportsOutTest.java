package haywright.app.exchange.csv;

import static org.assertj.core.api.Assertions.assertThat;

import haywright.app.document.TinLantern;
import haywright.app.exchange.lab.Decimals;
import haywright.app.exchange.lab.Heading;
import haywright.app.exchange.lab.Understood;
import haywright.app.exchange.lab.Vocabulary;
import haywright.app.words.Said;
import haywright.forage.Analyte;
import haywright.forage.Basis;
import haywright.forage.lab.LabReport;
import haywright.forage.lab.NotMeasured;
import haywright.forage.lab.NotMeasured.Why;
import haywright.forage.lab.Reading;
import haywright.forage.lab.Tested;
import haywright.outlook.Yard;
import haywright.quantity.Unit;
import haywright.ranch.Ranch;
import java.io.IOException;
import java.io.StringReader;
import java.time.LocalDate;
import java.util.List;
import java.util.UUID;
import org.apache.commons.csv.CSVFormat;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Reports that leave as CSV: whole, harmless in a spreadsheet, and the same when they come in again. */
class ReportsOutTest {
    private static final Ranch DEMO = TinLantern.ranch();

    private static LabReport report(String laboratory, String code, List<Reading> readings, NotMeasured... said) {
        return new LabReport(
                UUID.randomUUID(),
                DEMO.lots().keySet().iterator().next(),
                laboratory,
                code,
                LocalDate.of(2026, 9, 1),
                null,
                LabReport.HowSampled.GRAB,
                readings,
                List.of(),
                Tested.Method.NIR,
                List.of(said));
    }

    private static Ranch with(LabReport... reports) {
        var ranch = DEMO;
        for (var id : DEMO.reports().keySet()) {
            ranch = ranch.withoutReport(id);
        }
        for (var report : reports) {
            ranch = ranch.with(report);
        }
        return ranch;
    }

    private static Understood in(String csv) {
        return ReportCsv.read(csv, Decimals.BY_SHEET, null, Vocabulary.HOUSE);
    }

    @Test
    void aFigureWithAMethodOfItsOwnSaysSoInItsLine() {
        var csv = ReportsOut.reports(with(report(
                "L",
                "S",
                List.of(
                        new Reading(Analyte.NDF, 60, Unit.PERCENT, Basis.DRY_MATTER),
                        new Reading(Analyte.CA, 0.5, Unit.PERCENT, Basis.DRY_MATTER, Tested.Method.WET)))));
        assertThat(csv.lines().filter(line -> line.contains("Calcium")))
                .singleElement()
                .asString()
                .contains("wet chemistry");
        assertThat(csv.lines().filter(line -> line.contains("Neutral")))
                .singleElement()
                .asString()
                .contains("NIR");
    }

    /** As the file says them, in the order of the report. */
    private static List<String> said(LabReport report) {
        var said = new java.util.ArrayList<String>();
        report.readings()
                .forEach(r -> said.add(r.analyte() + " " + r.value() + " "
                        + (r.analyte().hasBasis() ? r.basis() : null) + " " + r.unit()));
        report.notMeasured().forEach(n -> said.add(n.analyte() + " " + n.why() + n.limit() + " " + n.basis()));
        return said;
    }

    private static List<String> said(Understood.Sample sample) {
        return sample.cells().stream()
                .map(cell -> {
                    var none = Said.of(cell.text());
                    var unit = cell.unit() == null && none.isEmpty() ? Unit.NONE : cell.unit();
                    return none.isPresent()
                            ? cell.analyte() + " " + none.get().why()
                                    + (none.get().limit().isEmpty()
                                            ? null
                                            : Double.valueOf(none.get().limit())) + " "
                                    + cell.basis()
                            : cell.analyte() + " " + Double.parseDouble(cell.text()) + " " + cell.basis() + " " + unit;
                })
                .toList();
    }

    @Test
    void everyFigureComesBackAsItWas() {
        var one = report(
                "Hay, Straw \"& Sons\"",
                "7",
                List.of(
                        new Reading(Analyte.CP, 10.25, Unit.PERCENT, Basis.AS_RECEIVED),
                        new Reading(Analyte.CP, 11.4, Unit.PERCENT, Basis.DRY_MATTER),
                        new Reading(Analyte.NEM, 53.0, Unit.MCAL_PER_CWT, Basis.NINETY_PCT),
                        new Reading(Analyte.DCAD, -120, Unit.MEQ_PER_KG, Basis.DRY_MATTER),
                        new Reading(Analyte.RFV, 101, Unit.NONE, Basis.DRY_MATTER)),
                new NotMeasured(Analyte.CA, Why.LESS_THAN, 0.01, Unit.PERCENT, Basis.DRY_MATTER),
                new NotMeasured(Analyte.SE, Why.NOT_DETECTED, null, null, null),
                new NotMeasured(Analyte.CU, Why.NOT_TESTED, null, null, null));
        var sameCode = report("", "7", List.of(new Reading(Analyte.CP, 9, Unit.PERCENT, Basis.DRY_MATTER)));
        var noCode = report("", "", List.of(new Reading(Analyte.CP, 8, Unit.GRAM_PER_KG, Basis.DRY_MATTER)));
        var back = in(ReportsOut.reports(with(one, sameCode, noCode)));
        assertThat(back.samples()).hasSize(3);
        assertThat(said(back.samples().get(0))).containsExactlyInAnyOrderElementsOf(said(one));
        assertThat(said(back.samples().get(1))).isEqualTo(said(sameCode));
        assertThat(said(back.samples().get(2))).isEqualTo(said(noCode));
        var sample = back.samples().get(0);
        assertThat(sample.code()).isEqualTo("7");
        assertThat(sample.laboratory()).isEqualTo("Hay, Straw \"& Sons\"");
        assertThat(sample.sampled()).isEqualTo("2026-09-01");
        assertThat(sample.method()).isEqualTo(Tested.Method.NIR);
        assertThat(back.samples().get(2).lot())
                .isEqualTo(DEMO.lots().values().iterator().next().name());
    }

    @ParameterizedTest
    @ValueSource(strings = {"=1+2", "+1+2", "-2+3", "@SUM(A1)", "\t=1", " =1", "＝1", "=cmd|' /C calc'!A0", "\u0001x"})
    void noCellCanBeRunByASpreadsheetAndEachComesBackAsItWas(String words) throws IOException {
        var csv = ReportsOut.reports(
                with(report(words, "a", List.of(new Reading(Analyte.CP, 9, Unit.PERCENT, Basis.DRY_MATTER)))));
        for (var line : CSVFormat.RFC4180.parse(new StringReader(csv))) {
            for (var cell : line) {
                assertThat(cell).doesNotMatch("(?s)[\\s\\p{Cntrl}]*[=+@＝].*|\\p{Cntrl}.*");
                assertThat(cell).doesNotMatch("(?s)-.*[^0-9.].*");
            }
        }
        assertThat(in(csv).samples().get(0).laboratory().strip()).isEqualTo(words.strip());
    }

    @ParameterizedTest
    @EnumSource(Analyte.class)
    void theNameOfEachAnalyteIsUnderstood(Analyte analyte) {
        assertThat(Heading.of(analyte.words()
                                + (Heading.wholeOf(analyte) == null
                                        ? ""
                                        : ", " + Heading.unitWords(analyte, analyte.unit())))
                        .map(Heading::analyte))
                .contains(analyte);
    }

    @Test
    void whatEachLotIsMadeOfHasItsUnitInTheHeading() throws IOException {
        var csv = ReportsOut.lots(new Yard(DEMO, LocalDate.of(2026, 11, 25)), 1);
        var lines = CSVFormat.RFC4180
                .builder()
                .setHeader()
                .setSkipHeaderRecord(true)
                .get()
                .parse(new StringReader(csv))
                .getRecords();
        assertThat(lines).hasSameSizeAs(DEMO.lots().values());
        for (var line : lines) {
            double low = Double.parseDouble(line.get("Crude protein, likely from, % DM"));
            double now = Double.parseDouble(line.get("Crude protein, % DM"));
            double high = Double.parseDouble(line.get("Crude protein, likely to, % DM"));
            assertThat(now).isBetween(low, high);
            assertThat(high).isGreaterThan(low);
        }
    }

    /** A spreadsheet that is handed "0.02" would take it for what was found. */
    @Test
    void aLimitIsNoFigureAmongTheLots() throws IOException {
        var ranch = with(report(
                "L",
                "S",
                List.of(new Reading(Analyte.CP, 9, Unit.PERCENT, Basis.DRY_MATTER)),
                new NotMeasured(Analyte.SE, NotMeasured.Why.LESS_THAN, 0.02, Unit.PPM, Basis.DRY_MATTER)));
        var lines = CSVFormat.RFC4180
                .builder()
                .setHeader()
                .setSkipHeaderRecord(true)
                .get()
                .parse(new StringReader(ReportsOut.lots(new Yard(ranch, LocalDate.of(2026, 11, 25)), 1)))
                .getRecords();
        assertThat(lines).anyMatch(line -> line.get("Selenium, ppm DM").equals("<0.02"));
    }
}
