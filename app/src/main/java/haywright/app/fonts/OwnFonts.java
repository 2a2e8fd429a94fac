package haywright.app.fonts;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.Locale;
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

    /** The letters of a text that the font has no picture of, each once and in order. */
    public static String lacking(String text) {
        return text.codePoints()
                .filter(OwnFonts::isLacking)
                .distinct()
                .collect(StringBuilder::new, StringBuilder::appendCodePoint, StringBuilder::append)
                .toString();
    }

    /**
     * With the name that Unicode gives it in the place of each such letter, "(lamed-mem)" or "(cow)", so that two names
     * stay two and can be read out; the number where the name is one. Signs without a picture of their own, which the
     * font would print as a box, are left out.
     */
    public static String named(String text) {
        if (text.codePoints().allMatch(c -> c < ' ' || hasPicture(c))) {
            return text;
        }
        var all = new StringBuilder();
        boolean open = false;
        for (int c : text.codePoints().toArray()) {
            boolean named = c >= ' ' && isLacking(c);
            if (named) {
                all.append(open ? "-" : "(").append(name(c));
            } else if (c < ' ' || hasPicture(c)) {
                all.append(open ? ")" : "").appendCodePoint(c);
            }
            open = named || open && c >= ' ' && !hasPicture(c);
        }
        return all.append(open ? ")" : "").toString();
    }

    private static String name(int c) {
        var name = Objects.requireNonNullElse(Character.getName(c), "");
        boolean isNumber = name.isEmpty() || Character.isIdeographic(c);
        return isNumber
                ? Integer.toHexString(c).toUpperCase(Locale.ROOT)
                : name.replaceFirst("^.* (LETTER|POINT|MARK|VOWEL SIGN) ", "").toLowerCase(Locale.ROOT);
    }

    private static boolean isLacking(int c) {
        return !Character.isISOControl(c) && Character.getType(c) != Character.FORMAT && !isStyle(c) && !hasPicture(c);
    }

    /** How the picture before it is to look: in color, or with skin of some shade. */
    private static boolean isStyle(int c) {
        return c >= 0xFE00 && c <= 0xFE0F || c >= 0x1F3FB && c <= 0x1F3FF;
    }

    private static boolean hasPicture(int c) {
        try {
            return ALL.font.getUnicodeCmapLookup().getGlyphId(c) != 0;
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
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
