package haywright.app.exchange.sheet;

import haywright.sampling.Taken;
import haywright.workings.Refused;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.zip.CRC32;

/**
 * A field sheet that came back.
 *
 * <pre>
 * HAYWRIGHT SHEET 1
 * S4K2QX-261125-JB-11111111118Q      the line with its check letter
 * Differed: bale 4 was frozen in     words, on one line; may be empty
 * Photos: face.jpg, probe.jpg        may be empty
 * Check: 8f3a01bc                    CRC-32 of everything above it
 * </pre>
 *
 * The first line alone, without the heading, is enough for a message; words and photos do not come with it.
 */
public final class SheetFile {
    private static final String HEADING = "HAYWRIGHT SHEET 1";
    private static final String DIFFERED = "Differed: ";
    private static final String PHOTOS = "Photos: ";
    private static final String CHECK = "Check: ";

    private SheetFile() {}

    public static String write(String sheet, Taken taken) {
        var above = HEADING + "\n" + taken.line(sheet) + "\n" + DIFFERED + oneLine(taken.differed()) + "\n" + PHOTOS
                + oneLine(String.join(", ", taken.photos())) + "\n";
        return above + CHECK + check(above) + "\n";
    }

    /** @throws Refused when anything in it was changed on the way */
    public static Taken.Returned read(String text) {
        if (isOneLine(text)) {
            return Taken.read(line(text));
        }
        var lines =
                text.replace("\ufeff", "").strip().lines().map(String::strip).toList();
        if (lines.size() != 5
                || !lines.get(0).equals(HEADING)
                || !isLabeled(lines.get(2), DIFFERED)
                || !isLabeled(lines.get(3), PHOTOS)
                || !lines.get(4).startsWith(CHECK)) {
            throw new Refused(
                    "line",
                    lines.isEmpty() ? "" : lines.get(0),
                    "it is neither the line nor the file that a field sheet gives back",
                    "Copy the whole line, or send the file again.");
        }
        var above = lines.get(0) + "\n" + lines.get(1) + "\n" + DIFFERED + after(lines.get(2), DIFFERED) + "\n" + PHOTOS
                + after(lines.get(3), PHOTOS) + "\n";
        if (!check(above).equals(lines.get(4).substring(CHECK.length()).strip())) {
            throw new Refused(
                    "line",
                    lines.get(4),
                    "the check at its end does not fit the file, so something in it was changed",
                    "Send the file again from the phone.");
        }
        var back = Taken.read(lines.get(1));
        var taken = back.taken();
        return new Taken.Returned(
                back.sheet(),
                new Taken(
                        taken.on(),
                        taken.by(),
                        taken.cores(),
                        after(lines.get(2), DIFFERED),
                        photos(after(lines.get(3), PHOTOS))));
    }

    /** Without the blanks, line breaks and long dashes that a message puts into a line; they carry nothing. */
    public static String line(String text) {
        return text.replaceAll("[\\s\\p{Z}\\p{Cf}]+", "").replaceAll("\\p{Pd}", "-");
    }

    private static boolean isOneLine(String text) {
        return line(text).matches("[A-Za-z0-9-]*") || text.strip().lines().count() == 1;
    }

    /** Names as a person lists them: separated by commas. */
    public static List<String> photos(String typed) {
        return new ArrayList<>(Arrays.stream(typed.split(","))
                .map(String::strip)
                .filter(name -> !name.isEmpty())
                .toList());
    }

    /** Blanks at the end of a line are lost on the way, so an empty label has none behind it. */
    private static boolean isLabeled(String line, String label) {
        return line.startsWith(label) || line.equals(label.strip());
    }

    private static String after(String line, String label) {
        return line.length() <= label.length()
                ? ""
                : line.substring(label.length()).strip();
    }

    private static String oneLine(String words) {
        return words.replaceAll("\\s+", " ").strip();
    }

    private static String check(String above) {
        var crc = new CRC32();
        crc.update(above.getBytes(StandardCharsets.UTF_8));
        return "%08x".formatted(crc.getValue());
    }
}
