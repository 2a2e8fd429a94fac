package haywright.app.exchange.pdf;

import haywright.app.fonts.OwnFonts;
import haywright.workings.Refused;
import java.io.IOException;
import java.io.Writer;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.stream.Collectors;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.encryption.InvalidPasswordException;
import org.apache.pdfbox.text.PDFTextStripper;
import org.apache.pdfbox.text.TextPosition;

/**
 * The words of a PDF as lines of text, each word in the column of the page where it stands, so that what was under a
 * heading still is. Pages are parted by a line of their own. Nothing in the file is run, and nothing in it is fetched.
 */
final class PdfPages {
    private static final int MOST_PAGES = 400;
    /** Fewer letters on all pages together are a stamp on a picture, not a report. */
    private static final int FEWEST_LETTERS = 20;
    /** Width of a column of text in points: narrower than the letters of the smallest print, so that none collide. */
    private static final double COLUMN = 3;
    /** Wider than between words, in heights of a letter: the next cell begins. */
    private static final double CELL_GAP = 0.8;

    private static final double WORD_GAP = 0.15;
    /** A figure set so much smaller than the letters before it is raised: the mark of a footnote. */
    private static final double RAISED = 0.85;

    static {
        OwnFonts.use();
    }

    private PdfPages() {}

    /** @throws Refused in words: locked, broken, more than reports have, or a picture of a report without any text */
    static String of(byte[] file) {
        try (var document = Loader.loadPDF(file)) {
            if (document.isEncrypted()) {
                throw locked();
            }
            if (document.getNumberOfPages() > MOST_PAGES) {
                throw new Refused(
                        "file",
                        document.getNumberOfPages() + " pages",
                        "more than %d pages are not read at once".formatted(MOST_PAGES),
                        "Print the pages with the reports to a PDF of their own.");
            }
            return text(document);
        } catch (InvalidPasswordException e) {
            throw locked();
        } catch (Refused e) {
            throw e;
        } catch (IOException | RuntimeException | StackOverflowError e) {
            throw new Refused(
                    "file",
                    "",
                    "this PDF is broken and cannot be read",
                    "Get it once more from the laboratory, or copy its text and paste it.");
        }
    }

    private static Refused locked() {
        return new Refused(
                "file",
                "",
                "this PDF is locked (encrypted)",
                "Open it with its password and print it to a PDF without one, or copy its text and paste it.");
    }

    private static String text(PDDocument document) throws IOException {
        var pages = new Pages();
        pages.writeText(document, Writer.nullWriter());
        if (pages.letters < FEWEST_LETTERS) {
            throw new Refused(
                    "file",
                    "",
                    document.getNumberOfPages() == 0
                            ? "this PDF has no pages"
                            : hasPictures(document)
                                    ? "there is no text in this PDF: its pages are pictures, as a scanner makes them"
                                    : "there is no text in this PDF: its pages are blank, or what is on them is drawn and not written",
                    "Ask the laboratory for the file it mailed or for a CSV, or type the figures from the paper.");
        }
        return pages.text.toString();
    }

    private static boolean hasPictures(PDDocument document) {
        for (var page : document.getPages()) {
            var held = page.getResources();
            if (held != null && held.getXObjectNames().iterator().hasNext()) {
                return true;
            }
        }
        return false;
    }

    /** A word and where it stands, in points from the left. */
    private record Word(String text, double from, double to, double height) {}

    private static final class Pages extends PDFTextStripper {
        private final StringBuilder text = new StringBuilder();
        private final List<TextPosition> line = new ArrayList<>();
        private int letters;

        Pages() {
            setSortByPosition(true);
        }

        @Override
        protected void writeString(String words, List<TextPosition> positions) {
            line.addAll(positions);
        }

        @Override
        protected void writeLineSeparator() {
            flush();
        }

        @Override
        protected void writePageEnd() {
            flush();
        }

        @Override
        protected void startPage(org.apache.pdfbox.pdmodel.PDPage page) {
            if (getCurrentPageNo() > 1) {
                text.append("--- page ").append(getCurrentPageNo()).append(" ---\n");
            }
        }

        private void flush() {
            line.sort(Comparator.comparingDouble(TextPosition::getXDirAdj));
            int start = text.length();
            for (var cell : cells()) {
                boolean isFirst = text.length() == start;
                // letters are wider than a column: the middle of a cell is where it stands, of the first its first
                // word's
                var placed = isFirst ? cell.subList(0, 1) : cell;
                var words = cell.stream().map(Word::text).collect(Collectors.joining(" "));
                int length = isFirst ? placed.get(0).text.length() : words.length();
                double middle = (placed.get(0).from + placed.get(placed.size() - 1).to) / 2;
                int wanted = (int) Math.round(middle / COLUMN - length / 2.0);
                int least = text.length() - start;
                int column = isFirst ? Math.max(0, wanted) : Math.max(least + 2, wanted);
                text.append(" ".repeat(column - least)).append(words);
            }
            letters += text.length() - start;
            if (letters > PdfText.MOST_LETTERS) {
                throw PdfText.tooBig();
            }
            text.append('\n');
            line.clear();
        }

        private List<List<Word>> cells() {
            var cells = new ArrayList<List<Word>>();
            double before = Double.NEGATIVE_INFINITY;
            for (var word : words()) {
                if (word.from - before > CELL_GAP * word.height) {
                    cells.add(new ArrayList<>());
                }
                cells.get(cells.size() - 1).add(word);
                before = word.to;
            }
            return cells;
        }

        private List<Word> words() {
            var words = new ArrayList<Word>();
            var word = new StringBuilder();
            double from = 0;
            double to = Double.NEGATIVE_INFINITY;
            double height = 0;
            for (var letter : line) {
                double x = letter.getXDirAdj();
                boolean isSpace = letter.getUnicode().isBlank();
                if (!word.isEmpty() && (isSpace || x - to > WORD_GAP * height(letter))) {
                    words.add(new Word(word.toString(), from, to, height));
                    word.setLength(0);
                }
                if (!isSpace) {
                    from = word.isEmpty() ? x : from;
                    var text = plain(letter.getUnicode());
                    boolean isRaised = text.matches("[0-9]") && !word.isEmpty() && height(letter) < RAISED * height;
                    word.append(isRaised ? "⁰¹²³⁴⁵⁶⁷⁸⁹".charAt(text.charAt(0) - '0') : text);
                    height = isRaised ? height : height(letter);
                    to = x + letter.getWidthDirAdj();
                }
            }
            if (!word.isEmpty()) {
                words.add(new Word(word.toString(), from, to, height));
            }
            return words;
        }

        /** Of a letter as it is printed: many programs draw a page several times too large and have it shrunk as a whole. */
        private static double height(TextPosition letter) {
            return letter.getYScale();
        }

        /** Without control characters, and with "fi" for the one letter that some fonts print it as; a raised figure stays raised. */
        private static String plain(String letter) {
            return letter.matches("[⁰-⁹¹²³]+")
                    ? letter
                    : java.text.Normalizer.normalize(letter, java.text.Normalizer.Form.NFKC)
                            .replaceAll("\\p{Cntrl}", "");
        }
    }
}
