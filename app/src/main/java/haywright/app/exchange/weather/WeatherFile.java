package haywright.app.exchange.weather;

import haywright.app.exchange.Bounded;
import haywright.workings.Refused;
import java.io.BufferedInputStream;
import java.io.BufferedReader;
import java.io.EOFException;
import java.io.FilterInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import java.util.zip.GZIPInputStream;
import java.util.zip.ZipException;
import org.jspecify.annotations.Nullable;

/** A station's file as it was downloaded: plain, or packed by gzip. */
public final class WeatherFile {
    /** Bytes unpacked. A century of every element of one station takes some 15 MB in the wordiest layout. */
    private static final int MOST_BYTES = 32 * 1024 * 1024;

    /** Bytes. The widest layout takes some 2,000 for its heading; a line is split into cells, which take far more memory. */
    private static final int LONGEST_LINE = 64 * 1024;

    private static final int LOOKED_AT = 4096;

    private WeatherFile() {}

    /**
     * @param units of a CSV with a heading; null finds out from its figures
     * @throws Refused in words where it is no such file
     */
    public static GhcnDaily.Read read(InputStream file, GhcnDaily.@Nullable Units units) throws IOException {
        return open(file, lines -> GhcnDaily.read(lines, units));
    }

    /**
     * Its text, unpacked.
     *
     * @throws Refused in words where it is none
     */
    public static String text(InputStream file) throws IOException {
        return open(file, lines -> lines.collect(Collectors.joining("\n")));
    }

    private static <T> T open(InputStream file, Function<Stream<String>, T> reading) throws IOException {
        try (var in = new BufferedInputStream(
                new Lines(new Bounded(unpacked(new BufferedInputStream(file)), MOST_BYTES, WeatherFile::tooMuch)),
                LOOKED_AT)) {
            in.mark(LOOKED_AT);
            for (byte b : in.readNBytes(LOOKED_AT)) {
                if (b >= 0 && b < ' ' && !Character.isWhitespace(b)) {
                    throw notText();
                }
            }
            in.reset();
            return reading.apply(new BufferedReader(new InputStreamReader(in, StandardCharsets.UTF_8)).lines());
        } catch (UncheckedIOException e) {
            throw e.getCause() instanceof EOFException ? cutOff() : notText();
        } catch (ZipException e) {
            throw notText();
        } catch (EOFException e) {
            throw cutOff();
        }
    }

    private static InputStream unpacked(BufferedInputStream file) throws IOException {
        file.mark(2);
        boolean packed = file.read() == 0x1f && file.read() == 0x8b;
        file.reset();
        return packed ? new GZIPInputStream(file) : file;
    }

    /** Refuses a line without end as soon as it is too long. */
    private static final class Lines extends FilterInputStream {
        private int line = 1;
        private int length;

        Lines(InputStream in) {
            super(in);
        }

        @Override
        public int read() throws IOException {
            int read = super.read();
            if (read >= 0) {
                count((byte) read);
            }
            return read;
        }

        @Override
        public int read(byte[] into, int from, int most) throws IOException {
            int read = super.read(into, from, most);
            for (int i = from; i < from + read; i++) {
                count(into[i]);
            }
            return read;
        }

        private void count(byte one) {
            if (one == '\n') {
                line++;
                length = 0;
            } else if (++length > LONGEST_LINE) {
                throw new Refused(
                        "file",
                        "line " + line,
                        "a line of days is shorter than 64 kB",
                        "Is it the file of one station?");
            }
        }
    }

    private static Refused tooMuch() {
        return new Refused("file", "over 32 MB", "one station’s days take less", "Is it the file of one station?");
    }

    private static Refused cutOff() {
        return new Refused("file", "", "this file ends in the middle", "Download it again.");
    }

    private static Refused notText() {
        return new Refused(
                "file",
                "",
                "this is not a text of days",
                "Choose the .dly or .csv file itself; unpack a zip or a spreadsheet first.");
    }
}
