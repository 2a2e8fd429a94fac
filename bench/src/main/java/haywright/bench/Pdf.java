package haywright.bench;

import haywright.app.exchange.csv.ReportCsv;
import haywright.app.exchange.lab.Decimals;
import haywright.app.exchange.lab.Vocabulary;
import haywright.app.exchange.pdf.PdfText;
import haywright.app.exchange.text.ReportText;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.util.Locale;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.PDPageContentStream;
import org.apache.pdfbox.pdmodel.font.PDType1Font;
import org.apache.pdfbox.pdmodel.font.Standard14Fonts;

/**
 * A PDF of 200 pages, one report a page with eight names in two columns: processor time of laying out its text and of
 * reading the lines, as a ratio to reading the same figures from a CSV. The text is laid out by a process of its own, so
 * that part is time by the clock, and its memory the most that was seen of it.
 */
final class Pdf {
    private static final int PAGES = 200;
    private static final String[] NAMES = {"Crude Protein", "ADF", "NDF", "TDN", "Calcium", "Phosphorus", "Potassium"};
    private static final double DRY_MATTER = 88;

    private Pdf() {}

    private interface Step {
        int samples() throws IOException;
    }

    public static void main(String[] args) throws IOException {
        var pdf = pdf(PAGES);
        var csv = csv();
        var text = PdfText.of(pdf);
        double plain = time(
                "CSV",
                () -> ReportCsv.read(csv, Decimals.BY_SHEET, null, Vocabulary.HOUSE)
                        .samples()
                        .size());
        double lines = time(
                "lines",
                () -> ReportText.read(text, Decimals.BY_SHEET, null, Vocabulary.HOUSE)
                        .samples()
                        .size());
        var apart = Apart.of(() -> PdfText.of(pdf));
        var one = pdf(1);
        var small = Apart.of(() -> PdfText.of(one));
        long used = Runtime.getRuntime().totalMemory() - Runtime.getRuntime().freeMemory();
        System.out.printf(
                "%d pages, %d kB: to the CSV alone, lines %.0f, PDF and lines %.0f; heap in use %d MB of %d%n",
                PAGES,
                pdf.length / 1000,
                lines / plain,
                (apart.seconds() + lines) / plain,
                used >> 20,
                Runtime.getRuntime().maxMemory() >> 20);
        System.out.printf(
                "the process that reads it, to one that only starts: one page %.1f times as long, %d pages %.1f;"
                        + " its memory to this process's %.2f and %.2f%n",
                small.seconds() / Apart.start(),
                PAGES,
                apart.seconds() / Apart.start(),
                small.memory() / Apart.own(),
                apart.memory() / Apart.own());
    }

    private static double time(String what, Step step) throws IOException {
        step.samples(); // warm
        step.samples();
        int times = 5;
        double from = Cpu.seconds();
        for (int i = 0; i < times; i++) {
            if (step.samples() != PAGES) {
                throw new IllegalStateException(what + " did not give every report");
            }
        }
        double took = (Cpu.seconds() - from) / times;
        System.out.printf("%s: %.3f s of processor%n", what, took);
        return took;
    }

    private static double figure(int page, int name) {
        return 10 + name + page / 100.0;
    }

    private static String say(double figure) {
        return String.format(Locale.ROOT, "%.2f", figure);
    }

    private static String csv() {
        var csv = new StringBuilder("Sample,DM");
        for (var name : NAMES) {
            csv.append(',').append(name).append(" as fed,").append(name).append(" DM");
        }
        for (int page = 0; page < PAGES; page++) {
            csv.append("\nN-").append(page).append(',').append(DRY_MATTER);
            for (int i = 0; i < NAMES.length; i++) {
                csv.append(',')
                        .append(say(figure(page, i) * DRY_MATTER / 100))
                        .append(',')
                        .append(say(figure(page, i)));
            }
        }
        return csv.toString();
    }

    private static byte[] pdf(int pages) throws IOException {
        var font = new PDType1Font(Standard14Fonts.FontName.HELVETICA);
        try (var document = new PDDocument()) {
            for (int page = 0; page < pages; page++) {
                var sheet = new PDPage();
                document.addPage(sheet);
                try (var out = new PDPageContentStream(document, sheet)) {
                    out.setFont(font, 9);
                    put(out, 72, 740, "Plain Ridge Laboratory");
                    put(out, 72, 715, "Sample: N-" + page);
                    put(out, 72, 690, "Analysis");
                    put(out, 250, 690, "As Received");
                    put(out, 350, 690, "Dry Matter");
                    put(out, 72, 676, "Dry matter");
                    put(out, 260, 676, say(DRY_MATTER));
                    put(out, 360, 676, "100.00");
                    for (int i = 0; i < NAMES.length; i++) {
                        put(out, 72, 662 - 14 * i, NAMES[i]);
                        put(out, 260, 662 - 14 * i, say(figure(page, i) * DRY_MATTER / 100));
                        put(out, 360, 662 - 14 * i, say(figure(page, i)));
                    }
                }
            }
            var bytes = new ByteArrayOutputStream();
            document.save(bytes);
            return bytes.toByteArray();
        }
    }

    private static void put(PDPageContentStream out, float x, float y, String text) throws IOException {
        out.beginText();
        out.newLineAtOffset(x, y);
        out.showText(text);
        out.endText();
    }
}
