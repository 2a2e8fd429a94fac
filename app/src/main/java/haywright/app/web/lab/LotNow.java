package haywright.app.web.lab;

import haywright.app.words.Show;
import haywright.forage.Analyte;
import haywright.forage.Basis;
import haywright.forage.BasisConversion;
import haywright.forage.Composition;
import haywright.forage.book.FeedBook;
import haywright.forage.lab.LabReport;
import haywright.forage.lab.NotMeasured;
import haywright.forage.lot.LotComposition;
import haywright.outlook.SameHay;
import haywright.outlook.TestedFor;
import haywright.outlook.Yard;
import haywright.ranch.Lot;
import haywright.workings.Origin;
import haywright.workings.Worked;
import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/**
 * What a lot is made of now, figure by figure, and what its reports changed.
 *
 * @param tested for what
 * @param inShort what it says in short
 * @param told what the reports changed in what decides a ration, a sentence a figure; empty for a lot without a report
 * @param nitrate null where it is not known
 * @param feedValue whether relative feed value is among the figures
 * @param book the feed of the book that stands in; empty where there is none
 * @param worth what it costs by what is in it, and ratios of its minerals
 * @param reports newest first
 * @param hazards what besides nitrate is to be known of it
 * @param ways what other published ways make of it
 * @param others what this ranch's other tested lots of its class have had
 * @param trust null where nobody knows how far lots of this feed differ
 */
public record LotNow(
        Lot lot,
        TestedFor tested,
        String inShort,
        List<String> told,
        List<Row> rows,
        List<String> notes,
        @Nullable NitrateView nitrate,
        boolean feedValue,
        String book,
        List<LotWorth.Number> worth,
        List<ReportRow> reports,
        @Nullable Trust trust,
        List<HazardView> hazards,
        List<OtherWays> ways,
        List<String> others) {
    /** Figures that decide a ration, first. */
    private static final List<Analyte> FIRST = List.of(
            Analyte.DM,
            Analyte.CP,
            Analyte.ADF,
            Analyte.NDF,
            Analyte.TDN,
            Analyte.NEM,
            Analyte.NEG,
            Analyte.CA,
            Analyte.P,
            Analyte.RFV);

    /** What stands for the limit of a nitrate test that does not print it. */
    private static final String USUAL_LIMIT =
            "Its limit is not printed: it counts as less than %s ppm NO3-N, a usual limit by our judgment. Ask the laboratory for its own."
                    .formatted(Show.number(NotMeasured.USUAL_NITRATE_LIMIT_PPM, 0));

    /** Worth a sentence of their own. */
    private static final List<Analyte> TOLD = List.of(Analyte.CP, Analyte.TDN);

    /**
     * @param key names it in the address of its own page
     * @param printed as its reports print it, a line a report, the newest first; empty where none does
     * @param before as it stood before any report; null where there was nothing
     * @param change from before to now; empty where nothing changed or there was nothing before
     * @param asFed empty where there is no such thing
     * @param worked its work, told on its own page; null for a figure as printed
     * @param left what the range that is left comes from; empty where there is no range
     */
    public record Row(
            String key,
            String name,
            List<String> printed,
            @Nullable Side before,
            Side now,
            String change,
            String asFed,
            @Nullable Worked worked,
            String from,
            String left) {}

    /** @param range where the truth lies nine times in ten; empty where nobody knows */
    public record Side(String figure, String range) {}

    /**
     * @param confirmed how many unusual things somebody confirmed
     * @param counts whether it is of the hay that is there now
     * @param method how the laboratory worked; empty where it does not say
     * @param said what it prints in place of figures, and what becomes of that
     * @param noted what the checks want known
     */
    public record ReportRow(
            LabReport report,
            String day,
            String who,
            int confirmed,
            boolean counts,
            String method,
            List<String> said,
            List<String> noted) {}

    /** The figures that decide a ration. */
    public List<Row> first() {
        return rows.subList(0, (int) rows.stream().filter(LotNow::isFirst).count());
    }

    /** The others. */
    public List<Row> rest() {
        return rows.subList(first().size(), rows.size());
    }

    /** {@code lignin, crude fat, ash} */
    public String restNamed() {
        return rest().stream()
                .map(row -> row.name().replaceAll(" \\(.*", ""))
                .map(name -> name.substring(0, 1).toLowerCase(Locale.ROOT) + name.substring(1))
                .collect(Collectors.joining(", "));
    }

    private static boolean isFirst(Row row) {
        return FIRST.stream().anyMatch(one -> key(one).equals(row.key()));
    }

    /** Names a figure in the address of its own page. */
    private static String key(Analyte analyte) {
        return analyte.name().toLowerCase(Locale.ROOT);
    }

    /** What to say of nitrate that was not detected by a test whose limit is not printed; empty where there is none. */
    public String notDetected() {
        return reports.stream()
                        .filter(ReportRow::counts)
                        .flatMap(row -> row.report().notMeasured().stream())
                        .anyMatch(NotMeasured::isUsualLimitTaken)
                ? "Nitrate was not detected. " + USUAL_LIMIT
                : "";
    }

    static LotNow of(Yard yard, Lot lot) {
        var reports = SameHay.counted(yard.ranch(), lot.id()); // oldest first
        var all = new ArrayList<>(yard.ranch().reportsOn(lot.id()));
        Collections.reverse(all);
        var row = ReportForm.bookRow(lot);
        var now = yard.composition(lot);
        var before = LotComposition.of(lot.feedClass(), row, List.of());
        var newestFirst = new ArrayList<>(reports);
        Collections.reverse(newestFirst);
        var trust = Trust.of(lot, now, reports);
        var ranges = trust.map(Trust::ranges).orElse(Map.of());
        return new LotNow(
                lot,
                TestedFor.of(yard.ranch(), lot),
                inShort(now.composition(), TestedFor.of(yard.ranch(), lot)),
                reports.isEmpty() ? List.of() : told(before.composition(), now.composition(), ranges),
                rows(before.composition(), now.composition(), ranges, newestFirst),
                now.notes(),
                NitrateView.of(now).orElse(null),
                now.composition().knows(Analyte.RFV),
                row.map(FeedBook.Row::feed).orElse(""),
                LotWorth.of(lot, now.composition(), asPrinted(lot, reports)),
                all.stream()
                        .map(report -> reportRow(lot, report, reports.contains(report)))
                        .toList(),
                trust.orElse(null),
                hazards(yard, lot),
                OtherWays.of(
                        lot.feedClass(), asPrinted(lot, reports), now.energy().ways()),
                BookPages.beside(yard.ranch(), lot));
    }

    /** By what was found: being usually low in its kind makes no lot safer. */
    static List<HazardView> hazards(Yard yard, Lot lot) {
        var reports = SameHay.counted(yard.ranch(), lot.id());
        return reports.isEmpty()
                ? List.of()
                : HazardView.of(lot.feedClass(), ReportForm.bookRow(lot), asPrinted(lot, reports));
    }

    /** What classes judge: the sheet's own figures, wherever the estimate has moved them. */
    private static Composition asPrinted(Lot lot, List<LabReport> reports) {
        return LotComposition.of(lot.feedClass(), ReportForm.bookRow(lot), reports)
                .composition();
    }

    static ReportRow reportRow(Lot lot, LabReport report, boolean counts) {
        var method = report.method();
        return new ReportRow(
                report,
                day(report),
                who(report),
                (int) report.confirmed().stream()
                        .filter(question -> !question.startsWith(SameHay.CONFIRMED))
                        .count(),
                counts,
                method == null ? "" : ReportForm.words(method),
                report.notMeasured().stream().map(LotNow::said).toList(),
                ReportForm.noted(lot, report));
    }

    /** "Calcium (Ca): less than 0.01 % on dry matter. …" */
    private static String said(NotMeasured one) {
        var limit = one.limit();
        var unit = one.unit();
        var figure = limit == null || unit == null ? "" : Show.withUnit(Show.significant(limit, 6), unit);
        var what = Readings.name(one.analyte()) + ": "
                + (one.why() == NotMeasured.Why.LESS_THAN
                        ? "less than " + figure
                        : one.why().words())
                + (one.why() == NotMeasured.Why.NOT_DETECTED && limit != null ? ", which is below " + figure : "")
                + (one.basis() == null ? "" : " " + BringView.words(one.basis()));
        if (one.why() == NotMeasured.Why.NOT_TESTED) {
            return what + ".";
        }
        if (!one.isDanger()) {
            return what
                    + ". That is a bound and no figure: rations count none of it for a need, and the limit against a ceiling.";
        }
        if (one.isUsualLimitTaken()) {
            return what + ". " + USUAL_LIMIT;
        }
        return what
                + (limit == null
                        ? ". Below a limit that is not printed: it counts as not known. Ask the laboratory for the limit."
                        : ". How much less is not known, so the limit itself counts, the stricter way.");
    }

    private static String day(LabReport report) {
        return report.reported() != null
                ? Show.date(report.reported())
                : report.sampled() != null ? "sampled " + Show.date(report.sampled()) : "day not known";
    }

    private static String who(LabReport report) {
        return report.laboratory().isBlank() ? "laboratory not said" : report.laboratory();
    }

    /** "CP 12.1 %, TDN 58.0 %, RFV 101"; of a lot with a report, what none of them tested is said to be the book's. */
    static String inShort(Composition made, TestedFor tested) {
        var said = new ArrayList<String>();
        for (var analyte : List.of(Analyte.CP, Analyte.TDN, Analyte.RFV)) {
            var parts = analyte == Analyte.CP
                    ? Set.of(TestedFor.Part.PROTEIN)
                    : Set.of(TestedFor.Part.ENERGY, TestedFor.Part.FIBER);
            boolean isBook = tested.reports() > 0 && parts.stream().noneMatch(tested.parts()::contains);
            made.value(analyte)
                    .ifPresent(value -> said.add(analyte.name() + "\u00a0" + Figures.say(analyte, value)
                            + (isBook ? " (feed book, not tested)" : "")));
        }
        return String.join(", ", said);
    }

    /** "Crude protein (CP): 12.1 %, by the feed book 11.5 %. Likely 11.0 to 13.2 %; before the report 6.9 to 16.1 %." */
    private static List<String> told(Composition before, Composition now, Map<Analyte, Trust.Range> ranges) {
        var told = new ArrayList<String>();
        for (var analyte : TOLD) {
            var value = now.value(analyte);
            if (value.isEmpty()) {
                continue;
            }
            var book = before.value(analyte);
            var range = ranges.get(analyte);
            told.add("%s: %s%s.%s"
                    .formatted(
                            Readings.name(analyte),
                            Figures.say(analyte, value.getAsDouble()),
                            book.isEmpty() ? "" : ", by the feed book " + Figures.say(analyte, book.getAsDouble()),
                            range == null
                                    ? ""
                                    : " Likely %s; before any report %s.".formatted(range.now(), range.before())));
        }
        return told;
    }

    private static List<Row> rows(
            Composition before, Composition now, Map<Analyte, Trust.Range> ranges, List<LabReport> newestFirst) {
        var order = new LinkedHashSet<>(FIRST);
        order.addAll(now.values().keySet());
        order.removeAll(List.of(Analyte.NO3, Analyte.KNO3)); // nitrate says its three forms itself
        var rows = new ArrayList<Row>();
        for (var analyte : order) {
            var known = now.values().get(analyte);
            if (known != null) {
                rows.add(row(analyte, before, now, known, ranges.get(analyte), AsPrinted.of(analyte, newestFirst)));
            }
        }
        return rows;
    }

    private static Row row(
            Analyte analyte,
            Composition before,
            Composition now,
            Composition.Known known,
            Trust.@Nullable Range range,
            List<String> printed) {
        var old = before.value(analyte);
        return new Row(
                key(analyte),
                Readings.name(analyte),
                printed,
                old.isEmpty() && range == null
                        ? null
                        : new Side(
                                old.isEmpty() ? "not in the book" : Figures.say(analyte, old.getAsDouble()),
                                range == null ? "" : range.before()),
                new Side(say(analyte, known), range == null ? "" : range.now()),
                old.isEmpty() || known.below() != null ? "" : Figures.more(analyte, old.getAsDouble(), known.value()),
                known.below() == null ? asFed(now, analyte, known.value()) : "",
                known.origin() instanceof Origin.Computed computed ? computed.by() : null,
                Figures.from(known.origin()),
                range == null ? "" : range.left());
    }

    /** "12.1 %", "< 0.05 %" */
    private static String say(Analyte analyte, Composition.Known known) {
        var below = known.below();
        return below == null ? Figures.say(analyte, known.value()) : "< " + Figures.say(analyte, below);
    }

    private static String asFed(Composition made, Analyte analyte, double value) {
        var dryMatter = made.value(Analyte.DM);
        if (!analyte.hasBasis() || dryMatter.isEmpty()) {
            return "";
        }
        var fed = new BasisConversion(
                BasisConversion.Of.CONCENTRATION,
                value,
                analyte.unit(),
                Basis.DRY_MATTER,
                Basis.AS_RECEIVED,
                dryMatter.getAsDouble());
        return Figures.say(analyte, fed.result());
    }
}
