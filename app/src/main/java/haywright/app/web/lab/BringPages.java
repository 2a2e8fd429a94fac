package haywright.app.web.lab;

import haywright.app.exchange.csv.ReportCsv;
import haywright.app.exchange.lab.Days;
import haywright.app.exchange.lab.Decimals;
import haywright.app.exchange.lab.Understood;
import haywright.app.exchange.lab.Vocabulary;
import haywright.app.exchange.pdf.PdfText;
import haywright.app.exchange.text.ReportText;
import haywright.app.web.Ask;
import haywright.app.web.Form;
import haywright.app.web.Option;
import haywright.app.web.Page;
import haywright.app.web.Routes;
import haywright.forage.Analyte;
import haywright.forage.Basis;
import haywright.forage.lab.LabReport;
import haywright.ranch.Lot;
import haywright.workings.Refused;
import java.io.IOException;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/**
 * Reports brought in from a PDF, a CSV file or pasted text: what was understood is shown beside what was read, names can
 * be put right, and each sample is looked over in the form it would be typed in.
 */
public final class BringPages {
    public static final Ask TEXT = Ask.text(
            "text",
            "Or paste its lines",
            "From a PDF, a mail or a table, with the headings over the figures. What was understood is shown before anything is kept.");
    public static final Ask FILE = Ask.text(
            "file", "The file", "A PDF with text in it (at most 20 MB), or a CSV or text file (at most 1 MB).");
    public static final Ask DECIMAL = Ask.choice(
            "decimal", "Decimals are written with", "Asked only where the figures themselves do not show it.");
    public static final Ask BASIS = Ask.choice(
            "basis",
            "Figures whose heading names no basis are",
            "Never taken for granted: look at the sheet. It is asked for only if the file does not say.");
    public static final Ask DAYS = Ask.choice(
            "days",
            "A date such as 8/9/26 on this sheet is",
            "Asked once for the whole sheet, and only where no date on it shows it.");
    public static final Ask LABORATORY = Ask.text(
            "laboratory",
            "Laboratory, if the file does not say",
            "What you say of its names is kept for its next report, once a report of this sheet is kept.");
    /** The text of a long file stays in the draft and does not travel with the page. */
    public static final String KEPT = "kept";

    private static final Pattern WATER = Pattern.compile(
            "(?i)\\b(?:mg/l|[mµu]s/cm|µmhos?/cm|total dissolved solids|tds|conductivity|e\\. ?coli|coliforms?|(?:well|stock|livestock|surface|drinking|pond|dugout|spring|ditch|tank) water|water (?:analysis|test|report|quality|suitability|sample|lab\\w*)|hardness|alkalinity|bicarbonate)\\b"
                    + "|(?:sample type|matrix|material|type|sample)\\s*[:,;|]\\s*(?:[\\p{L}]+ )?water\\b");

    /** Minerals, nitrate and pH are printed of water too. */
    private static final Set<Analyte> OF_WATER = EnumSet.of(
            Analyte.TDS,
            Analyte.SO4W,
            Analyte.PH,
            Analyte.NO3,
            Analyte.NO3N,
            Analyte.NH3N,
            Analyte.CA,
            Analyte.P,
            Analyte.MG,
            Analyte.K,
            Analyte.NA,
            Analyte.S,
            Analyte.CL,
            Analyte.CU,
            Analyte.ZN,
            Analyte.MN,
            Analyte.FE,
            Analyte.MO,
            Analyte.SE,
            Analyte.CO,
            Analyte.AL);

    static final String KEY = "reports/bring";
    private static final String PAGE = "haywright/app/web/lab/bring.jte";

    private BringPages() {}

    public static void routes(Routes on) {
        on.get(KEY, BringPages::show);
        on.post(KEY, BringPages::read);
        on.post(KEY + "/take", BringPages::take);
        on.post(KEY + "/all", BringPages::takeAll);
        on.get("reports/names", page -> page.show("haywright/app/web/lab/names.jte", NamesForm.remembered(page)));
        on.post("reports/names/forget", BringPages::forget);
    }

    /** @param found null until something was read */
    public record View(Form form, @Nullable BringView found, Map<String, String> picks) {
        View(Form form, @Nullable BringView found) {
            this(form, found, Map.of());
        }

        /** Whether this lot is chosen for a sample: as somebody picked, else as its code says. */
        public boolean isPicked(Ask ask, BringView.@Nullable Match match, Option lot) {
            var picked = picks.get(ask.name());
            return picked == null
                    ? match != null && match.lot().id().toString().equals(lot.value())
                    : picked.equals(lot.value());
        }

        /** Names with what they stand for; what was said of them stays where the file could not be read with it. */
        public List<NamesForm.Row> names() {
            return found == null ? NamesForm.typed(form) : found.names();
        }

        public List<ColumnsForm.Row> columns() {
            return found == null ? ColumnsForm.typed(form) : found.columns();
        }

        public List<Option> decimals() {
            return List.of(
                    new Option("sheet", "what the sheet shows"),
                    new Option("point", "a point: 1.234 is a little over one"),
                    new Option("comma", "a comma: 1,234 is a little over one"));
        }

        public List<Option> bases() {
            return Option.of(Basis.class, BringView::words);
        }

        public List<Option> days() {
            return List.of(
                    new Option("month_first", "month first: August 9"),
                    new Option("day_first", "day first: September 8"));
        }

        public boolean isLong() {
            return form.value(TEXT).length() > 60_000;
        }
    }

    private static void show(Page page) {
        var form = page.form(KEY, () -> Map.of(DECIMAL.name(), "sheet"));
        var found = form.isDraft() && !form.isEmpty(TEXT)
                ? form.<Understood>part(() -> understood(page, form))
                : Optional.<Understood>empty();
        page.show(
                PAGE,
                new View(form, found.map(read -> BringView.of(page, form, read)).orElse(null)));
    }

    private static void read(Page page) throws IOException {
        var typed = new LinkedHashMap<String, List<String>>(page.http().formParamMap());
        Refused unread = null;
        try {
            readFile(page, typed);
        } catch (Refused e) {
            unread = e;
        }
        var form = Form.posted(KEY, typed);
        List.of(TEXT, FILE, DECIMAL, BASIS, DAYS, LABORATORY).forEach(form::text);
        var problem = unread;
        var found = form.<Understood>part(() -> {
            if (problem != null) {
                throw problem;
            }
            return understood(page, form);
        });
        if (found.isEmpty()) {
            page.reject(form, PAGE, new View(form, null));
            return;
        }
        page.keep(form);
        page.show(PAGE, new View(form, BringView.of(page, form, found.get())));
    }

    /** The text of the file that was sent, or else the text that was; and what it came in. */
    private static void readFile(Page page, Map<String, List<String>> typed) throws IOException {
        var before = page.form(KEY, Map::of);
        var file = page.http().uploadedFile(FILE.name());
        Original original;
        if (file == null || file.size() == 0) {
            if (typed.containsKey(KEPT)) {
                typed.put(TEXT.name(), List.of(before.value(TEXT)));
            }
            var text = typed.getOrDefault(TEXT.name(), List.of("")).get(0);
            original = text.isBlank() || Original.goesOn(before.value(TEXT), text)
                    ? Original.of(before).orElse(null)
                    : Original.pasted(page, text);
        } else {
            try (var in = file.content()) {
                var bytes = in.readNBytes(PdfText.MOST_BYTES + 1);
                boolean isPdf = PdfText.isPdf(bytes)
                        || file.filename().toLowerCase(Locale.ROOT).endsWith(".pdf");
                typed.put(TEXT.name(), List.of(isPdf ? PdfText.of(bytes) : ReportCsv.decode(bytes)));
                typed.keySet().removeIf(name -> name.startsWith(NamesForm.FIELDS)); // they were said of another file
                original = Original.keep(page, file.filename(), bytes);
            }
        }
        forget(before, typed);
        NamesForm.take(typed);
        typed.put(Original.FIELD.name(), List.of(original == null ? "" : original.field()));
    }

    /** What was answered of one sheet is not taken for the next: an answer still standing from before is asked anew. */
    private static void forget(Form before, Map<String, List<String>> typed) {
        var now = typed.getOrDefault(TEXT.name(), List.of("")).get(0);
        if (before.isEmpty(TEXT) || now.isBlank() || Original.goesOn(before.value(TEXT), now)) {
            return;
        }
        for (var ask : List.of(DECIMAL, BASIS, DAYS, LABORATORY)) {
            if (typed.getOrDefault(ask.name(), List.of("")).get(0).equals(before.value(ask))) {
                typed.put(ask.name(), List.of(ask == DECIMAL ? "sheet" : ""));
            }
        }
        typed.entrySet()
                .removeIf(box -> box.getKey().startsWith(NamesForm.FIELDS)
                        && box.getValue().equals(List.of(before.value(box.getKey()))));
    }

    /** Which stands first in the days of the sheet: as they show, else as was answered. */
    static Days.Order order(Form form) {
        var shown = Days.order(form.value(TEXT));
        return shown != Days.Order.UNTOLD
                ? shown
                : switch (form.value(DAYS)) {
                    case "month_first" -> Days.Order.MONTH_FIRST;
                    case "day_first" -> Days.Order.DAY_FIRST;
                    default -> shown;
                };
    }

    private static @Nullable Basis basis(Form form) {
        for (var one : Basis.values()) {
            if (Form.id(one).equals(form.value(BASIS))) {
                return one;
            }
        }
        return null;
    }

    private static Understood understood(Page page, Form form) {
        var text = form.value(TEXT);
        var words = NamesForm.vocabulary(page, form);
        var decimals = switch (form.value(DECIMAL)) {
            case "comma" -> Decimals.COMMA;
            case "point" -> Decimals.POINT;
            default -> Decimals.BY_SHEET;
        };
        boolean looksLikeWater = WATER.matcher(text).find();
        try {
            var found = read(text, decimals, basis(form), words);
            if (looksLikeWater && found.samples().stream().noneMatch(BringPages::isOfFeed)) {
                throw ofWater();
            }
            return found;
        } catch (Refused e) {
            var problem = e.problems().get(0);
            boolean isBasis = problem.field().equals(BASIS.name());
            throw looksLikeWater
                            && (problem.field().equals(TEXT.name()) || isBasis && isWaterOnly(text, decimals, words))
                    ? ofWater()
                    : e;
        }
    }

    /** A test of water is never asked for the basis of its figures. */
    private static boolean isWaterOnly(String text, Decimals decimals, Vocabulary words) {
        try {
            return read(text, decimals, Basis.DRY_MATTER, words).samples().stream()
                    .noneMatch(BringPages::isOfFeed);
        } catch (Refused e) {
            return false;
        }
    }

    private static Understood read(String text, Decimals decimals, @Nullable Basis untold, Vocabulary words) {
        return ReportCsv.isOne(text, words)
                ? ReportCsv.read(text, decimals, untold, words)
                : ReportText.read(text, decimals, untold, words);
    }

    private static boolean isOfFeed(Understood.Sample sample) {
        return sample.cells().stream().anyMatch(cell -> !OF_WATER.contains(cell.analyte()));
    }

    private static Refused ofWater() {
        return new Refused(
                TEXT.name(),
                "",
                "no feed was found on it, and it looks like a test of water",
                "Water goes on its own page: Read it, then Stock water. Type its figures there.");
    }

    /** The box that asks which lot the sample of this number is of. */
    public static Ask lot(int number) {
        return Ask.choice("lot-" + number, "Lot of this sample", "");
    }

    /** The question whether the sample of this number is new, where its code is known. */
    public static Ask replaces(BringView.Sample sample) {
        return Ask.choice(
                "replaces-" + sample.number(),
                "Is it a new report?",
                "There is a report of this laboratory already: %s. Codes come again every year; the same figures seldom do."
                        .formatted(sample.likeWords()));
    }

    public static List<Option> newOrNot() {
        return List.of(
                new Option("new", "Yes, of another sample: both count"),
                new Option("replace", "No, it replaces the one there is"));
    }

    /** From what was understood to the form, where the checks stand beside each figure. */
    private static void take(Page page) {
        var form = picked(page);
        var found = form.part(() -> understood(page, form));
        var view = found.map(read -> BringView.of(page, form, read)).orElse(null);
        var number = page.http().formParam("sample");
        if (view == null
                || number == null
                || !number.matches("[0-9]{1,4}")
                || Integer.parseInt(number) >= view.samples().size()) {
            Page.leave(page.http(), page.at(KEY));
            return;
        }
        if (view.areDaysOpen()) {
            askDays(form);
            again(page, form, view, number);
            return;
        }
        var sample = view.samples().get(Integer.parseInt(number));
        var lot = page.ranch().lots().values().stream()
                .filter(one -> one.id().toString().equals(page.http().formParam("lot")))
                .findFirst();
        if (lot.isEmpty()) {
            var ask = lot(sample.number());
            form.text(ask);
            form.refuse(ask.name(), "", "no lot was chosen", "A report speaks for one lot: say which.");
            again(page, form, view, number);
            return;
        }
        var like = sample.like();
        var answer = page.http().formParam("replaces-" + sample.number());
        if (like != null && !"new".equals(answer) && !"replace".equals(answer)) {
            var ask = replaces(sample);
            form.text(ask);
            form.refuse(ask.name(), "", "nobody said whether it is new", "Choose one of the two.");
            again(page, form, view, number);
            return;
        }
        var before = "replace".equals(answer) ? like : null;
        var known = new LinkedHashMap<>(ReportForm.fresh());
        known.putAll(sample.typed());
        if (before != null && known.getOrDefault(ReportForm.HOW.name(), "").isEmpty()) {
            known.put(ReportForm.HOW.name(), Form.id(before.howSampled()));
        }
        known.put(ReportForm.ASKED.name(), like == null ? "" : like.id().toString());
        known.put(ReportForm.FROM.name(), view.left() > 1 ? KEY : "");
        known.put(Original.FIELD.name(), form.value(Original.FIELD));
        known.put(ReportForm.NAMES_OF.name(), sample.laboratory());
        var on = before == null ? lot.get() : page.ranch().lots().getOrDefault(before.lot(), lot.get());
        var filled = Form.of(ReportPages.path(on, before), known);
        page.anew();
        page.keep(filled);
        page.show(ReportPages.FORM, ReportPages.view(page, filled, on, before));
    }

    /** With the lot that was chosen for this sample. */
    private static void again(Page page, Form form, BringView view, String number) {
        page.http().status(422);
        var lot = page.http().formParam("lot");
        page.show(PAGE, new View(form, view, lot == null ? Map.of() : Map.of("lot-" + Integer.parseInt(number), lot)));
    }

    /** The lot that was chosen for a sample among all of them, or that its code speaks of; null where neither is. */
    private static @Nullable Lot lotOf(Page page, BringView.Sample sample) {
        var chosen = page.http().formParam(lot(sample.number()).name());
        var match = sample.match();
        return chosen == null
                ? match == null ? null : match.lot()
                : page.ranch().lots().values().stream()
                        .filter(one -> one.id().toString().equals(chosen))
                        .findFirst()
                        .orElse(null);
    }

    /** Keeps every sample whose lot is known and that raises no question; the others stay to be looked over. */
    private static void takeAll(Page page) {
        var form = picked(page);
        var found = form.part(() -> understood(page, form));
        var how = page.http().formParam(ReportForm.HOW.name());
        if (found.isEmpty() || how == null || how.isBlank()) {
            noneKept(
                    page,
                    form,
                    found,
                    "nobody has said how the samples were taken",
                    "Choose “not known” if nobody remembers.");
            return;
        }
        if (BringView.of(page, form, found.get()).areDaysOpen()) {
            askDays(form);
            noneKept(page, form, found, "it is not said how the dates on the sheet are written", "Say so below.");
            return;
        }
        var reports = new ArrayList<LabReport>();
        var laboratories = new LinkedHashSet<String>();
        var questions = new LinkedHashMap<Integer, String>();
        for (var sample : BringView.of(page, form, found.get()).samples()) {
            var lot = lotOf(page, sample);
            if (lot != null && sample.isNew()) {
                var known = new LinkedHashMap<>(ReportForm.fresh());
                known.putAll(sample.typed());
                known.put(ReportForm.HOW.name(), how);
                var filled = Form.of(KEY, known);
                var others = Stream.concat(page.ranch().reports().values().stream(), reports.stream())
                        .toList();
                ReportForm.read(filled, lot, UUID.randomUUID(), null, page.today(), others)
                        .ifPresentOrElse(
                                report -> {
                                    reports.add(report);
                                    laboratories.add(sample.laboratory());
                                },
                                () -> questions.put(
                                        sample.number(),
                                        filled.messages().stream()
                                                .map(message -> message.words())
                                                .findFirst()
                                                .orElse("it raises a question")));
            } else if (sample.kept() == null) {
                questions.put(
                        sample.number(),
                        lot == null
                                ? "No lot was chosen."
                                : "There may be a report of it already: look it over below.");
            }
        }
        if (reports.isEmpty()) {
            var view = BringView.of(page, form, found.get());
            questions.forEach((number, question) -> {
                form.text(lot(number));
                form.refuse(lot(number).name(), "", view.samples().get(number).name() + ": " + question, "");
            });
            noneKept(
                    page,
                    form,
                    found,
                    "each of them raises a question",
                    "The question stands beside each sample. Look them over one by one.");
            return;
        }
        var left = Form.of(KEY + "/all", Map.of());
        page.anew();
        page.save(
                left,
                "Reports added: " + reports.size(),
                ranch -> {
                    var with = ranch;
                    for (var report : reports) {
                        with = Original.on(page, form, with.with(report), report.id());
                    }
                    return with;
                },
                KEY);
        if (isSaved(page)) {
            laboratories.forEach(laboratory -> NamesForm.remember(page, form, laboratory));
        }
    }

    private static boolean isSaved(Page page) {
        return Stream.of("Location", "HX-Redirect").anyMatch(page.http().res()::containsHeader);
    }

    /** What was said of the names on the sheet that a report came from is kept with the report, not sooner. */
    static void saved(Page page, Form report) {
        var typed = page.desk().store().drafts().get(page.ranch().id(), KEY);
        var form = Form.posted(KEY, typed);
        if (isSaved(page)
                && !report.isEmpty(Original.FIELD)
                && report.value(Original.FIELD).equals(form.value(Original.FIELD))) {
            NamesForm.remember(page, form, report.value(ReportForm.NAMES_OF));
        }
    }

    /** The form as it was read, with what was picked beside the samples since. */
    private static Form picked(Page page) {
        var all = new LinkedHashMap<>(
                page.desk().store().drafts().get(page.ranch().id(), KEY));
        page.http().formParamMap().forEach((name, values) -> {
            if (!all.containsKey(name) && name.matches("lot-[0-9]+|replaces-[0-9]+|" + ReportForm.HOW.name())) {
                all.put(name, values);
            }
        });
        return Form.posted(KEY, all);
    }

    private static void askDays(Form form) {
        form.text(DAYS);
        form.refuse(
                DAYS.name(), "", "a date on the sheet could be two days", "Choose one of the two, and read it again.");
    }

    /** What was picked for each sample stays picked. */
    private static void noneKept(Page page, Form form, Optional<Understood> found, String rule, String fix) {
        form.text(ReportForm.HOW);
        form.refuse(ReportForm.HOW.name(), "", rule, fix);
        page.http().status(422);
        var picks = new LinkedHashMap<String, String>();
        page.http().formParamMap().forEach((name, values) -> {
            if (name.startsWith("lot-") && !values.isEmpty()) {
                picks.put(name, values.get(0));
            }
        });
        page.show(
                PAGE,
                new View(form, found.map(read -> BringView.of(page, form, read)).orElse(null), picks));
    }

    private static void forget(Page page) {
        var laboratory = page.http().formParam("laboratory");
        if (laboratory != null) {
            page.desk().store().laboratoryNames().forget(laboratory);
        }
        Page.leave(page.http(), page.at("reports/names"));
    }
}
