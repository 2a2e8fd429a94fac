package haywright.app.report;

import haywright.app.document.TinLantern;
import haywright.forage.Analyte;
import haywright.forage.Basis;
import haywright.forage.lab.LabReport;
import haywright.forage.lab.Reading;
import haywright.quantity.Unit;
import haywright.ranch.Lot;
import java.time.LocalDate;
import java.util.List;
import java.util.UUID;

/** The demo's oat hay, which nobody tested, with a test as each case wants it. */
final class OatHay {
    static final Lot LOT = lot("Oat hay");

    private OatHay() {}

    /** Of the demo, by its name. */
    static Lot lot(String name) {
        return TinLantern.ranch().lots().values().stream()
                .filter(l -> l.name().equals(name))
                .findFirst()
                .orElseThrow();
    }

    /** Percent of dry matter, and nitrate nitrogen in ppm. */
    static LabReport report(double cp, double adf, double no3n) {
        return new LabReport(
                new UUID(5, 5),
                LOT.id(),
                "A",
                "",
                null,
                LocalDate.of(2026, 11, 1),
                LabReport.HowSampled.PLAN,
                List.of(
                        new Reading(Analyte.CP, cp, Unit.PERCENT, Basis.DRY_MATTER),
                        new Reading(Analyte.ADF, adf, Unit.PERCENT, Basis.DRY_MATTER),
                        new Reading(Analyte.NO3N, no3n, Unit.PPM, Basis.DRY_MATTER)),
                List.of());
    }
}
