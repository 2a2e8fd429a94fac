package haywright.app.report;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.openhtmltopdf.util.Diagnostic;
import haywright.app.document.TinLantern;
import haywright.app.report.picture.FieldDrawing;
import haywright.app.report.picture.StackDrawing;
import haywright.outlook.LotSubject;
import haywright.ranch.Lot;
import haywright.ranch.Ranch;
import haywright.ranch.Sampling;
import haywright.sampling.Aim;
import haywright.sampling.CheckLetter;
import haywright.sampling.SamplingPlan;
import haywright.sampling.field.FieldShape;
import haywright.sampling.field.FieldWalk;
import haywright.sampling.stock.Layout;
import java.io.IOException;
import java.io.StringReader;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.UUID;
import java.util.logging.Level;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import javax.xml.parsers.DocumentBuilderFactory;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.xml.sax.InputSource;

class FieldSheetTest {
    private static final Ranch DEMO = TinLantern.ranch();

    static Stream<Lot> lots() {
        return DEMO.lots().values().stream();
    }

    private static FieldSheet sheet(Lot lot) {
        var plan = SamplingPlan.of(LotSubject.of(lot), Aim.USUAL);
        var id = UUID.nameUUIDFromBytes(lot.name().getBytes(java.nio.charset.StandardCharsets.UTF_8));
        var sampling = Sampling.of(plan, id, lot.id(), lot.name(), LocalDate.of(2026, 12, 1));
        return FieldSheet.of(DEMO.with(sampling), sampling);
    }

    @ParameterizedTest
    @MethodSource("lots")
    void aSheetHasABoxForEachAndItsLabels(Lot lot) throws IOException {
        var sheet = sheet(lot);
        var complaints = new ArrayList<String>();
        byte[] pdf = sheet.paper(Paper.Size.LETTER).pdf(d -> {
            if (d.getLevel().intValue() >= Level.WARNING.intValue()) {
                complaints.add(words(d));
            }
        });
        assertThat(complaints).isEmpty();
        try (var document = Loader.loadPDF(pdf)) {
            var text = new PDFTextStripper().getText(document);
            assertThat(text).contains(lot.name(), sheet.sampling().code(), "safety rules come first", "invented");
            sheet.labels().forEach(label -> assertThat(text).contains(label.bag()));
            assertThat(document.getNumberOfPages()).isLessThanOrEqualTo(3);
        }
        sheet.labels()
                .forEach(label -> assertThat(CheckLetter.read(label.bag()))
                        .startsWith(sheet.sampling().code()));
        assertThat(sheet.rows()).hasSameSizeAs(sheet.sampling().picks());
    }

    /** A page that the wind took is known by its foot, and so is one that is missing. */
    @Test
    void everyPageNamesItsSheetRanchAndNumber() throws IOException {
        var sheet = sheet(lot("Meadow hay"));
        try (var document = Loader.loadPDF(sheet.paper(Paper.Size.LETTER).pdf())) {
            int pages = document.getNumberOfPages();
            for (int page = 1; page <= pages; page++) {
                var stripper = new PDFTextStripper();
                stripper.setStartPage(page);
                stripper.setEndPage(page);
                assertThat(stripper.getText(document))
                        .contains(
                                "Field sheet " + sheet.sampling().code() + " · Tin Lantern Ranch (invented)",
                                "Page %d of %d".formatted(page, pages));
            }
        }
    }

    @Test
    void theSheetHasItsKeyAndWhatColdAndIceAskFor() throws IOException {
        var straw = sheet(lot("Barley straw"));
        assertThat(straw.key()).isEqualTo(StackDrawing.KEY);
        assertThat(firstPage(straw)).contains("by daylight and not alone", "ice");
        assertThat(straw.phonePage()).contains(StackDrawing.KEY, "name=\"weights\"", "Bales weighed, lb");
        assertThat(sheet(lot("Standing meadow")).phonePage()).contains("Grams of each plot as cut");
        // the ticks come before the drawing's and the words' length: they are folded
        var page = straw.phonePage();
        assertThat(page.indexOf("<details")).isLessThan(page.indexOf("name=\"unit\""));
        assertThat(page).doesNotContain("<details open");
    }

    private static String words(Diagnostic d) {
        return d.getFormattedMessage();
    }

    /** Paper, phone and GPS name the same stops. */
    @Test
    void thePlotsOfAStandingLotAreTheStopsOfItsWalk() {
        var lot = lots().filter(l -> l.stock() instanceof haywright.sampling.stock.Stock.Standing)
                .findFirst()
                .orElseThrow();
        var sheet = sheet(lot);
        var field = sheet.field().orElseThrow();
        var gpx = new haywright.app.exchange.gpx.Gpx(
                        "f", field.walks(sheet.rows().size(), sheet.sampling().seed()))
                .text();
        var stop = Pattern.compile("<wpt lat=\"([^\"]*)\" lon=\"([^\"]*)\"><name>([^<]*)</name>")
                .matcher(gpx);
        for (var row : sheet.rows()) {
            assertThat(stop.find()).isTrue();
            var place = row.where().split("[ ,]+"); // S01 at 45.20046, 88.10068
            assertThat(place[0]).isEqualTo(stop.group(3));
            assertThat(Double.parseDouble(place[2])).isCloseTo(Double.parseDouble(stop.group(1)), within(0.51e-5));
            assertThat(Double.parseDouble(place[3])).isCloseTo(Double.parseDouble(stop.group(2)), within(0.51e-5));
        }
        assertThat(stop.find()).isFalse();
        assertThat(sheet.drawing()).contains("The walk across the field");
        assertThat(sheet.increments()).isEqualTo("Cuts");
    }

    private static Lot lot(String name) {
        return lots().filter(l -> l.name().equals(name)).findFirst().orElseThrow();
    }

    private static String firstPage(FieldSheet sheet) throws IOException {
        try (var document = Loader.loadPDF(sheet.paper(Paper.Size.LETTER).pdf())) {
            var stripper = new PDFTextStripper();
            stripper.setEndPage(1);
            stripper.setSortByPosition(true);
            return stripper.getText(document).replaceAll("\\s+", " ");
        }
    }

    @Test
    void thePaperSaysWhatTheHandsNeedOnItsFirstPage() throws IOException {
        var text = firstPage(sheet(lot("Barley straw")));
        assertThat(text)
                .contains("straw yard south of the calving shed", "pick set 1", "Put every core into one clean bucket")
                .contains(
                        "100 of 140 bales are out of reach",
                        "in two bags marked as one sample",
                        "33 ft from power lines")
                // joined letters are still letters
                .contains("2nd from the left", "leave a ladder on a stack");
        assertThat(text.indexOf("Before you start")).isLessThan(text.indexOf("No. Where"));
        assertThat(sheet(lot("Barley straw")).rows().get(19).where()).startsWith("left side");
        assertThat(sheet(lot("Barley straw")).labels())
                .extracting(FieldSheet.Label::which)
                .containsExactly("Bag 1 of 2", "Bag 2 of 2");
        assertThat(sheet(lot("Meadow hay")).labels())
                .extracting(FieldSheet.Label::which)
                .containsExactly("Bag 1 of 1", "Spare label, for one more bag");
    }

    @Test
    void aWetSampleIsFrozenAndQuartered() throws IOException {
        var sheet = sheet(lot("Corn silage"));
        assertThat(firstPage(sheet))
                .contains("freeze it", "quarter it", "Quarter it down to about 1 lb", "Take 20 scoops.")
                .doesNotContain("cool and dry", "0 where none", "Cores");
        assertThat(sheet.phonePage()).contains("freeze it", "Scoops <input").doesNotContain("cool and dry");
    }

    @Test
    void aStandingSheetHasItsWalkAndGrams() throws IOException {
        var sheet = sheet(lot("Standing meadow"));
        assertThat(firstPage(sheet))
                .contains("Grams as cut", sheet.rows().get(0).where(), "ft apart; north is up");
    }

    @Test
    void labelsAreNeverTornOverTwoPages() throws IOException {
        for (var lot : lots().toList()) {
            try (var document =
                    Loader.loadPDF(sheet(lot).paper(Paper.Size.LETTER).pdf())) {
                var stripper = new PDFTextStripper();
                var pages = new ArrayList<Integer>();
                for (int page = 1; page <= document.getNumberOfPages(); page++) {
                    stripper.setStartPage(page);
                    stripper.setEndPage(page);
                    var text = stripper.getText(document);
                    for (var label : sheet(lot).labels()) {
                        if (text.contains(label.bag())) {
                            pages.add(page);
                        }
                    }
                }
                assertThat(pages).as(lot.name()).hasSize(2);
                assertThat(pages.get(0)).as(lot.name()).isEqualTo(pages.get(1));
            }
        }
    }

    @Test
    void theSamePageGivesTheSameBytes() {
        var lot = DEMO.lots().values().iterator().next();
        assertThat(sheet(lot).paper(Paper.Size.A4).pdf())
                .isEqualTo(sheet(lot).paper(Paper.Size.A4).pdf());
    }

    @Test
    void thePhonePageIsOneFileThatReadsWithoutScriptsAndFetchesNothing() {
        var sheet = sheet(DEMO.lots().values().iterator().next());
        var page = sheet.phonePage();
        assertThat(page)
                .contains(
                        "Scripts are off",
                        "<script>",
                        "<style>",
                        sheet.labels().get(0).bag())
                .doesNotContain("src=", "href=", "@import", "url(h");
        assertThat(page.split("name=\"unit\"", -1))
                .hasSize(sheet.sampling().picks().size() + 1);
    }

    @Test
    void aSheetOutlivesItsLot() {
        var lot = DEMO.lots().values().iterator().next();
        var made = sheet(lot);
        var gone = FieldSheet.of(DEMO.with(made.sampling()).withoutLot(lot.id()), made.sampling());
        assertThat(gone.lotName()).isEqualTo(lot.name());
        assertThat(gone.rows().get(0).where()).contains("bale");
        assertThat(gone.paper(Paper.Size.LETTER).pdf()).isNotEmpty();
    }

    @Test
    void drawingsAreWellFormedAndSayWhatTheyShow() throws Exception {
        var picks = java.util.List.of(1, 5, 9);
        for (var layout : new Layout[] {
            Layout.Block.open(4, 9, 3, 100, 2), new Layout.Pyramid(3, 3, 12, 70, 1), new Layout.Loose(60)
        }) {
            assertThat(title(new StackDrawing(layout, picks).svg())).isEqualTo("Which bales to core");
        }
        assertThat(new StackDrawing(Layout.Block.open(50, 400, 5, 100_000, 4), picks).svg())
                .isEmpty();
        var field = DEMO.fields().values().iterator().next();
        var shape = FieldShape.of(field.boundary());
        var svg = new FieldDrawing(shape, java.util.List.of(FieldWalk.of(shape, 12, 1))).svg();
        assertThat(title(svg)).isEqualTo("The walk across the field");
        assertThat(svg.split("<circle", -1)).hasSize(13);
    }

    private static String title(String svg) throws Exception {
        var document =
                DocumentBuilderFactory.newInstance().newDocumentBuilder().parse(new InputSource(new StringReader(svg)));
        return document.getElementsByTagName("title").item(0).getTextContent();
    }
}
