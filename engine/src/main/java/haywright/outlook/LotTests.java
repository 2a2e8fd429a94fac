package haywright.outlook;

import haywright.forage.book.FeedBook;
import haywright.forage.book.Prior;
import haywright.forage.lab.LabReport;
import haywright.forage.lab.Tested;
import haywright.forage.lot.LotEstimate;
import haywright.ranch.Lot;
import haywright.ranch.Ranch;
import haywright.ranch.Sampling;
import haywright.sampling.Design;
import haywright.sampling.Taken;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/** What a ranch's reports say of one of its lots, each as far as the sheet it was taken by lets it speak. */
public final class LotTests {
    /** What a plan counts for when its sheet is not here: half of the twenty that published rules ask for (judgment). */
    public static final int CORES_WITHOUT_SHEET = 10;

    private LotTests() {}

    /** Empty where nobody knows how far lots of this feed differ. */
    public static Optional<LotEstimate> estimate(Ranch ranch, Lot lot) {
        return Prior.of(lot.feedClass(), lot.bookRow())
                .map(prior -> LotEstimate.of(
                        prior,
                        SameHay.counted(ranch, lot.id()).stream()
                                .map(report -> tested(ranch, lot, report))
                                .toList()));
    }

    public static Tested tested(Ranch ranch, Lot lot, LabReport report) {
        var row = FeedBook.published().rowFor(lot.bookRow(), lot.feedClass());
        var design = report.howSampled() == LabReport.HowSampled.PLAN ? design(ranch, lot, report) : Tested.ONE_GRAB;
        int units = LotSubject.of(lot).units();
        int counted = design.units() > units ? 0 : units;
        return Tested.of(lot.feedClass(), row, report, composite(ranch, report), design, counted);
    }

    /**
     * As the sheet came back: the one that the code names, else the newest of the lot. A code that names a sheet which is
     * not here, or is another lot's, lets no other speak for it.
     */
    private static Design design(Ranch ranch, Lot lot, LabReport report) {
        var code = BagCode.read(ranch, report.sampleCode());
        var taken = code.isPresent()
                ? code.get().sheetOf(lot).flatMap(s -> s.taken(code.get().composite()))
                : newest(ranch, lot);
        return taken.map(t -> t.design(1)).orElse(Design.of(CORES_WITHOUT_SHEET, 1, 1));
    }

    /** The report on a bag of a sheet, the newest where there are more. @param composite "A", "B", or empty for any bag */
    public static Optional<LabReport> reportOn(Ranch ranch, Sampling sheet, String composite) {
        var lot = sheet.lot();
        var own = lot == null
                ? List.<LabReport>of()
                : ranch.reportsOn(lot).stream()
                        .filter(r -> BagCode.read(ranch, r.sampleCode())
                                .filter(c -> !c.isMiscopied() && sheet.equals(c.sheet()))
                                .filter(c -> c.composite().equals(composite))
                                .isPresent())
                        .toList();
        return own.isEmpty() ? Optional.empty() : Optional.of(own.get(own.size() - 1));
    }

    private static Optional<Taken> newest(Ranch ranch, Lot lot) {
        return ranch.samplingsOf(lot.id()).stream()
                .filter(s -> s.taken() != null)
                .max(Comparator.comparing(Sampling::made))
                .flatMap(s -> s.taken(s.twoComposites() ? "A" : ""));
    }

    /** Bags of one composite share the error of its sampling, whatever number stands on them. */
    private static String composite(Ranch ranch, LabReport report) {
        var code = BagCode.read(ranch, report.sampleCode());
        var sheet = code.map(BagCode::sheet).orElse(null);
        return code.isEmpty() || sheet == null || code.get().isMiscopied()
                ? report.sampleCode()
                : sheet.code() + code.get().composite();
    }
}
