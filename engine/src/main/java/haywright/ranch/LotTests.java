package haywright.ranch;

import haywright.forage.FeedBook;
import haywright.forage.LabReport;
import haywright.forage.LotEstimate;
import haywright.forage.Prior;
import haywright.forage.ReportCheck;
import haywright.forage.Tested;
import haywright.sampling.Design;
import haywright.sampling.Taken;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.Optional;

/** What a ranch's reports say of one of its lots, each as far as the sheet it was taken by lets it speak. */
public final class LotTests {
    /** What a plan counts for when its sheet is not here: half of the twenty that published rules ask for (judgement). */
    public static final int CORES_WITHOUT_SHEET = 10;

    private LotTests() {}

    /** Empty where nobody knows how far lots of this feed differ. */
    public static Optional<LotEstimate> estimate(Ranch ranch, Lot lot) {
        return Prior.of(lot.feedClass(), FeedBook.published().rowFor(lot.bookRow(), lot.feedClass()))
                .map(prior -> LotEstimate.of(
                        prior,
                        ranch.reportsOn(lot.id()).stream()
                                .map(report -> tested(ranch, lot, report))
                                .toList()));
    }

    private static Tested tested(Ranch ranch, Lot lot, LabReport report) {
        var row = FeedBook.published().rowFor(lot.bookRow(), lot.feedClass());
        var design = report.howSampled() == LabReport.HowSampled.PLAN ? design(ranch, lot, report) : Tested.ONE_GRAB;
        int units = LotSubject.of(lot).units();
        return new Tested(
                report.laboratory(),
                Objects.requireNonNullElse(report.method(), Tested.Method.UNKNOWN),
                report.sampleCode(),
                design,
                design.units() > units ? 0 : units,
                Tested.measured(ReportCheck.check(lot.feedClass(), row, report.readings())));
    }

    /** As the sheet came back: the one whose code stands on the bag, else the newest of the lot. */
    private static Design design(Ranch ranch, Lot lot, LabReport report) {
        List<Sampling> back = ranch.samplingsOf(lot.id()).stream()
                .filter(s -> s.taken() != null)
                .sorted(Comparator.comparing(Sampling::made).reversed())
                .toList();
        return back.stream()
                .filter(s ->
                        report.sampleCode().strip().toUpperCase(Locale.ROOT).startsWith(s.code()))
                .findFirst()
                .or(() -> back.stream().findFirst())
                .map(Sampling::taken)
                .map((Taken taken) -> taken.design(1))
                .orElse(Design.of(CORES_WITHOUT_SHEET, 1, 1));
    }
}
