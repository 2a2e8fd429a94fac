package haywright.app.web.lab;

import haywright.app.exchange.csv.ReportsOut;
import haywright.app.web.Form;
import haywright.app.web.Page;
import haywright.app.web.Routes;
import haywright.app.words.Likely;
import haywright.forage.Analyte;
import haywright.forage.FeedClass;
import haywright.forage.lab.LabReport;
import haywright.outlook.SameHay;
import haywright.outlook.TestedFor;
import haywright.outlook.Yard;
import haywright.ranch.Lot;
import haywright.workings.Worked;
import io.javalin.http.NotFoundResponse;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.Optional;
import java.util.UUID;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/** The reports of a ranch: which lot has one and what it says, the form of one, and what a lot is made of now. */
public final class ReportPages {
    static final String FORM = "haywright/app/web/lab/report.jte";

    private ReportPages() {}

    public static void routes(Routes on) {
        on.get("reports", page -> page.show("haywright/app/web/lab/reports.jte", list(page)));
        on.get("reports/reports.csv", page -> page.csv("reports", ReportsOut.reports(page.ranch())));
        on.get("reports/lots.csv", page -> page.csv("lots", ReportsOut.lots(page.yard(), Likely.SEED)));
        on.get("reports/beside", page -> page.show("haywright/app/web/lab/beside.jte", LotsBeside.of(page)));
        on.get("reports/new", ReportPages::toLot);
        on.get("reports/new/{lot}", ReportPages::add);
        on.post("reports/new/{lot}", page -> save(page, lot(page), null));
        on.get("reports/lot/{lot}", ReportPages::now);
        on.get("reports/lot/{lot}/figure/{figure}", ReportPages::figure);
        on.get("reports/{report}", ReportPages::change);
        on.post("reports/{report}", page -> save(page, lotOf(page, report(page)), report(page)));
        on.get(
                "reports/{report}/original",
                page -> page.show("haywright/app/web/lab/original.jte", Original.view(page, report(page))));
        on.get("reports/{report}/original/file", page -> Original.send(page, report(page)));
        on.get("reports/{report}/delete", page -> page.show("haywright/app/web/lab/deleteReport.jte", view(page)));
        on.post("reports/{report}/delete", ReportPages::delete);
    }

    /**
     * One lot.
     *
     * @param tested for what
     * @param newest day and laboratory of the newest report; empty when there is none
     * @param dangers its nitrate and whatever else somebody calls dangerous, in words
     * @param watch what else was found in it
     */
    public record Row(
            Lot lot,
            TestedFor tested,
            String newest,
            String inShort,
            String nitrate,
            List<String> dangers,
            List<String> watch) {}

    /**
     * @param report null for a new one
     * @param asksSameHay whether another report on the lot was sampled so long before or after that it may be of other hay
     */
    public record FormView(
            Form form, Lot lot, @Nullable LabReport report, String action, String says, boolean asksSameHay) {}

    /** @param spread how far the feed book's own rows of one kind of hay lie apart, in words */
    public record ListView(List<Row> rows, String spread) {}

    private static ListView list(Page page) {
        var grass = Analyte.CP.usual(FeedClass.GRASS_HAY).orElseThrow();
        return new ListView(
                rows(page),
                "the book’s own rows of grass hay go from %s to %s protein"
                        .formatted(Figures.say(Analyte.CP, grass.low()), Figures.say(Analyte.CP, grass.high())));
    }

    private static List<Row> rows(Page page) {
        var yard = page.yard();
        return page.ranch().lots().values().stream().map(lot -> row(yard, lot)).toList();
    }

    private static Row row(Yard yard, Lot lot) {
        var reports = SameHay.counted(yard.ranch(), lot.id());
        var now = yard.composition(lot);
        var made = now.composition();
        var nitrate = NitrateView.of(now);
        var newest = reports.isEmpty() ? null : LotNow.reportRow(lot, reports.get(reports.size() - 1), true);
        var hazards = LotNow.hazards(yard, lot);
        var tested = TestedFor.of(yard.ranch(), lot);
        return new Row(
                lot,
                tested,
                newest == null ? "" : newest.day() + ", " + newest.who(),
                LotNow.inShort(made, tested)
                        + Likely.protein(made).map(l -> "; " + l).orElse(""),
                nitrate.map(n -> "nitrate " + n.forms().get(0)).orElse(""),
                Stream.concat(
                                Stream.of(danger(lot, nitrate.orElse(null))),
                                hazards.stream().filter(HazardView::danger).map(HazardView::title))
                        .filter(danger -> !danger.isEmpty())
                        .toList(),
                hazards.stream()
                        .filter(hazard -> hazard.watch() && !hazard.danger())
                        .map(HazardView::title)
                        .toList());
    }

    private static String danger(Lot lot, @Nullable NitrateView nitrate) {
        if (nitrate == null) {
            return lot.isNitrateDanger() ? "Nitrate not known: it stays out of every ration until it is tested" : "";
        }
        if (!nitrate.danger()) {
            return "";
        }
        var strictest = nitrate.sources().get(0);
        return "Nitrate: the strictest source says “%s”"
                .formatted(strictest.here().words());
    }

    /** The address that other pages use: {@code reports/new?lot=ID}. */
    private static void toLot(Page page) {
        var asked = page.http().queryParam("lot");
        Page.leave(page.http(), page.at(asked == null ? "reports" : "reports/new/" + asked));
    }

    private static void now(Page page) {
        var lot = lot(page);
        page.show("haywright/app/web/lab/lotNow.jte", LotNow.of(page.yard(), lot));
    }

    /** One figure of a lot with its work. */
    public record FigureView(Lot lot, LotNow.Row row, Worked worked) {}

    private static void figure(Page page) {
        var lot = lot(page);
        var key = page.http().pathParam("figure");
        var view = LotNow.of(page.yard(), lot).rows().stream()
                .filter(row -> row.key().equals(key))
                .findFirst()
                .flatMap(row -> Optional.ofNullable(row.worked()).map(work -> new FigureView(lot, row, work)))
                .orElseThrow(NotFoundResponse::new);
        page.show("haywright/app/web/lab/figure.jte", view);
    }

    private static void add(Page page) {
        var lot = lot(page);
        var bag = Objects.requireNonNullElse(page.http().queryParam("bag"), "");
        var form = page.form(path(lot, null), () -> TakenBy.known(page.ranch(), lot, bag));
        page.show(FORM, view(page, form, lot, null));
    }

    private static void change(Page page) {
        var report = report(page);
        var lot = lotOf(page, report);
        page.show(FORM, view(page, page.form(path(lot, report), () -> ReportForm.known(report)), lot, report));
    }

    private static FormView view(Page page) {
        var report = report(page);
        var lot = lotOf(page, report);
        return view(page, page.posted(path(lot, report)), lot, report);
    }

    private static void save(Page page, Lot lot, @Nullable LabReport before) {
        var form = page.posted(path(lot, before));
        var id = before == null ? UUID.randomUUID() : before.id();
        TakenBy.ask(form, page.ranch(), lot, before);
        var report = ReportForm.read(
                form, lot, id, before, page.today(), page.ranch().reports().values());
        if (report.isEmpty()) {
            page.reject(form, FORM, view(page, form, lot, before));
            return;
        }
        var words = "Report %s: %s".formatted(before == null ? "added" : "changed", lot.name());
        page.save(
                form,
                words,
                ranch -> Original.on(page, form, ranch.with(report.get()), id),
                isOneOfSeveral(form) ? BringPages.KEY : "reports/lot/" + lot.id());
        BringTake.saved(page, form);
    }

    /** Whether it came out of a file; then the next one is looked over. */
    private static boolean isOneOfSeveral(Form form) {
        return form.value(ReportForm.FROM).equals(BringPages.KEY);
    }

    private static void delete(Page page) {
        var report = report(page);
        var lot = lotOf(page, report);
        page.save(
                page.posted(path(lot, report)),
                "Report deleted: " + lot.name(),
                ranch -> ranch.withoutReport(report.id()),
                "reports/lot/" + lot.id());
    }

    static Lot lot(Page page) {
        return page.find(page.ranch().lots(), "lot");
    }

    private static LabReport report(Page page) {
        return page.find(page.ranch().reports(), "report");
    }

    private static Lot lotOf(Page page, LabReport report) {
        var lot = page.ranch().lots().get(report.lot());
        if (lot == null) {
            throw new NotFoundResponse("Its lot is not on this ranch any more.");
        }
        return lot;
    }

    /** Where the form of a report stands; what is left unfinished is kept under it. */
    static String path(Lot lot, @Nullable LabReport report) {
        return report == null ? "reports/new/" + lot.id() : "reports/" + report.id();
    }

    static FormView view(Page page, Form form, Lot lot, @Nullable LabReport report) {
        var says = report == null
                ? ""
                : LotNow.reportRow(lot, report, true)
                                .day()
                                .toLowerCase(Locale.ROOT)
                                .startsWith("day")
                        ? ""
                        : LotNow.reportRow(lot, report, true).day();
        boolean asks =
                ReportForm.asksSameHay(form, lot, report, page.ranch().reports().values());
        return new FormView(form, lot, report, page.at(path(lot, report)), says, asks);
    }
}
