package haywright.app.web.lab;

import haywright.app.exchange.csv.ReportCsv;
import haywright.app.web.Ask;
import haywright.app.web.Form;
import haywright.app.web.Option;
import haywright.app.web.Page;
import haywright.app.web.Routes;
import haywright.forage.Basis;
import haywright.quantity.Kind;
import haywright.workings.Refused;
import java.io.IOException;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/** A report brought in from a CSV file: what was understood is shown, then looked over in the form it is typed in. */
public final class CsvPages {
    public static final Ask TEXT = Ask.text(
            "text",
            "Or paste its lines",
            "With the line of headings. What was understood is shown before anything is kept.");
    public static final Ask FILE = Ask.text("file", "CSV file", "At most 1 MB.");
    public static final Ask DECIMAL = Ask.choice("decimal", "Before the decimals stands", "");
    public static final Ask BASIS = Ask.choice(
            "basis",
            "Figures whose heading names no basis are",
            "Never taken for granted: look at the sheet. It is asked for only if the file does not say.");

    private static final String KEY = "reports/csv";
    private static final String PAGE = "haywright/app/web/lab/csv.jte";

    private CsvPages() {}

    public static void routes(Routes on) {
        on.get(KEY, page -> page.show(PAGE, new View(page.form(KEY, () -> Map.of(DECIMAL.name(), "point")), null)));
        on.post(KEY, CsvPages::read);
        on.post(KEY + "/take", CsvPages::take);
    }

    /** @param found null until something was read */
    public record View(Form form, @Nullable FoundView found) {
        public List<Option> decimals() {
            return List.of(new Option("point", "a point: 12.5"), new Option("comma", "a comma: 12,5"));
        }

        public List<Option> bases() {
            return Option.of(Basis.class, CsvPages::words);
        }
    }

    public record FoundView(String layout, List<SampleView> samples, List<String> notTaken, List<Option> lots) {}

    /**
     * @param head laboratory and days, as the file has them; may be empty
     * @param lines what was understood
     * @param typed what goes into the form
     */
    public record SampleView(String name, String head, List<Line> lines, Map<String, String> typed) {}

    public record Line(String name, String figure, String basis) {}

    static String words(Basis basis) {
        return switch (basis) {
            case AS_RECEIVED -> "as received (as fed, as is)";
            case DRY_MATTER -> "on dry matter";
            case NINETY_PCT -> "at 90 % dry matter";
        };
    }

    private static void read(Page page) throws IOException {
        var typed = new LinkedHashMap<String, List<String>>(page.http().formParamMap());
        Refused unread = null;
        try {
            var file = file(page);
            if (!file.isEmpty()) {
                typed.put(TEXT.name(), List.of(file));
            }
        } catch (Refused e) {
            unread = e;
        }
        var form = Form.posted(KEY, typed);
        List.of(TEXT, FILE, DECIMAL, BASIS).forEach(form::text);
        var problem = unread;
        var found = form.<ReportCsv.Found>part(() -> {
            if (problem != null) {
                throw problem;
            }
            return understood(form);
        });
        if (found.isEmpty()) {
            page.reject(form, PAGE, new View(form, null));
            return;
        }
        page.keep(form);
        page.show(PAGE, new View(form, view(page, found.get())));
    }

    private static String file(Page page) throws IOException {
        var file = page.http().uploadedFile(FILE.name());
        if (file == null || file.size() == 0) {
            return "";
        }
        try (var in = file.content()) {
            return ReportCsv.decode(in.readNBytes(ReportCsv.MOST_BYTES + 1));
        }
    }

    private static @Nullable Basis basis(Form form) {
        for (var one : Basis.values()) {
            if (Form.id(one).equals(form.value(BASIS))) {
                return one;
            }
        }
        return null;
    }

    private static FoundView view(Page page, ReportCsv.Found found) {
        var notTaken = new ArrayList<>(found.notTaken());
        var samples = new ArrayList<SampleView>();
        for (int i = 0; i < found.samples().size(); i++) {
            samples.add(sample(found.samples().get(i), i + 1, notTaken));
        }
        var lots = page.ranch().lots().values().stream()
                .map(lot -> new Option(lot.id().toString(), lot.name()))
                .toList();
        return new FoundView(found.layout(), samples, List.copyOf(notTaken), lots);
    }

    private static SampleView sample(ReportCsv.Sample sample, int number, List<String> notTaken) {
        var name = sample.code().isEmpty() ? "Sample " + number : sample.code();
        boolean received = sample.cells().stream().anyMatch(c -> c.basis() == Basis.AS_RECEIVED);
        var left = received || sample.cells().stream().noneMatch(c -> c.basis() == Basis.NINETY_PCT)
                ? Basis.AS_RECEIVED
                : Basis.NINETY_PCT;
        var lines = new ArrayList<Line>();
        var typed = new LinkedHashMap<String, String>();
        typed.put(ReportForm.LABORATORY.name(), sample.laboratory());
        typed.put(ReportForm.SAMPLE_CODE.name(), sample.code());
        typed.put(ReportForm.SAMPLED.name(), sample.sampled());
        typed.put(ReportForm.REPORTED.name(), sample.reported());
        typed.put(Readings.NINETY.name(), left == Basis.NINETY_PCT ? "yes" : "");
        for (var cell : sample.cells()) {
            var unit = cell.unit();
            boolean isAsked = unit == null && cell.analyte().unit().kind() == Kind.ENERGY_DENSITY;
            var figure = cell.text() + (isAsked ? ", unit not said" : unit == null ? "" : " " + unit.symbol());
            var box = Readings.box(cell.analyte(), cell.basis() == null ? Basis.DRY_MATTER : cell.basis(), left);
            if (box == null) {
                notTaken.add("%s, %s %s: the form has no place for it"
                        .formatted(name, Readings.name(cell.analyte()), figure));
                continue;
            }
            Readings.put(typed, box, cell.analyte(), unit, cell.text());
            lines.add(new Line(Readings.name(cell.analyte()), figure, cell.basis() == null ? "" : words(cell.basis())));
        }
        return new SampleView(name, head(sample), lines, typed);
    }

    private static String head(ReportCsv.Sample sample) {
        return Stream.of(
                        sample.laboratory(),
                        sample.sampled().isEmpty() ? "" : "sampled " + sample.sampled(),
                        sample.reported().isEmpty() ? "" : "reported " + sample.reported())
                .filter(words -> !words.isEmpty())
                .collect(Collectors.joining(", "));
    }

    /** The box that asks which lot the sample of this number is of. */
    public static Ask lot(int number) {
        return Ask.choice("lot-" + number, "Lot of this sample", "");
    }

    /** From what was understood to the form, where the checks stand beside each figure. */
    private static void take(Page page) {
        var lot = page.ranch().lots().values().stream()
                .filter(one -> one.id().toString().equals(page.http().formParam("lot")))
                .findFirst();
        if (lot.isEmpty()) {
            askForLot(page);
            return;
        }
        var known = new LinkedHashMap<>(ReportForm.fresh());
        page.http().formParamMap().forEach((name, values) -> known.put(name, values.get(0)));
        var form = Form.of(ReportPages.path(lot.get(), null), known);
        page.keep(form);
        page.show(ReportPages.FORM, ReportPages.view(page, form, lot.get(), null));
    }

    /** What was brought in last is kept, and is shown again with the question. */
    private static void askForLot(Page page) {
        var form = page.form(KEY, Map::of);
        var found = form.part(() -> understood(form));
        var number = page.http().formParam("sample");
        if (found.isPresent() && number != null && number.matches("[0-9]{1,3}")) {
            var ask = lot(Integer.parseInt(number));
            form.text(ask);
            form.refuse(ask.name(), "", "no lot was chosen", "A report speaks for one lot: say which.");
        }
        page.http().status(422);
        page.show(PAGE, new View(form, found.map(read -> view(page, read)).orElse(null)));
    }

    private static ReportCsv.Found understood(Form form) {
        return ReportCsv.read(form.value(TEXT), form.value(DECIMAL).equals("comma"), basis(form));
    }
}
