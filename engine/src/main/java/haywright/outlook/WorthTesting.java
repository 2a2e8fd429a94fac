package haywright.outlook;

import haywright.cattle.herd.Group;
import haywright.forage.Analyte;
import haywright.forage.lab.LabReport;
import haywright.quantity.Unit;
import haywright.ranch.Lot;
import haywright.ranch.Ranch;
import haywright.sampling.Costs;
import haywright.sampling.stock.Stock;
import java.time.LocalDate;
import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/**
 * Whether a lot should be tested now, in a plain sentence. A judgment from what the ranch has said; what the answer
 * would save in dollars is {@link WorthOfASample}.
 */
public record WorthTesting(Verdict verdict, String words) {
    public enum Verdict {
        DANGER,
        YES,
        PERHAPS,
        NO
    }

    /** A lot worth less than so many tests is hardly worth one: judged, a test is then 5 % of its worth. */
    private static final double TESTS_A_LOT_MUST_BE_WORTH = 20;

    private static final int GOES_STALE_MONTHS = 12;

    public static WorthTesting of(Yard yard, Lot lot) {
        var ranch = yard.ranch();
        var reports = SameHay.counted(ranch, lot.id());
        if (lot.isNitrateDanger() && !yard.composition(lot).composition().knows(Analyte.NO3N)) {
            return new WorthTesting(
                    Verdict.DANGER,
                    "Yes, before any is fed: this kind of feed can carry nitrate, and it is not tested.");
        }
        if (lot.stock() instanceof Stock.Standing) {
            return new WorthTesting(
                    Verdict.PERHAPS, "Once it is put up. Until then, clip plots to see what it would make.");
        }
        return reports.isEmpty() ? untested(ranch, lot) : tested(lot, reports, yard.day());
    }

    private static WorthTesting untested(Ranch ranch, Lot lot) {
        var worth = worth(lot);
        double test = Costs.usual(LotSubject.material(lot)).perAnalysis();
        if (worth.isPresent() && worth.getAsDouble() < TESTS_A_LOT_MUST_BE_WORTH * test) {
            return new WorthTesting(
                    Verdict.PERHAPS,
                    String.format(
                            Locale.US,
                            "Hardly: a test costs about $%,.0f, and the lot is worth about $%,.0f.",
                            test,
                            worth.getAsDouble()));
        }
        var fed = ranch.fedNow().values().stream()
                .filter(f -> f.amounts().containsKey(lot.id()))
                .flatMap(f -> Stream.ofNullable(ranch.groups().get(f.group())))
                .toList();
        int head = fed.stream().mapToInt(Group::head).sum();
        var who = fed.isEmpty()
                ? ""
                : String.format(
                        Locale.US,
                        " It is fed to %,d head in %d group%s now.",
                        head,
                        fed.size(),
                        fed.size() == 1 ? "" : "s");
        return new WorthTesting(
                Verdict.YES,
                "Yes: its values are from the feed book alone"
                        + (worth.isPresent()
                                ? String.format(Locale.US, ", and the lot is worth about $%,.0f.", worth.getAsDouble())
                                : ".")
                        + who);
    }

    private static WorthTesting tested(Lot lot, List<LabReport> reports, LocalDate today) {
        var newest = reports.stream()
                .map(WorthTesting::day)
                .filter(day -> day != null)
                .max(LocalDate::compareTo);
        if (newest.isEmpty()) {
            return new WorthTesting(Verdict.NO, "No: it is tested (the report gives no date).");
        }
        var made = lot.madeOn();
        if (made != null && newest.get().isBefore(made)) {
            return new WorthTesting(Verdict.YES, "Yes: the last test is older than the hay.");
        }
        if (newest.get().plusMonths(GOES_STALE_MONTHS).isBefore(today)) {
            return new WorthTesting(
                    Verdict.PERHAPS, "Perhaps: the last test is over a year old, and stored feed loses quality.");
        }
        var lacks = TestedFor.of(lot.feedClass(), reports).lacks();
        if (!lacks.isEmpty()) {
            return new WorthTesting(Verdict.YES, "Yes: not tested for %s.".formatted(lacks));
        }
        if (reports.stream().noneMatch(r -> r.howSampled() == LabReport.HowSampled.PLAN)) {
            return new WorthTesting(
                    Verdict.PERHAPS, "Perhaps: it was not sampled by a plan, so the report may miss the lot.");
        }
        return new WorthTesting(Verdict.NO, "No: it is tested.");
    }

    private static @Nullable LocalDate day(LabReport report) {
        return report.sampled() != null ? report.sampled() : report.reported();
    }

    /** Dollars, where its weight is known. */
    private static OptionalDouble worth(Lot lot) {
        var kg = LotTons.of(lot).kg();
        return kg.isEmpty()
                ? OptionalDouble.empty()
                : OptionalDouble.of(kg.getAsDouble() * UsualPrices.of(lot).in(Unit.DOLLAR_PER_KG));
    }
}
