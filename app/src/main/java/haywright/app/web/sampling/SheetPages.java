package haywright.app.web.sampling;

import haywright.app.exchange.sheet.SheetFile;
import haywright.app.report.FieldSheet;
import haywright.app.report.Paper;
import haywright.app.web.Ask;
import haywright.app.web.Form;
import haywright.app.web.Page;
import haywright.app.web.Routes;
import haywright.app.words.Show;
import haywright.forage.lab.LabReport;
import haywright.outlook.LotTests;
import haywright.outlook.SampledLot;
import haywright.quantity.Unit;
import haywright.ranch.Sampling;
import haywright.sampling.Taken;
import io.javalin.http.NotFoundResponse;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;

/** A field sheet that was made: print it, carry it away on a phone, and put in what came back. */
public final class SheetPages {
    public static final Ask ON = Ask.date("on", "Date taken", "Such as Nov 25, 2026.");
    public static final Ask BY = new Ask("by", "Who took it", Unit.NONE, "Name or initials.", 16);
    public static final Ask DIFFERED =
            Ask.text("differed", "What was different", "A bale replaced, frozen in, torn wrap, hot, mold.");
    public static final Ask PHOTOS = Ask.text("photos", "Photo names", "With commas between.");

    private static final String SHEET = "haywright/app/web/sampling/sheet.jte";
    /** Clocks differ, and a sample may be taken first and its sheet made after it. */
    private static final int SLACK_DAYS = 7;

    private SheetPages() {}

    /**
     * @param really what was taken really does for the answer, in words; empty until it is back
     * @param bags each with what became of it
     */
    public record View(FieldSheet sheet, Form form, String really, List<Bag> bags) {}

    /**
     * @param report the report on it; empty where none is here
     * @param says its laboratory and day
     */
    public record Bag(String code, Optional<LabReport> report, String says) {}

    static void routes(Routes on) {
        on.get("take/sheets/{sheet}", SheetPages::show);
        on.post("take/sheets/{sheet}", SheetPages::back);
        on.get(
                "take/sheets/{sheet}/sheet/{size}",
                page -> print(page, sheet(page)::paper, sheet(page).fileName("field-sheet")));
        on.get(
                "take/sheets/{sheet}/labels/{size}",
                page -> print(page, sheet(page)::labelsPaper, sheet(page).fileName("bag-labels")));
        on.get("take/sheets/{sheet}/phone.html", SheetPages::phone);
        on.post("take/sheets/{sheet}/delete", SheetPages::delete);
    }

    /** Cores from one of the sheet. */
    public static Ask cores(FieldSheet.Row row) {
        return Ask.number("cores-" + row.order(), row.order() + row.bag() + ": " + row.where(), "");
    }

    private static FieldSheet sheet(Page page) {
        return FieldSheet.of(page.ranch(), page.find(page.ranch().samplings(), "sheet"));
    }

    private static void show(Page page) {
        var sheet = sheet(page);
        page.show(SHEET, view(page, sheet, page.form(key(sheet.sampling()), () -> known(page, sheet))));
    }

    private static View view(Page page, FieldSheet sheet, Form form) {
        var sampling = sheet.sampling();
        var taken = sampling.taken();
        return new View(sheet, form, taken == null ? "" : really(sheet, taken), bags(page, sampling));
    }

    private static List<Bag> bags(Page page, Sampling sampling) {
        var bags = new ArrayList<Bag>();
        for (var code : sampling.bags()) {
            var composite = !sampling.twoComposites() ? "" : bags.isEmpty() ? "A" : "B";
            var report = LotTests.reportOn(page.ranch(), sampling, composite);
            var day = report.map(LabReport::reported).orElse(null);
            var laboratory =
                    report.map(LabReport::laboratory).filter(l -> !l.isBlank()).orElse("laboratory not entered");
            bags.add(new Bag(code, report, day == null ? laboratory : laboratory + ", " + Show.date(day)));
        }
        return bags;
    }

    private static String really(FieldSheet sheet, Taken taken) {
        var sampling = sheet.sampling();
        int planned = sampling.picks().size() * sampling.increments();
        int all = taken.cores().stream().mapToInt(c -> c).sum();
        var sure = new SampledLot(sampling, sheet.subject())
                .reached()
                .map(p -> " That leaves %s ± %s%s."
                        .formatted(
                                PlanView.name(sampling.analyte()),
                                Show.significant(p.halfWidth(), 2),
                                p.spread().ofValue() ? " % of the value" : " points"))
                .orElse("");
        var one = sheet.orders().increment();
        return sheet.isCountedInEach()
                ? "%s from %s, of %,d from %,d planned.%s"
                        .formatted(
                                Show.count(all, one),
                                Show.count(taken.units(), sheet.material().unit()),
                                planned,
                                sampling.picks().size(),
                                sure)
                : "%s, of %,d planned.%s".formatted(Show.count(all, one), planned, sure);
    }

    private static Map<String, String> known(Page page, FieldSheet sheet) {
        var known = new LinkedHashMap<String, String>();
        var sampling = sheet.sampling();
        var taken = sampling.taken();
        known.put(ON.name(), Show.date(taken == null ? page.today() : taken.on()));
        known.put(BY.name(), taken == null ? "" : taken.by());
        known.put(DIFFERED.name(), taken == null ? "" : taken.differed());
        known.put(PHOTOS.name(), taken == null ? "" : String.join(", ", taken.photos()));
        for (var row : sheet.rows()) {
            int i = row.order() - 1;
            int cores = taken == null || i >= taken.cores().size()
                    ? sampling.increments()
                    : taken.cores().get(i);
            known.put(cores(row).name(), String.valueOf(cores));
        }
        return known;
    }

    private static void back(Page page) {
        var sheet = sheet(page);
        var sampling = sheet.sampling();
        var form = page.posted(key(sampling));
        var on = form.past(ON, "Enter the day.", page.today());
        var by = form.text(BY, "Enter who took it.");
        var cores = new ArrayList<Integer>();
        for (var row : sheet.rows()) {
            cores.add(form.count(cores(row), "Enter 0 if none was taken."));
        }
        var differed = form.text(DIFFERED);
        var photos = SheetFile.photos(form.text(PHOTOS));
        dated(page, form, ON, sampling, on);
        atMost(form, BY, 60);
        atMost(form, DIFFERED, 2000);
        atMost(form, PHOTOS, 1000);
        var taken = form.build(() -> new Taken(on, by, cores, differed, photos));
        if (taken.isEmpty()) {
            page.reject(form, SHEET, view(page, sheet, form));
            return;
        }
        keep(page, form, sampling, taken.get());
    }

    /** Nothing is taken before its day comes; long before the sheet was made is asked about. */
    static void dated(Page page, Form form, Ask beside, Sampling sampling, LocalDate on) {
        if (on.isAfter(page.today())) {
            form.refuse(
                    beside.name(),
                    Show.date(on),
                    "a sample can’t be in the future; today is " + Show.date(page.today()),
                    "Enter the day.");
        } else if (on.isBefore(sampling.made().minusDays(SLACK_DAYS)) && !on.equals(LocalDate.EPOCH)) {
            form.doubt(
                    beside,
                    "before-made",
                    "%s is before the sheet was made, on %s.".formatted(Show.date(on), Show.date(sampling.made())));
        }
    }

    private static void atMost(Form form, Ask ask, int most) {
        var typed = form.value(ask);
        if (typed.length() > most) {
            form.refuse(
                    ask.name(), typed, "at most %,d letters".formatted(most), "Shorten it, or use the lot’s notes.");
        }
    }

    static void keep(Page page, Form form, Sampling sampling, Taken taken) {
        page.save(
                form,
                "Sample taken: sheet " + sampling.code(),
                ranch -> ranch.with(sampling.with(taken)),
                "take/sheets/" + sampling.id());
    }

    /** A paper in the size that the address asks for. */
    static void print(Page page, Function<Paper.Size, Paper> paper, String name) {
        var size = size(page.http().pathParam("size"));
        page.http()
                .contentType("application/pdf")
                .header("Content-Disposition", "inline; filename=\"%s.pdf\"".formatted(name))
                .result(paper.apply(size).pdf());
    }

    private static Paper.Size size(String asked) {
        return Optional.of(asked.replaceFirst("\\.pdf$", "").toUpperCase(Locale.ROOT))
                .filter(s -> List.of("LETTER", "A4").contains(s))
                .map(Paper.Size::valueOf)
                .orElseThrow(NotFoundResponse::new);
    }

    private static void phone(Page page) {
        var sheet = sheet(page);
        page.phoneFile(sheet.fileName("field-sheet"), sheet.phonePage());
    }

    private static void delete(Page page) {
        var sampling = page.find(page.ranch().samplings(), "sheet");
        page.save(
                page.posted(key(sampling)),
                "Field sheet deleted: " + sampling.code(),
                ranch -> ranch.withoutSampling(sampling.id()),
                "take");
    }

    private static String key(Sampling sampling) {
        return "take/sheets/" + sampling.id();
    }
}
