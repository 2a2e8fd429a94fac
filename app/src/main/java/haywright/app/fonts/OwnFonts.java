package haywright.app.fonts;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.Objects;
import org.apache.fontbox.FontBoxFont;
import org.apache.fontbox.ttf.TTFParser;
import org.apache.fontbox.ttf.TrueTypeFont;
import org.apache.pdfbox.io.RandomAccessReadBuffer;
import org.apache.pdfbox.pdmodel.font.CIDFontMapping;
import org.apache.pdfbox.pdmodel.font.FontMapper;
import org.apache.pdfbox.pdmodel.font.FontMappers;
import org.apache.pdfbox.pdmodel.font.FontMapping;
import org.apache.pdfbox.pdmodel.font.PDCIDSystemInfo;
import org.apache.pdfbox.pdmodel.font.PDFontDescriptor;
import org.jspecify.annotations.Nullable;

/**
 * Stands in for a font that a PDF names and does not carry: always the program's own, never one of the machine's. It is
 * not called a fallback, because the library would write a warning of it for every page.
 */
public final class OwnFonts implements FontMapper {
    private static final OwnFonts ALL = new OwnFonts();

    private final TrueTypeFont font = read();

    private OwnFonts() {}

    /** For every PDF that is written or read from now on; otherwise the library lists the machine's fonts in a file. */
    public static void use() {
        FontMappers.set(ALL);
    }

    private static TrueTypeFont read() {
        try (var in = Objects.requireNonNull(OwnFonts.class.getResourceAsStream("/fonts/SourceSans3-Regular.ttf"))) {
            return new TTFParser().parse(new RandomAccessReadBuffer(in));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    @Override
    public FontMapping<TrueTypeFont> getTrueTypeFont(String name, @Nullable PDFontDescriptor descriptor) {
        return new FontMapping<>(font, false);
    }

    @Override
    public FontMapping<FontBoxFont> getFontBoxFont(String name, @Nullable PDFontDescriptor descriptor) {
        return new FontMapping<>(font, false);
    }

    @Override
    public CIDFontMapping getCIDFont(
            String name, @Nullable PDFontDescriptor descriptor, @Nullable PDCIDSystemInfo system) {
        return new CIDFontMapping(null, font, false);
    }
}
