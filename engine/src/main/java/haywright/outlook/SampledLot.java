package haywright.outlook;

import haywright.ranch.Lot;
import haywright.ranch.Sampling;
import haywright.sampling.Aim;
import haywright.sampling.Design;
import haywright.sampling.Material;
import haywright.sampling.Precision;
import haywright.sampling.SamplingPlan;
import haywright.sampling.Spread;
import haywright.sampling.Subject;
import haywright.sampling.Taken;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * A sampling sheet with what it is taken from.
 *
 * @param subject as it is known now
 */
public record SampledLot(Sampling sheet, Subject subject) {
    /** The lot as it is now; as it was when the sheet was made, where the lot is gone or is another material now. */
    public static SampledLot of(Sampling sheet, @Nullable Lot now) {
        var site = sheet.site();
        if (now != null && LotSubject.material(now) == sheet.material()) {
            var subject = LotSubject.of(now);
            return new SampledLot(sheet, site == null ? subject : site.onto(subject));
        }
        var material = sheet.material();
        return new SampledLot(
                sheet,
                site != null
                        ? site.alone(material)
                        : Subject.of(
                                material, material.isDrawn() ? sheet.picks().size() : 0));
    }

    /** The plan as it was printed. */
    public SamplingPlan plan() {
        var aim = new Aim(
                sheet.rule(),
                sheet.analyte(),
                sheet.halfWidth(),
                sheet.confidencePercent(),
                sheet.purpose(),
                sheet.seed(),
                null);
        return SamplingPlan.made(subject, aim, Design.of(sheet.picks().size(), sheet.increments(), sheet.analyses()));
    }

    /** How sure the answer is with what was really taken; empty until the sheet is back. */
    public Optional<Precision> reached() {
        return Optional.ofNullable(sheet.taken()).flatMap(taken -> reached(taken, sheet.analyses()));
    }

    /** The same, for the bag of one composite. */
    public Optional<Precision> reached(Taken taken, int analyses) {
        if (sheet.material() == Material.STOCK_WATER) {
            return Optional.empty();
        }
        var crop = subject.crop();
        var spread = Spread.ofBook(crop == null ? sheet.material().usualCrop() : crop, sheet.analyte());
        int lotUnits = sheet.material().isDrawn() ? Math.max(subject.units(), taken.units()) : 0;
        return Optional.of(new Precision(spread, taken.design(analyses), lotUnits, sheet.confidencePercent()));
    }
}
