package haywright.app.report;

import com.openhtmltopdf.extend.FSStream;
import com.openhtmltopdf.pdfboxout.PdfRendererBuilder;
import com.openhtmltopdf.svgsupport.BatikSVGDrawer;
import com.openhtmltopdf.util.Diagnostic;
import com.openhtmltopdf.util.XRLog;
import gg.jte.ContentType;
import gg.jte.TemplateEngine;
import gg.jte.output.StringOutput;
import haywright.app.fonts.OwnFonts;
import haywright.app.words.Letters;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.Reader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.Arrays;
import java.util.Calendar;
import java.util.GregorianCalendar;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.TimeZone;
import java.util.function.Consumer;
import java.util.function.DoubleFunction;

/**
 * A page ready to be printed: well-formed XHTML with its style and its pictures (SVG) inside it.
 *
 * @param xhtml whole, with title and language; it can name nothing outside the program but {@code res:/fonts/…}
 * @param dated the day it stands for, which the file carries as its date: the same page gives the same bytes
 */
public record Paper(String xhtml, LocalDate dated) {
    /** A document may hold signs that the form of a page does not: another program put them in, or an older Haywright. */
    public Paper {
        xhtml = Letters.ofXml(xhtml);
    }

    private static final double POINTS_STEP = 0.5;

    private static final List<FontFace> FONTS = List.of(
            new FontFace("Regular", 400, "normal"),
            new FontFace("Italic", 400, "italic"),
            new FontFace("SemiBold", 600, "normal"),
            new FontFace("Bold", 700, "normal"));

    /** Pictures have one cut: of several the picture writer takes the italic, whatever was asked for. */
    private static final String FOR_PICTURES =
            new FontFace("SemiBold", 400, "normal").css().replace("Source Sans 3", "Source Sans 3 Pictures");

    /**
     * On one page, in smaller print if it must be; only what does not fit in the smallest runs onto a second one.
     *
     * @param at the same page in print of so many points
     */
    static Paper onOnePage(double largest, double smallest, DoubleFunction<Paper> at) {
        double points = largest;
        var paper = at.apply(points);
        while (paper.pages() > 1 && points > smallest) {
            points -= POINTS_STEP;
            paper = at.apply(points);
        }
        return paper;
    }

    private record FontFace(String cut, int weight, String style) {
        String css() {
            return """
                    @font-face { font-family: "Source Sans 3"; font-weight: %d; font-style: %s;
                      src: url(res:/fonts/SourceSans3-%s.ttf);
                      -fs-pdf-font-embed: embed; -fs-pdf-font-encoding: Identity-H }
                    """.formatted(weight, style, cut);
        }
    }

    static {
        // Every font is embedded from the program: without this the library looks through the machine's fonts, keeps a
        // list of them in the home folder, and the same page comes out differently elsewhere.
        OwnFonts.use();
        XRLog.setLoggingEnabled(false);
    }

    /** What a printer is loaded with. */
    public enum Size {
        LETTER("8.5in 11in"),
        A4("210mm 297mm");

        private final String css;

        Size(String css) {
            this.css = css;
        }

        public String id() {
            return name().toLowerCase(Locale.ROOT);
        }

        /** @param asked {@code letter.pdf}; empty for what is none */
        public static Optional<Size> of(String asked) {
            return Arrays.stream(values())
                    .filter(size -> asked.equals(size.id()) || asked.equals(size.id() + ".pdf"))
                    .findFirst();
        }
    }

    private static final TemplateEngine TEMPLATES = TemplateEngine.createPrecompiled(
            null, ContentType.Html, Paper.class.getClassLoader(), "haywright.app.pages");

    /**
     * A paper from its template, between head and fonts.
     *
     * @param about one line for whoever cannot see the page
     * @param template path from the source folder; its one parameter is {@code view}
     * @param points size of its plain text; everything else on it is in proportion
     */
    static Paper of(
            String title, String about, String template, Object view, Size size, double points, LocalDate dated) {
        return of(title, about, template, view, size, points, dated, "");
    }

    /** @param foot stands on every page with the page's number; none where it is empty */
    static Paper of(
            String title,
            String about,
            String template,
            Object view,
            Size size,
            double points,
            LocalDate dated,
            String foot) {
        var body = new StringOutput();
        TEMPLATES.render(template, Map.of("view", view), body);
        var xhtml = new StringOutput();
        TEMPLATES.render(
                "haywright/app/report/paper.jte",
                Map.of(
                        "title",
                        title,
                        "about",
                        about,
                        "style",
                        style(size, points) + foot(foot),
                        "body",
                        body.toString()),
                xhtml);
        return new Paper(xhtml.toString(), dated);
    }

    /** A page that is no paper: one file to be carried away. @param template path from the source folder; it has {@code @param … view} */
    public static String text(String template, Object view) {
        var text = new StringOutput();
        TEMPLATES.render(template, Map.of("view", view), text);
        return text.toString();
    }

    /** A ranch's name is text and nothing else: what could end the string or the style is written as its number. */
    private static String foot(String words) {
        if (words.isEmpty()) {
            return "";
        }
        var safe = new StringBuilder();
        words.codePoints()
                .forEach(c -> safe.append(
                        Character.isLetterOrDigit(c) || c == ' ' ? Character.toString(c) : "\\%06x ".formatted(c)));
        var face = "font-family: \"Source Sans 3\", sans-serif; font-size: 9pt";
        return """
                @page { @bottom-left { content: "%s"; %s }
                  @bottom-right { content: "Page " counter(page) " of " counter(pages); %s } }
                """.formatted(safe, face, face);
    }

    private static String style(Size size, double points) {
        var style = new StringBuilder("@page { size: %s; margin: 13mm 15mm } .paper { margin: 0; font-size: %spt }\n"
                .formatted(size.css, points));
        FONTS.forEach(font -> style.append(font.css()));
        style.append(FOR_PICTURES);
        try (var in = Objects.requireNonNull(Paper.class.getResourceAsStream("papers.css"))) {
            return style.append(new String(in.readAllBytes(), StandardCharsets.UTF_8))
                    .toString();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    public byte[] pdf() {
        return pdf(complaint -> {});
    }

    /** @param complaints takes what the library has to say against the page */
    byte[] pdf(Consumer<Diagnostic> complaints) {
        var builder = builder().withDiagnosticConsumer(complaints);
        try (var picture = new BatikSVGDrawer();
                var renderer = builder.useSVGDrawer(picture).buildPdfRenderer();
                var document = renderer.createPDFKeepOpen()) {
            var about = document.getDocumentInformation();
            about.setCreationDate(noon());
            about.setModificationDate(noon());
            document.setDocumentId((long) xhtml.hashCode());
            var bytes = new ByteArrayOutputStream();
            document.save(bytes);
            return bytes.toByteArray();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private Calendar noon() {
        var calendar = new GregorianCalendar(TimeZone.getTimeZone(ZoneOffset.UTC), Locale.ROOT);
        calendar.setTimeInMillis(dated.atTime(12, 0).toInstant(ZoneOffset.UTC).toEpochMilli());
        return calendar;
    }

    /** The letters that the font has no picture of, each once: printed is the name of each, in brackets. */
    public String lacking() {
        return OwnFonts.lacking(xhtml);
    }

    /** How many pages it takes. Pictures are as large as they will be drawn; without their drawer they would be text. */
    int pages() {
        try (var picture = new BatikSVGDrawer();
                var renderer = builder().useSVGDrawer(picture).buildPdfRenderer()) {
            renderer.layout();
            return renderer.getRootBox().getLayer().getPages().size();
        }
    }

    private PdfRendererBuilder builder() {
        return new PdfRendererBuilder()
                .withHtmlContent(OwnFonts.named(xhtml), null)
                .usePdfUaAccessibility(true)
                .withProducer("Haywright")
                .useUriResolver((base, uri) -> isOwn(uri) ? uri : null)
                .useProtocolsStreamImplementation(Resource::new, "res");
    }

    /** Text typed on a ranch can name files and addresses; none of them is ever fetched. */
    static boolean isOwn(String uri) {
        return uri.matches("res:/fonts/[A-Za-z0-9-]+\\.ttf");
    }

    /** One of the program's own files. */
    private record Resource(String uri) implements FSStream {
        @Override
        public InputStream getStream() {
            try (var in =
                    Objects.requireNonNull(Paper.class.getResourceAsStream(uri.substring("res:".length())), uri)) {
                return new ByteArrayInputStream(withoutLigatures(in.readAllBytes()));
            } catch (IOException e) {
                throw new UncheckedIOException(e);
            }
        }

        /**
         * The PDF writer joins letters as the font tells it to and then forgets which letters they were, so that "left" is
         * copied and read aloud as "le". Its own setting for that is out of reach; a font whose table of joins has another
         * name has none.
         */
        private static byte[] withoutLigatures(byte[] font) {
            int tables = (font[4] & 0xff) << 8 | font[5] & 0xff;
            for (int at = 12; at < 12 + 16 * tables; at += 16) {
                if (new String(font, at, 4, StandardCharsets.US_ASCII).equals("GSUB")) {
                    font[at] = 'X';
                }
            }
            return font;
        }

        @Override
        public Reader getReader() {
            return new InputStreamReader(getStream(), StandardCharsets.UTF_8);
        }
    }

    /** A file of this room, put into the one file that goes to a phone. */
    public static String own(String name) {
        try (var in = Objects.requireNonNull(Paper.class.getResourceAsStream(name), name)) {
            return new String(in.readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
