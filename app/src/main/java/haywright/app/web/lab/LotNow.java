package haywright.app.web.lab;

import haywright.app.words.Show;
import haywright.forage.Analyte;
import haywright.forage.Basis;
import haywright.forage.BasisConversion;
import haywright.forage.Composition;
import haywright.forage.LabReport;
import haywright.forage.LotComposition;
import haywright.forage.NotMeasured;
import haywright.ranch.Lot;
import haywright.ranch.Yard;
import haywright.workings.Origin;
import haywright.workings.Worked;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * What a lot is made of now, figure by figure, and what its reports changed.
 *
 * @param short what it says in short
 * @param nitrate null where it is not known
 * @param feedValue whether relative feed value is among the figures
 * @param changed what the feed book said beside what stands now; empty for a lot without a report or a row
 * @param reports newest first
 * @param hazards what besides nitrate is to be known of it
 * @param trust null where nobody knows how far lots of this feed differ
 */
public record LotNow(
        Lot lot,
        String inShort,
        List<Row> rows,
        List<String> notes,
        @Nullable NitrateView nitrate,
        boolean feedValue,
        String book,
        List<Changed> changed,
        List<ReportRow> reports,
        @Nullable Trust trust,
        List<HazardView> hazards) {
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

    /**
     * @param worked the work it opens to; null for a figure as printed
     * @param asFed empty where there is no such thing
     */
    public record Row(
            String name,
            String onDryMatter,
            String asFed,
            @Nullable Worked worked,
            String from) {}

    public record Changed(String name, String book, String now, String more) {}

    /**
     * @param confirmed how many unusual things somebody confirmed
     * @param method how the laboratory worked; empty where it does not say
     * @param said what it prints in place of figures, and what becomes of that
     * @param noted what the checks want known
     */
    public record ReportRow(
            LabReport report,
            String day,
            String who,
            int confirmed,
            String method,
            List<String> said,
            List<String> noted) {}

    static LotNow of(Yard yard, Lot lot) {
        var reports = yard.ranch().reportsOn(lot.id()); // oldest first
        var row = ReportForm.bookRow(lot);
        var now = yard.composition(lot);
        var before = LotComposition.of(lot.feedClass(), row, List.of());
        var newestFirst = new ArrayList<>(reports);
        Collections.reverse(newestFirst);
        return new LotNow(
                lot,
                inShort(now.composition()),
                rows(now.composition()),
                now.notes(),
                NitrateView.of(now.composition()).orElse(null),
                now.composition().knows(Analyte.RFV),
                row.map(r -> r.feed() + " (" + r.id() + ")").orElse(""),
                reports.isEmpty() || row.isEmpty() ? List.of() : changed(before.composition(), now.composition()),
                newestFirst.stream().map(report -> reportRow(lot, report)).toList(),
                Trust.of(lot, now).orElse(null),
                HazardView.of(lot.feedClass(), now.composition()));
    }

    static ReportRow reportRow(Lot lot, LabReport report) {
        var method = report.method();
        return new ReportRow(
                report,
                day(report),
                who(report),
                report.confirmed().size(),
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
            return what + ". That is a bound and no figure: the feed book’s figure stands in where it has one.";
        }
        return what
                + (limit == null
                        ? ". Below a limit that is not printed: it counts as not known. Ask the laboratory for the limit."
                        : ". Nobody knows how much less, so the limit itself counts: the stricter way.");
    }

    private static String day(LabReport report) {
        return report.reported() != null
                ? Show.date(report.reported())
                : report.sampled() != null ? "sampled " + Show.date(report.sampled()) : "day not known";
    }

    private static String who(LabReport report) {
        return report.laboratory().isBlank() ? "laboratory not said" : report.laboratory();
    }

    /** "CP 12.1 %, TDN 58.0 %, RFV 101" */
    static String inShort(Composition made) {
        var said = new ArrayList<String>();
        for (var analyte : List.of(Analyte.CP, Analyte.TDN, Analyte.RFV)) {
            made.value(analyte).ifPresent(value -> said.add(analyte.name() + "\u00a0" + Figures.say(analyte, value)));
        }
        return String.join(", ", said);
    }

    private static List<Row> rows(Composition made) {
        var order = new ArrayList<>(FIRST);
        made.values().keySet().stream()
                .filter(a -> !FIRST.contains(a) && a != Analyte.NO3 && a != Analyte.KNO3)
                .forEach(order::add);
        var rows = new ArrayList<Row>();
        for (var analyte : order) {
            var known = made.values().get(analyte);
            if (known != null) {
                rows.add(row(made, analyte, known));
            }
        }
        return rows;
    }

    private static Row row(Composition made, Analyte analyte, Composition.Known known) {
        var value = Figures.say(analyte, known.value());
        boolean isDryMatter = analyte == Analyte.DM || analyte == Analyte.MOISTURE;
        return new Row(
                Readings.name(analyte),
                isDryMatter ? "" : value,
                isDryMatter ? value : asFed(made, analyte, known.value()),
                known.origin() instanceof Origin.Computed computed ? computed.by() : null,
                Figures.from(known.origin()));
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

    private static List<Changed> changed(Composition before, Composition now) {
        var changed = new ArrayList<Changed>();
        for (var analyte : FIRST) {
            var old = Optional.ofNullable(before.values().get(analyte));
            var known = now.values().get(analyte);
            if (known == null || old.map(o -> o.equals(known)).orElse(false)) {
                continue;
            }
            changed.add(new Changed(
                    Readings.name(analyte),
                    old.map(o -> Figures.say(analyte, o.value())).orElse("not said"),
                    Figures.say(analyte, known.value()),
                    old.map(o -> Figures.more(analyte, o.value(), known.value()))
                            .orElse("")));
        }
        return changed;
    }
}
