package haywright.app.web.lab;

import haywright.app.document.Fingerprint;
import haywright.app.exchange.csv.ReportCsv;
import haywright.app.exchange.lab.Understood;
import haywright.app.exchange.pdf.PdfText;
import haywright.app.store.Attachments;
import haywright.app.web.Ask;
import haywright.app.web.Form;
import haywright.app.web.Page;
import haywright.app.web.Sent;
import haywright.forage.lab.LabReport;
import haywright.ranch.Attachment;
import haywright.ranch.Ranch;
import haywright.workings.Refused;
import io.javalin.http.NotFoundResponse;
import java.nio.charset.StandardCharsets;
import java.util.BitSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.UUID;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/**
 * The file or the pasted text that reports came in. It is kept with each of them, so that what was read can be looked at
 * beside what was understood.
 *
 * @param sha256 it is stored under this
 * @param name as it came
 */
public record Original(String sha256, String name) {
    /** Hidden: travels from where a file is read to the form of each report in it. */
    public static final Ask FIELD = Ask.text("original", "", "");

    /** Several times what the longest report takes; an exported ranch carries its files inside. */
    private static final int MOST_BYTES = 5_000_000;

    private static final String PASTED = "Pasted text";

    /** Null where it is too large to be kept. */
    static @Nullable Original keep(Page page, String name, byte[] bytes) {
        if (bytes.length > MOST_BYTES) {
            return null;
        }
        var own = Sent.fileName(name);
        var type = PdfText.isPdf(bytes)
                ? "application/pdf"
                : own.toLowerCase(Locale.ROOT).endsWith(".csv") ? "text/csv" : "text/plain";
        var sha256 = page.desk().store().attachments().keep(new Attachments.Body(type, bytes));
        return new Original(sha256, own.isEmpty() ? "A file without a name" : own);
    }

    static @Nullable Original pasted(Page page, String text) {
        return keep(page, PASTED, text.getBytes(StandardCharsets.UTF_8));
    }

    /** As the hidden field carries it. */
    String field() {
        return sha256 + " " + name;
    }

    public static Optional<Original> of(Form form) {
        var carried = form.value(FIELD);
        return carried.matches("[0-9a-f]{64} .+")
                ? Optional.of(new Original(carried.substring(0, 64), carried.substring(65)))
                : Optional.empty();
    }

    /** Tells a sheet, and what was understood of it, from every other. */
    static String tag(Form form, Understood found) {
        var text = form.value(BringPages.TEXT) + found.samples();
        return Fingerprint.sha256(text).substring(0, 32);
    }

    /** The ranch with this as the file of a report; as it was where the form carries none. */
    static Ranch on(Page page, Form form, Ranch ranch, UUID report) {
        var original = of(form).orElse(null);
        var body = original == null
                ? null
                : page.desk().store().attachments().get(original.sha256).orElse(null);
        return original == null || body == null
                ? ranch
                : ranch.with(new Attachment(UUID.randomUUID(), report, original.name, body.type(), original.sha256));
    }

    public static Optional<Attachment> of(Ranch ranch, LabReport report) {
        return ranch.attachments().values().stream()
                .filter(attachment -> attachment.about().equals(report.id()) && !attachment.isPicture())
                .reduce((before, newer) -> newer);
    }

    /** Whether a text goes on from the one before, perhaps with a heading written over its columns. */
    static boolean goesOn(String before, String now) {
        var lines = before.lines().map(String::strip).toList();
        var asked =
                now.lines().map(String::strip).filter(line -> !line.isEmpty()).toList();
        return 2 * asked.stream().filter(lines::contains).count() > asked.size();
    }

    /**
     * @param text every line that was read of it
     * @param understood what the report says now, in words
     */
    public record View(LabReport report, Attachment file, String size, String text, List<String> understood) {}

    static View view(Page page, LabReport report) {
        var file = file(page, report);
        var bytes = bytes(page, file);
        var size = bytes.length < 1000 ? bytes.length + " bytes" : bytes.length / 1000 + " kB";
        return new View(
                report, file, size, narrow(text(bytes)), Printed.of(report).words());
    }

    /** A file that came with an imported ranch was perhaps never read here: its report is shown all the same. */
    private static String text(byte[] bytes) {
        try {
            return PdfText.isPdf(bytes) ? PdfText.of(bytes) : ReportCsv.decode(bytes);
        } catch (Refused e) {
            return "Not shown: " + e.problems().get(0).rule() + ". Save the file and open it there.";
        }
    }

    /** Without the columns of text that are blank in every line, bar two between any others. */
    private static String narrow(String text) {
        var lines = text.replace("\t", "  ").lines().toList();
        var used = new BitSet();
        lines.forEach(line -> {
            for (int i = 0; i < line.length(); i++) {
                if (line.charAt(i) != ' ') {
                    used.set(i, i + 3);
                }
            }
        });
        return lines.stream()
                .map(line -> {
                    var kept = new StringBuilder();
                    for (int i = used.nextSetBit(0); i >= 0 && i < line.length(); i = used.nextSetBit(i + 1)) {
                        kept.append(line.charAt(i));
                    }
                    return kept.toString().stripTrailing();
                })
                .collect(Collectors.joining("\n"));
    }

    static void send(Page page, LabReport report) {
        var file = file(page, report);
        page.http()
                .header(
                        "Content-Disposition",
                        "attachment; filename=\"%s\"".formatted(file.name().replaceAll("[^ -~]|[\"\\\\]", "_")))
                .contentType(file.type())
                .result(bytes(page, file));
    }

    private static Attachment file(Page page, LabReport report) {
        return of(page.ranch(), report).orElseThrow(() -> new NotFoundResponse("This report was typed, not imported."));
    }

    private static byte[] bytes(Page page, Attachment file) {
        return page.desk()
                .store()
                .attachments()
                .get(file.sha256())
                .orElseThrow(() -> new NotFoundResponse("Its file is not here any more."))
                .bytes();
    }
}
