package haywright.app.web.lab;

import haywright.app.exchange.csv.ReportCsv;
import haywright.app.exchange.lab.Understood;
import haywright.app.exchange.pdf.PdfText;
import haywright.app.web.Ask;
import haywright.app.web.Form;
import haywright.app.web.Option;
import haywright.app.web.Page;
import haywright.app.web.Routes;
import haywright.forage.Basis;
import haywright.workings.Refused;
import java.io.IOException;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * Reports brought in from a PDF, a CSV file or pasted text: what was understood is shown beside what was read, names can
 * be corrected, and each sample is looked over in the form it would be typed in.
 */
public final class BringPages {
    public static final Ask TEXT = Ask.text(
            "text",
            "Or paste its lines",
            "From a PDF, an email or a table, headings included. You see what was understood before anything is saved.");
    public static final Ask FILE = Ask.text(
            "file", "The file", "A PDF with text in it (at most 20 MB), or a CSV or text file (at most 1 MB).");
    public static final Ask DECIMAL = Ask.choice(
            "decimal", "Decimals are written with", "Asked only where the figures themselves do not show it.");
    public static final Ask BASIS = Ask.choice(
            "basis",
            "Figures whose heading names no basis are",
            "Look at the sheet. Needed only if the file does not say.");
    public static final Ask DAYS = Ask.choice(
            "days",
            "A date such as 8/9/26 on this sheet is",
            "Asked once for the whole sheet, and only where no date on it shows it.");
    public static final Ask LABORATORY = Ask.text(
            "laboratory",
            "Laboratory, if the file does not say",
            "Names you explain are remembered for its next report, once a report of this sheet is saved.");
    /** The text of a long file stays in the draft and does not travel with the page. */
    public static final String KEPT = "kept";

    /** Hidden: which sheet a form on its page is of. */
    public static final Ask SHEET = Ask.text("sheet", "", "");

    /** In place of a lot: what was offered as a sample is none. */
    public static final String NO_SAMPLE = "none";

    static final String KEY = "reports/bring";
    static final String PAGE = "haywright/app/web/lab/bring.jte";

    private BringPages() {}

    public static void routes(Routes on) {
        on.get(KEY, BringPages::show);
        on.post(KEY, BringPages::read);
        on.post(KEY + "/take", BringTake::take);
        on.post(KEY + "/all", BringTake::takeAll);
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
                ? form.<Understood>part(() -> BringReader.understood(page, form))
                : Optional.<Understood>empty();
        page.show(
                PAGE,
                found.map(read -> BringTake.left(page, form, BringView.of(page, form, read)))
                        .orElseGet(() -> new View(form, null)));
    }

    private static void read(Page page) throws IOException {
        var typed = new LinkedHashMap<String, List<String>>(page.http().formParamMap());
        Refused unread = null;
        if (typed.containsKey(KEPT) && BringTake.isOfAnotherSheet(page)) {
            return; // its own text is not here any more
        }
        try {
            readFile(page, typed);
        } catch (Refused e) {
            unread = e;
        }
        typed.remove(SHEET.name());
        var form = Form.posted(KEY, typed);
        List.of(TEXT, FILE, DECIMAL, BASIS, DAYS, LABORATORY).forEach(form::text);
        var problem = unread;
        var found = form.<Understood>part(() -> {
            if (problem != null) {
                throw problem;
            }
            return BringReader.understood(page, form);
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

    /** The box that asks which lot the sample of this number is of. */
    public static Ask lot(int number) {
        return Ask.choice("lot-" + number, "Lot of this sample", "");
    }

    /** The question whether the sample of this number is new, where its code is known. */
    public static Ask replaces(BringView.Sample sample) {
        return Ask.choice(
                "replaces-" + sample.number(),
                "Is it a new report?",
                "There is a report of this laboratory already: %s. Laboratories use codes again every year; the same figures are rare."
                        .formatted(sample.likeWords()));
    }

    public static List<Option> newOrNot() {
        return List.of(
                new Option("new", "Yes, of another sample: both count"),
                new Option("replace", "No, it replaces the one there is"));
    }

    private static void forget(Page page) {
        var laboratory = page.http().formParam("laboratory");
        if (laboratory != null) {
            page.desk().store().laboratoryNames().forget(laboratory);
        }
        Page.leave(page.http(), page.at("reports/names"));
    }
}
