package haywright.forage.lot;

import haywright.forage.Analyte;
import haywright.forage.Composition;
import haywright.forage.FeedClass;
import haywright.forage.Marginal;
import haywright.forage.book.FeedBook;
import haywright.forage.book.Prior;
import haywright.forage.book.WidestSpread;
import haywright.forage.energy.EnergyChoice;
import haywright.forage.energy.Tdn;
import haywright.forage.energy.Weathered;
import haywright.forage.lab.LabReport;
import haywright.forage.lab.Reading;
import haywright.forage.lab.Tested;
import java.time.LocalDate;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * What a lot, or a feed for sale, is made of: where its estimate has each figure; where there is no estimate its
 * reports before the feed book, the newest report first; and energy and nitrate worked out from them.
 *
 * <p>Nitrate stays as it was found and is never filled in from what is usual: see {@link Composition#danger}.
 *
 * <p>What a laboratory works out itself (TDN, net energy, feed values, available protein) is not a second measurement.
 * Which TDN is used is {@link EnergyChoice}'s rule, or what somebody picked; the net energies follow from it, except that
 * a laboratory's and the book's stay as printed beside its own TDN. Relative feed value is given for legume, grass and
 * mixed hay whose two fibers were both measured.
 *
 * @param row the row of the feed book that stands in; empty when there is none
 * @param composition on dry matter, every figure with its origin
 * @param energy TDN as printed, by the book and as used
 * @param estimate how far each figure may lie from the lot; empty where nobody knows how far lots of this feed differ
 * @param notes in the reader's words: what stands in for what, which TDN, what was left out and why
 * @param single what an older report found of a danger in one place, worse than the newer sample by a plan that counts
 */
public record LotComposition(
        FeedClass feedClass,
        Optional<FeedBook.Row> row,
        Composition composition,
        EnergyChoice energy,
        Optional<LotEstimate> estimate,
        List<String> notes,
        Map<Analyte, Double> single) {
    public LotComposition {
        notes = List.copyOf(notes);
        single = Map.copyOf(single);
    }

    /** As printed: nothing is weighed. @param reports on one lot, in any order */
    public static LotComposition of(FeedClass feedClass, Optional<FeedBook.Row> row, List<LabReport> reports) {
        return of(feedClass, row, reports, Optional.empty());
    }

    /** @param reports on one lot, in any order. @param estimate of the same lot from the same reports */
    public static LotComposition of(
            FeedClass feedClass, Optional<FeedBook.Row> row, List<LabReport> reports, Optional<LotEstimate> estimate) {
        return of(feedClass, row, reports, estimate, Optional.empty(), Map.of(), OptionalDouble.empty());
    }

    /**
     * @param weathered what the weather did to its bales since they were sampled; empty for nothing
     * @param picks ways to TDN that somebody picked for this lot, by laboratory: {@link EnergyChoice#way}
     * @param dryMatter typed where the lot was measured, % as fed: counts where no report has one
     */
    public static LotComposition of(
            FeedClass feedClass,
            Optional<FeedBook.Row> row,
            List<LabReport> reports,
            Optional<LotEstimate> estimate,
            Optional<Weathered> weathered,
            Map<String, String> picks,
            OptionalDouble dryMatter) {
        var told = reports.stream()
                .sorted(Comparator.comparing(LotComposition::day).reversed())
                .map(report -> new Joining.Told(
                        words(report),
                        report.laboratory(),
                        report.howSampled() == LabReport.HowSampled.PLAN,
                        report.isNitrateByNir(),
                        report.counted(),
                        Tested.below(feedClass, row, report.readings(), report.notMeasured())))
                .toList();
        return new Joining(feedClass, row, weathered, picks, dryMatter).join(told, estimate);
    }

    /**
     * A feed for sale.
     *
     * @param where whose figures they are, in words: "feed tag"
     */
    public static LotComposition ofTag(
            FeedClass feedClass, Optional<FeedBook.Row> row, String where, List<Reading> tag) {
        var told = new Joining(feedClass, row, Optional.empty(), Map.of(), OptionalDouble.empty())
                .join(
                        tag.isEmpty() ? List.of() : List.of(new Joining.Told(where, "", false, false, tag, Map.of())),
                        Optional.empty());
        return Prior.of(feedClass, row).map(told::betweenLoads).orElse(told);
    }

    /** Each figure with how far loads of the kind differ around it: a tag is no promise of one load. */
    private LotComposition betweenLoads(Prior kind) {
        var values = new EnumMap<Analyte, Composition.Known>(Analyte.class);
        composition.values().forEach((analyte, known) -> {
            var lot = WidestSpread.around(kind, analyte, known.value());
            values.put(
                    analyte,
                    known.lot() != null || lot.isEmpty() || analyte == Analyte.NO3N
                            ? known
                            : new Composition.Known(known.value(), known.origin(), lot.get(), null, known.below()));
        });
        return new LotComposition(
                feedClass, row, new Composition(values, composition.expected()), energy, estimate, notes, single);
    }

    /** With how far figures lie as somebody says it, in their own units; 0 for one that is certain. */
    public LotComposition spread(Map<Analyte, Double> sd) {
        var values = new EnumMap<Analyte, Composition.Known>(Analyte.class);
        composition.values().forEach((analyte, known) -> {
            Double said = sd.get(analyte);
            values.put(
                    analyte,
                    said == null
                            ? known
                            : new Composition.Known(
                                    known.value(),
                                    known.origin(),
                                    said == 0 ? null : new Marginal(known.value(), said, false),
                                    null,
                                    known.below()));
        });
        return new LotComposition(
                feedClass, row, new Composition(values, composition.expected()), energy, estimate, notes, single);
    }

    /** The way TDN was had; empty when it is not known. */
    public Optional<Tdn> tdn() {
        return energy.used();
    }

    /** TDN as the row prints it. */
    public OptionalDouble bookTdn() {
        return energy.book();
    }

    /** TDN, net energy and feed value with how far they may lie; empty where nobody knows. The same seed, the same figures. */
    public List<Derived> derived(long seed) {
        return estimate.isEmpty() ? List.of() : Derived.of(LotDistribution.of(this), seed);
    }

    private static LocalDate day(LabReport report) {
        return report.reported() != null
                ? report.reported()
                : report.sampled() != null ? report.sampled() : LocalDate.MIN;
    }

    private static String words(LabReport report) {
        var day = report.reported() != null ? report.reported() : report.sampled();
        return (day == null ? "report" : "report of " + LabReport.DAY.format(day))
                + (report.laboratory().isBlank()
                        ? ""
                        : ", " + report.laboratory().strip());
    }
}
