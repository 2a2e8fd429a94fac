package haywright.app.exchange.pdf;

import haywright.workings.Refused;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.regex.Pattern;
import java.util.zip.InflaterInputStream;

/** Turns a file away before it is taken apart: too large, another kind, locked, or packed to burst. */
final class PdfLimits {
    /** What all the packed parts of a file may unpack to together, pictures aside, which are not unpacked. */
    private static final long MOST_UNPACKED = 200_000_000;

    private static final Pattern PACKED = Pattern.compile("/Fl(?:ateDecode)?(?![A-Za-z])");

    private PdfLimits() {}

    static void check(byte[] file) {
        if (file.length > PdfText.MOST_BYTES) {
            throw new Refused(
                    "file",
                    "more than %d MB".formatted(PdfText.MOST_BYTES / 1_000_000),
                    "a report is smaller than %d MB".formatted(PdfText.MOST_BYTES / 1_000_000),
                    "Is this the right file? Print the pages with the reports to a PDF of their own.");
        }
        if (!PdfText.isPdf(file)) {
            throw new Refused(
                    "file",
                    "",
                    "this is not a PDF, whatever its name says",
                    "Open it where it came from, then save the report as PDF or CSV, or paste its text.");
        }
        var plain = new String(file, StandardCharsets.ISO_8859_1);
        if (plain.contains("/Encrypt")) {
            throw locked();
        }
        checkUnpacked(file, plain);
    }

    static Refused locked() {
        return new Refused(
                "file",
                "",
                "this PDF is locked (encrypted)",
                "Open it with its password and print it to a PDF without one, or copy its text and paste it.");
    }

    private static void checkUnpacked(byte[] file, String plain) {
        long unpacked = 0;
        var buffer = new byte[1 << 16];
        int at = plain.indexOf("stream");
        for (int end = 0; at >= 0; at = plain.indexOf("stream", Math.max(end, at + 6))) {
            if (at > 2 && plain.startsWith("end", at - 3)) {
                continue;
            }
            var about = plain.substring(Math.max(end, Math.max(0, at - 2000)), at);
            about = about.substring(Math.max(0, about.lastIndexOf(" obj")));
            int from = at + 6;
            while (from < file.length && (file[from] == '\r' || file[from] == '\n')) {
                from++;
            }
            end = Math.max(from, plain.indexOf("endstream", from));
            boolean isPicture = about.contains("/Image");
            long packings = PACKED.matcher(about).results().count();
            if (packings > 1 && !isPicture) {
                throw bursting(); // packed twice: no writer of reports does that
            }
            if (!isPicture && packings == 1) {
                unpacked = unpack(file, from, buffer, unpacked);
            }
        }
    }

    private static long unpack(byte[] file, int from, byte[] buffer, long before) {
        long unpacked = before;
        try (var in = new InflaterInputStream(new ByteArrayInputStream(file, from, file.length - from))) {
            for (int read = in.read(buffer); read > 0; read = in.read(buffer)) {
                unpacked += read;
                if (unpacked > MOST_UNPACKED) {
                    throw bursting();
                }
            }
        } catch (IOException e) {
            return unpacked; // broken: the reader says so
        }
        return unpacked;
    }

    private static Refused bursting() {
        return new Refused(
                "file",
                "",
                "it is packed so that it would unpack to far more than a report",
                "Get it once more from the laboratory, or copy its text and paste it.");
    }
}
