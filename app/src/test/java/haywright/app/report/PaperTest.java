package haywright.app.report;

import static org.assertj.core.api.Assertions.assertThat;

import com.openhtmltopdf.util.Diagnostic;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.logging.Level;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class PaperTest {
    private static final LocalDate DAY = LocalDate.of(2026, 11, 25);

    private static Paper paper(String body) {
        return new Paper("""
                <!DOCTYPE html>
                <html lang="en" xmlns="http://www.w3.org/1999/xhtml"><head><title>A trial page</title>
                <meta name="description" content="A trial page"/><style>
                @font-face { font-family: Sans; src: url(res:/fonts/SourceSans3-Regular.ttf);
                  -fs-pdf-font-embed: embed; -fs-pdf-font-encoding: Identity-H }
                @page { size: 8.5in 11in; margin: 0.7in }
                body { font-family: Sans; font-weight: normal }
                </style></head><body>%s</body></html>
                """.formatted(body), DAY);
    }

    private static List<Diagnostic> complaints(Paper paper) {
        var complaints = new ArrayList<Diagnostic>();
        paper.pdf(complaints::add);
        complaints.removeIf(c -> c.getLevel().intValue() < Level.WARNING.intValue());
        return complaints;
    }

    private static String text(byte[] pdf) throws IOException {
        try (var document = Loader.loadPDF(pdf)) {
            return new PDFTextStripper().getText(document);
        }
    }

    @Test
    void textPicturesAndFractionsArePrintedAndTagged() throws IOException {
        var page = paper("""
                <h1>Seven and a half: 7½ bales</h1><p>−20 °F</p>
                <svg xmlns="http://www.w3.org/2000/svg" width="100" height="20" alt="A bar"><title>A bar</title>
                <rect width="80" height="20" fill="#000000"/><text x="2" y="14" font-family="Sans">bar</text></svg>
                """);
        assertThat(complaints(page)).extracting(Diagnostic::getFormattedMessage).isEmpty();
        try (PDDocument document = Loader.loadPDF(page.pdf())) {
            assertThat(new PDFTextStripper().getText(document)).contains("Seven and a half: 7½ bales", "−20 °F");
            assertThat(document.getDocumentCatalog().getMarkInfo().isMarked()).isTrue();
            assertThat(document.getDocumentCatalog().getStructureTreeRoot()).isNotNull();
            assertThat(document.getDocumentCatalog().getLanguage()).isEqualTo("en");
            assertThat(document.getDocumentInformation().getTitle()).isEqualTo("A trial page");
        }
    }

    /** Char of XML 1.0, W3C, section 2.2: these are none. */
    @Test
    void signsThatAPageCannotHoldStopNoPaper() throws IOException {
        for (var sign : List.of("\u000b", "\f", "\u001b", "\u0001", "\ufffe", "\uffff", "\ud800")) {
            assertThat(text(paper("<p>Meadow" + sign + "hay</p>").pdf())).contains("Meadow hay");
        }
    }

    /** The names and numbers are those of the Unicode charts: CJK Unified Ideographs, Hebrew, Emoticons, Animals. */
    @Test
    void lettersThatTheFontLacksArePrintedAsTheirNames() throws IOException {
        var page = paper("<p>漢 hay, 字 hay, \u05dc\u05de, 😀, \uD83D\uDC04\uFE0F feed, Śląsk, ½\u200b</p>");
        assertThat(text(page.pdf()))
                .contains("(6F22) hay, (5B57) hay, (lamed-mem), (grinning face), (cow) feed, Śląsk, ½");
        assertThat(page.lacking()).isEqualTo("漢字\u05dc\u05de😀\uD83D\uDC04");
        assertThat(paper("<p>Hay – 7½ “lb” ≥ −20 °F\u00a0\u00ad</p>").lacking()).isEmpty();
    }

    @Test
    void theSamePageGivesTheSameBytes() {
        assertThat(paper("<p>Hay</p>").pdf()).isEqualTo(paper("<p>Hay</p>").pdf());
    }

    @Test
    void nothingOutsideTheProgramIsRead(@TempDir Path folder) throws IOException {
        var secret = folder.resolve("secret.html");
        Files.writeString(secret, "<p>secret</p>");
        var style = folder.resolve("secret.css");
        Files.writeString(style, "p:before { content: 'secret' }");
        var page = paper("<p>Hay</p><object data=\"%s\" type=\"text/html\"></object><img alt=\"x\" src=\"%s\"/>"
                .formatted(secret.toUri(), secret.toUri()));
        var linked = new Paper(
                page.xhtml()
                        .replace(
                                "<style>",
                                "<link rel=\"stylesheet\" href=\"%s\"/><style>@import url(%s);"
                                        .formatted(style.toUri(), style.toUri())),
                DAY);
        assertThat(text(linked.pdf())).contains("Hay").doesNotContain("secret");
        for (var uri : List.of(
                "file:/etc/passwd",
                "http://example.org/a.ttf",
                "res:/haywright/app/version.txt",
                "res:/fonts/../haywright/app/version.txt",
                "fonts/SourceSans3-Regular.ttf")) {
            assertThat(Paper.isOwn(uri)).as(uri).isFalse();
        }
        assertThat(Paper.isOwn("res:/fonts/SourceSans3-Bold.ttf")).isTrue();
    }

    @Test
    void noListOfTheMachinesFontsIsLeftAnywhere() {
        var list = Path.of(System.getProperty("user.home"), ".pdfbox.cache").toFile();
        long before = list.lastModified(); // 0 where there is none; another program may have left its own
        paper("<p>Hay</p>").pdf();
        assertThat(list.lastModified()).isEqualTo(before);
    }
}
