package haywright.app.exchange.pdf;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import haywright.workings.Refused;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.concurrent.CompletableFuture;
import java.util.stream.Stream;
import java.util.zip.DeflaterOutputStream;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;

/** Small files that make a reader work without end: each is given up within the limit, and nothing of it goes on. */
class PdfTextTest {
    /** Shorter than anybody has to wait; these would all take longer than any limit. */
    private static final int SECONDS = 2;

    private static byte[] packed(String content) throws IOException {
        var packed = new ByteArrayOutputStream();
        try (var out = new DeflaterOutputStream(packed)) {
            out.write(content.getBytes(StandardCharsets.ISO_8859_1));
        }
        return packed.toByteArray();
    }

    /** One page with this content and these other objects. */
    private static byte[] pdf(String resources, byte[] content, String... more) throws IOException {
        var pdf = new ByteArrayOutputStream();
        write(pdf, "%PDF-1.4\n1 0 obj<</Type/Catalog/Pages 2 0 R>>endobj\n");
        write(pdf, "2 0 obj<</Type/Pages/Kids[3 0 R]/Count 1>>endobj\n");
        write(
                pdf,
                "3 0 obj<</Type/Page/Parent 2 0 R/MediaBox[0 0 612 792]/Contents 4 0 R/Resources<</Font<</F 5 0 R>>"
                        + resources + ">>>>endobj\n");
        write(pdf, "4 0 obj<</Filter/FlateDecode/Length " + content.length + ">>stream\n");
        pdf.write(content);
        write(pdf, "\nendstream endobj\n5 0 obj<</Type/Font/Subtype/Type1/BaseFont/Helvetica>>endobj\n");
        for (var object : more) {
            write(pdf, object);
        }
        write(pdf, "trailer<</Root 1 0 R>>\n%%EOF\n");
        return pdf.toByteArray();
    }

    private static void write(ByteArrayOutputStream to, String text) {
        to.writeBytes(text.getBytes(StandardCharsets.ISO_8859_1));
    }

    private static String form(int number, String content) {
        return "%d 0 obj<</Type/XObject/Subtype/Form/BBox[0 0 612 792]/Resources<</Font<</F 5 0 R>>/XObject<</N %d 0 R>>>>/Length %d>>stream%n%s%nendstream endobj%n"
                .formatted(number, number + 1, content.length(), content);
    }

    /** Each letter a little further right and far below: the reader compares each with all before it, for a minute. */
    private static byte[] slant() throws IOException {
        return pdf("", packed("BT /F 9 Tf 72 700 Td " + "0.0001 5 Td (a) Tj ".repeat(100_000) + "ET"));
    }

    private static void isGivenUp(byte[] pdf) {
        assertThatThrownBy(() -> PdfText.of(pdf, SECONDS))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("too big to read here")
                .hasMessageContaining("paste");
    }

    @AfterEach
    void nothingGoesOn() {
        assertThat(ProcessHandle.current().children().filter(ProcessHandle::isAlive))
                .isEmpty();
    }

    @Test
    void aHundredThousandPiecesOfTextAreGivenUp() throws IOException {
        var pdf = slant();
        assertThat(pdf.length).isLessThan(6000);
        isGivenUp(pdf);
    }

    @Test
    void aStreamThatUnpacksToAGigabyteIsGivenUp() throws IOException {
        try (var in = PdfTextTest.class.getResourceAsStream("/haywright/app/exchange/reports/bomb.pdf")) {
            isGivenUp(in.readAllBytes());
        }
    }

    @Test
    void formsThatCallTheNextOneTenTimesAreGivenUp() throws IOException {
        var forms = new String[12];
        for (int i = 0; i < forms.length; i++) {
            forms[i] = form(6 + i, i == forms.length - 1 ? "BT /F 9 Tf 72 700 Td (a) Tj ET" : "/N Do ".repeat(10));
        }
        isGivenUp(pdf("/XObject<</N 6 0 R>>", packed("/N Do"), forms));
    }

    @Test
    void whatGoesRoundOrDeepIsReadAsFarAsItGoesOrSaidToBeBroken() throws IOException {
        var round = form(6, "/N Do").replace("/N 7 0 R", "/N 6 0 R");
        var deep = "[".repeat(200_000) + "]".repeat(200_000);
        var pagesInThemselves = new String(pdf("", packed("BT ET")), StandardCharsets.ISO_8859_1)
                .replace("/Kids[3 0 R]", "/Kids[2 0 R]");
        for (var pdf : new byte[][] {
            pdf("/XObject<</N 6 0 R>>", packed("/N Do"), round),
            pdf("", packed(deep)),
            pdf("/Deep " + deep, packed("BT ET")),
            pagesInThemselves.getBytes(StandardCharsets.ISO_8859_1)
        }) {
            assertThatThrownBy(() -> PdfText.of(pdf)).isInstanceOf(Refused.class);
        }
    }

    @Test
    void manyAtOnceWaitForEachOtherAndAReportIsReadAfterThem() throws IOException {
        var pdf = slant();
        var all = Stream.generate(() -> CompletableFuture.runAsync(() -> PdfText.of(pdf, SECONDS)))
                .limit(4)
                .toList();
        all.forEach(one -> assertThatThrownBy(one::join).hasCauseInstanceOf(Refused.class));
        var report = pdf("", packed("BT /F 9 Tf 72 700 Td (Crude protein of the dry matter 12.5) Tj ET"));
        assertThat(PdfText.of(report)).contains("Crude protein of the dry matter 12.5");
    }
}
