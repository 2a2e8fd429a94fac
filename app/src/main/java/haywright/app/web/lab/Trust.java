package haywright.app.web.lab;

import haywright.app.report.picture.TrustPicture;
import haywright.app.report.picture.TrustPicture.Bar;
import haywright.app.report.picture.TrustPicture.Figure;
import haywright.app.report.picture.TrustPicture.Fill;
import haywright.app.words.Likely;
import haywright.app.words.Show;
import haywright.forage.Analyte;
import haywright.forage.Marginal;
import haywright.forage.lab.Issue;
import haywright.forage.lab.LabReport;
import haywright.forage.lot.Derived;
import haywright.forage.lot.LotComposition;
import haywright.forage.lot.LotEstimate;
import haywright.ranch.Lot;
import haywright.workings.Origin;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * How far a lot may lie from its figures: before any report, by its samples, now.
 *
 * @param kind the kind of lot whose spread was taken, in words
 * @param issues reports that fit this kind badly
 */
public record Trust(
        String kind, boolean tested, Map<Analyte, Range> ranges, List<Issue> issues, List<String> notes, String svg) {
    private static final List<Analyte> DRAWN = List.of(Analyte.CP, Analyte.ADF, Analyte.NDF);

    /**
     * Where one figure lies nine times in ten, in the unit it is shown in.
     *
     * @param left what the range comes from and how firmly that is known, a sentence
     */
    public record Range(String before, String now, String left) {}

    /**
     * Empty where nobody knows how far lots of this feed differ.
     *
     * @param reports on the lot, as its estimate was made of them
     */
    static Optional<Trust> of(Lot lot, LotComposition made, List<LabReport> reports) {
        return made.estimate().map(estimate -> of(lot, made, estimate, reports));
    }

    private static Trust of(Lot lot, LotComposition made, LotEstimate estimate, List<LabReport> reports) {
        boolean tested = !estimate.tested().isEmpty();
        var ranges = new EnumMap<Analyte, Range>(Analyte.class);
        var figures = new ArrayList<Figure>();
        for (var e : estimate.estimates()) {
            if (e.measured() > 0 || e.analyte() != Analyte.NO3N && !isTyped(made, e.analyte())) {
                ranges.put(e.analyte(), range(e, tested));
            }
        }
        for (var analyte : DRAWN) {
            estimate.estimates().stream()
                    .filter(e -> e.analyte() == analyte)
                    .forEach(e -> figures.add(figure(estimate, e, reports)));
        }
        var book = tested ? made.bookTdn() : made.composition().value(Analyte.TDN);
        var before = estimate.derivedBefore(book, Likely.SEED);
        var now = made.derived(Likely.SEED);
        for (int i = 0; i < now.size(); i++) {
            var then = before.get(i);
            var d = now.get(i);
            boolean byEquation = d.equationSd() * d.equationSd() > d.sd() * d.sd() / 2;
            ranges.put(
                    d.analyte(),
                    new Range(
                            range(d.analyte(), then.low90(), then.high90()),
                            range(d.analyte(), d.low90(), d.high90()),
                            byEquation
                                    ? "Most of this range is the equation’s own, which no sample takes away."
                                    : "This range is worked out from those of the figures it is made of."));
        }
        now.stream()
                .filter(d -> d.analyte() == Analyte.TDN)
                .findFirst()
                .ifPresent(d -> figures.add(new Figure(named(Analyte.TDN), bars(before.get(0), d, tested))));
        return new Trust(
                estimate.prior().words(),
                tested,
                ranges,
                estimate.issues(),
                estimate.notes(),
                new TrustPicture(lot.name(), figures).svg());
    }

    /** What was typed of the lot itself is not how its kind lies. */
    private static boolean isTyped(LotComposition made, Analyte analyte) {
        var known = made.composition().values().get(analyte);
        return analyte == Analyte.DM && known != null && known.origin() instanceof Origin.Typed;
    }

    private static Range range(LotEstimate.Estimate e, boolean tested) {
        return new Range(
                range(e.analyte(), e.before().low90(), e.before().high90()),
                range(e.analyte(), e.now().low90(), e.now().high90()),
                (tested ? mostly(e) : "") + "How far lots of this kind differ: "
                        + e.cell().mark() + ".");
    }

    private static String mostly(LotEstimate.Estimate e) {
        if (e.measured() == 0) {
            return "Not measured here: it follows what was. ";
        }
        double most = Math.max(e.lotShare(), Math.max(e.samplingShare(), e.laboratoryShare()));
        return "Most of the range that is left comes from "
                + (most == e.lotShare()
                        ? "how lots differ. "
                        : most == e.samplingShare()
                                ? "the sample not being the lot. "
                                : "the laboratory and its method. ");
    }

    /** With its unit, which the numbers of the axis are in. */
    private static String named(Analyte analyte) {
        return Readings.name(analyte) + ", " + analyte.unit().symbol();
    }

    private static Figure figure(LotEstimate estimate, LotEstimate.Estimate e, List<LabReport> reports) {
        var bars = new ArrayList<Bar>();
        bars.add(bar("before", e.analyte(), e.before(), Fill.WHITE));
        for (int i = 0; i < estimate.tested().size(); i++) {
            var one = estimate.tested().get(i);
            if (one.values().containsKey(e.analyte())) {
                var label = reports.size() == 1 ? "sample" : day(reports.get(i));
                bars.add(bar(label, e.analyte(), estimate.alone(one, e.analyte()), Fill.DOTTED));
            }
        }
        if (!reports.isEmpty()) {
            bars.add(bar("now", e.analyte(), e.now(), Fill.HATCHED));
        }
        return new Figure(named(e.analyte()), bars);
    }

    /** When the sample was taken, or its report came. */
    private static String day(LabReport report) {
        var day = report.sampled() == null ? report.reported() : report.sampled();
        return day == null ? "sample" : Show.date(day);
    }

    private static List<Bar> bars(Derived before, Derived now, boolean tested) {
        var first = bar("before", before, Fill.WHITE);
        return tested ? List.of(first, bar("now", now, Fill.HATCHED)) : List.of(first);
    }

    private static Bar bar(String label, Analyte analyte, Marginal bell, Fill fill) {
        return new Bar(
                label, bell.low90(), bell.center(), bell.high90(), range(analyte, bell.low90(), bell.high90()), fill);
    }

    private static Bar bar(String label, Derived d, Fill fill) {
        return new Bar(label, d.low90(), d.mean(), d.high90(), range(d.analyte(), d.low90(), d.high90()), fill);
    }

    /** "8.1 to 12.3 %": the unit once. */
    private static String range(Analyte analyte, double low, double high) {
        var from = Figures.say(analyte, Math.max(0, low));
        int unit = from.indexOf('\u00a0');
        return (unit < 0 ? from : from.substring(0, unit)) + " to " + Figures.say(analyte, high);
    }
}
