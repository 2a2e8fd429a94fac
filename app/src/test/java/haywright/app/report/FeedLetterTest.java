package haywright.app.report;

import static org.assertj.core.api.Assertions.assertThat;

import com.openhtmltopdf.util.Diagnostic;
import haywright.app.document.RanchDocument;
import haywright.app.report.FeedLetter.Part;
import haywright.cattle.herd.Group;
import haywright.feeding.Offers;
import haywright.feeding.Rations;
import haywright.forage.Analyte;
import haywright.forage.Basis;
import haywright.forage.lab.LabReport;
import haywright.forage.lab.Reading;
import haywright.quantity.Quantity;
import haywright.quantity.Unit;
import haywright.ranch.Lot;
import haywright.ranch.Ranch;
import haywright.ration.NoRation;
import haywright.ration.Ration;
import java.io.IOException;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.UUID;
import java.util.logging.Level;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.apache.pdfbox.text.TextPosition;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

class FeedLetterTest {
    private static final Ranch DEMO = demo();
    private static final LocalDate DAY = DEMO.settings().today(LocalDate.EPOCH);
    private static final int FOUR_FEEDS = 4;
    private static final Pattern NUMBER = Pattern.compile("[0-9]+([.,][0-9]+)*");

    private static Ranch demo() {
        return read("tin-lantern.json");
    }

    private static Ranch read(String name) {
        try (var in = Objects.requireNonNull(RanchDocument.class.getResourceAsStream(name))) {
            return new RanchDocument().read(in.readAllBytes());
        } catch (IOException e) {
            throw new java.io.UncheckedIOException(e);
        }
    }

    static Stream<Group> groups() {
        return DEMO.groups().values().stream();
    }

    private static FeedLetter letter(Group group) {
        return FeedLetter.of(DEMO, group, DAY);
    }

    private static String text(byte[] pdf) {
        try (var document = Loader.loadPDF(pdf)) {
            return new PDFTextStripper().getText(document);
        } catch (IOException e) {
            throw new java.io.UncheckedIOException(e);
        }
    }

    private static String flat(String text) {
        return text.replaceAll("(?<=[a-z]-)\\R", "").replaceAll("\\s+", " ");
    }

    @ParameterizedTest
    @MethodSource("groups")
    void aFeederCanReadIt(Group group) {
        var letter = letter(group);
        var page = text(letter.paper(Paper.Size.LETTER).pdf());
        assertThat(page.strip().split("\\s+").length).as("words on the page").isLessThanOrEqualTo(300);
        assertThat(NUMBER.matcher(page).results().count())
                .as("numbers on the page")
                .isLessThanOrEqualTo(12);
        var prose = Stream.of(Part.values()).map(letter::words).toList();
        assertThat(SchoolGrade.of(String.join("\n", prose))).as("school grade").isLessThanOrEqualTo(8);
    }

    /** Of five feeds, no mixer and most of them bought and new. */
    @Test
    void theDroughtRanchsLettersAreAsShort() {
        var ranch = read("bent-bucket.json");
        var rations = new Rations(ranch, ranch.settings().today(LocalDate.EPOCH));
        for (var group : ranch.groups().values()) {
            var letter = FeedLetter.of(new Offers(rations, group));
            for (var size : Paper.Size.values()) {
                var paper = letter.paper(size);
                assertThat(paper.pages()).as(group.name()).isEqualTo(1);
                assertThat(text(paper.pdf()).strip().split("\\s+").length)
                        .as(group.name())
                        .isLessThanOrEqualTo(300);
            }
        }
    }

    @ParameterizedTest
    @MethodSource("groups")
    void everyPartIsOnTheOnePage(Group group) throws IOException {
        for (var size : Paper.Size.values()) {
            var letter = letter(group);
            var complaints = new ArrayList<Diagnostic>();
            var pdf = letter.paper(size).pdf(complaints::add);
            complaints.removeIf(c -> c.getLevel().intValue() < Level.WARNING.intValue());
            assertThat(complaints).extracting(Diagnostic::getFormattedMessage).isEmpty();
            var page = flat(text(pdf));
            assertThat(page)
                    .contains(
                            letter.name(), group.head() + " head", letter.weekday(), "An invented ranch", DEMO.name());
            for (var part : Part.values()) {
                assertThat(page).contains(letter.title(part));
                letter.lines(part).forEach(line -> assertThat(page).contains(line));
            }
            try (var document = Loader.loadPDF(pdf)) {
                assertThat(document.getNumberOfPages()).isEqualTo(1);
                assertThat(document.getPage(0).getMediaBox().getHeight())
                        .isCloseTo(size == Paper.Size.LETTER ? 792 : 842, org.assertj.core.api.Assertions.within(0.5f));
                assertThat(document.getDocumentCatalog().getMarkInfo().isMarked())
                        .isTrue();
                assertFontsAreCarried(document);
            }
        }
    }

    private static void assertFontsAreCarried(PDDocument document) throws IOException {
        int used = 0;
        var resources = document.getPage(0).getResources();
        for (COSName name : resources.getFontNames()) {
            var font = resources.getFont(name);
            if (font.getName().contains("SourceSans3")) {
                assertThat(font.isEmbedded()).as(font.getName()).isTrue();
                used++;
            }
        }
        assertThat(used).isGreaterThanOrEqualTo(3);
    }

    @ParameterizedTest
    @MethodSource("groups")
    void itsTableIsTheEnginesRation(Group group) {
        var rations = new Rations(DEMO, DAY);
        if (!(rations.ration(group) instanceof Ration ration)) {
            return;
        }
        var letter = letter(group);
        var table = letter.letter().table();
        var page = flat(text(letter.paper(Paper.Size.LETTER).pdf()));
        double cost = 0;
        for (var row : table) {
            var portion = ration.portions().stream()
                    .filter(p -> p.feed().feed().name().startsWith(row.feed()))
                    .findFirst()
                    .orElseThrow();
            assertThat(page).contains(row.feed() + " " + row.where() + " " + row.aHead() + " " + row.forTheGroup());
            var words = row.aHead().split(" ");
            var unit = words[1].equals("oz") ? Unit.OUNCE : Unit.POUND;
            double kg = unit.toBase(Double.parseDouble(words[0].replace("½", ".5")));
            assertThat(kg / portion.kgPutOut()).as(row.toString()).isBetween(0.949, 1.051);
            cost += kg * portion.feed().pricePerKgAsFed();
        }
        // What a ration has and the table has not is less than a pound of forage, and too little to feed out.
        assertThat(ration.portions().stream()
                        .filter(p -> table.stream()
                                .noneMatch(row -> p.feed().feed().name().startsWith(row.feed()))))
                .allMatch(p -> p.feed().feed().feedClass().isForage() && p.kgPutOut() < Unit.POUND.toBase(1));
        if (table.size() < FOUR_FEEDS) { // of more the page holds no further number
            assertThat(page).contains("$" + Math.round(100 * cost) / 100.0);
        }
    }

    @Test
    void whereThereIsNoRationItSaysWhatStandsInTheWay() {
        var ranch = DEMO;
        for (var feed : DEMO.feedsForSale().keySet()) {
            ranch = ranch.withoutFeedForSale(feed);
        }
        var cows = DEMO.groups().values().iterator().next();
        for (Lot lot : DEMO.lots().values()) {
            if (!lot.name().equals("Barley straw") && !lot.name().equals("Oat hay")) {
                ranch = ranch.withoutLot(lot.id());
            }
        }
        assertThat(new Rations(ranch, DAY).ration(cows)).isInstanceOf(NoRation.class);
        var letter = FeedLetter.of(ranch, cows, DAY);
        assertThat(letter.words(Part.WHAT_TO_DO))
                .contains("What would help", "a nitrate test of Oat hay", "Do not feed Oat hay")
                .doesNotContain("as now");
        assertThat(letter.words(Part.WHAT_TO_DO)).contains("To buy: about ", " per head per day would be enough");
        assertThat(letter.words(Part.WHY)).contains("enough", "straw");
        assertThat(SchoolGrade.of(letter.words(Part.WHAT_TO_DO) + "\n" + letter.words(Part.WHY)))
                .isLessThanOrEqualTo(8);
        assertThat(letter.paper(Paper.Size.LETTER).pages()).isEqualTo(1);
    }

    /** What is left without it is too little: feeding the rest as now would starve them. */
    @Test
    void aFeedThatMayNotBeFedIsStoppedAndTheRestIsNoRation() {
        var ranch = onlyStrawAndOatHayFedNow();
        var cows = ranch.groups().values().iterator().next();
        assertThat(new Rations(ranch, DAY).ration(cows)).isInstanceOf(NoRation.class);
        var letter = FeedLetter.of(ranch, cows, DAY);
        assertThat(letter.letter().table()).isEmpty();
        assertThat(letter.words(Part.WHAT_TO_DO))
                .contains("Stop Oat hay", "Do not feed Oat hay")
                .doesNotContain("as now");
    }

    private static Ranch onlyStrawAndOatHayFedNow() {
        var ranch = DEMO;
        for (var feed : DEMO.feedsForSale().keySet()) {
            ranch = ranch.withoutFeedForSale(feed);
        }
        var amounts = new java.util.LinkedHashMap<java.util.UUID, Quantity>();
        for (Lot lot : DEMO.lots().values()) {
            if (lot.name().equals("Barley straw") || lot.name().equals("Oat hay")) {
                amounts.put(lot.id(), Quantity.of(10, Unit.POUND_A_DAY));
            } else {
                ranch = ranch.withoutLot(lot.id());
            }
        }
        var cows = DEMO.groups().keySet().iterator().next();
        return ranch.with(new haywright.ranch.FedNow(cows, amounts));
    }

    @Test
    void writtenWordsSurviveWorkingItOutAnew() {
        var cows = groups().findFirst().orElseThrow();
        var written = letter(cows)
                .with(Part.OWN, "Gate 3 is chained.\r\nMind the dog.")
                .with(Part.WHY, "Because I say so.");
        var kept = DEMO.with(written.letter());
        var anew = FeedLetter.workedOut(kept, cows, DAY.plusDays(20));
        assertThat(anew.lines(Part.OWN)).isEqualTo(List.of("Gate 3 is chained.", "Mind the dog."));
        assertThat(anew.words(Part.WHY)).isEqualTo("Because I say so.");
        assertThat(anew.figure(Part.WHY)).contains("costs");
        assertThat(anew.isRewritten(Part.WHY)).isTrue();
        assertThat(flat(text(anew.paper(Paper.Size.LETTER).pdf()))).contains("Because I say so.", "Mind the dog.");
        assertThat(anew.with(Part.WHY, "  ").words(Part.WHY)).isEqualTo(anew.figure(Part.WHY));
        assertThat(anew.with(Part.WHY, anew.figure(Part.WHY)).isRewritten(Part.WHY))
                .isFalse();
    }

    @Test
    void aKeptLetterStaysAsItWasAndSaysThatItIsStale() {
        var cows = groups().findFirst().orElseThrow();
        var kept = DEMO.with(letter(cows).letter());
        assertThat(FeedLetter.of(kept, cows, DAY).isKept()).isTrue();
        assertThat(FeedLetter.of(kept, cows, DAY).isStale()).isFalse();
        var lot = kept.lots().values().iterator().next();
        var moved = kept.with(withPrice(lot, Quantity.of(400, Unit.DOLLAR_PER_TON)));
        var stale = FeedLetter.of(moved, cows, DAY.plusDays(9));
        assertThat(stale.isStale()).isTrue();
        assertThat(stale.letter()).isEqualTo(letter(cows).letter());
        assertThat(FeedLetter.of(kept, cows, DAY).notices()).isEmpty();
        // whoever holds the paper or the file sees no page that says it
        var notice = stale.notices().get(0);
        assertThat(notice).contains("Changed since", "do not feed");
        for (var size : Paper.Size.values()) {
            assertThat(flat(text(stale.paper(size).pdf()))).startsWith(notice);
        }
        assertThat(stale.phonePage()).contains("<b>" + notice + "</b>");
        assertThat(stale.message()).contains(notice);
        assertThat(FeedLetter.workedOut(moved, cows, DAY).isStale()).isFalse();
    }

    /** Hay that is found to be high in nitrate after the letter was kept. */
    @Test
    void aKeptLetterStopsAFeedThatMayNoLongerBeFed() {
        var cows = groups().findFirst().orElseThrow();
        var letter = letter(cows);
        var kept = DEMO.with(letter.letter());
        var hay = kept.lots().values().stream()
                .filter(lot -> letter.letter().table().stream()
                        .anyMatch(row -> row.feed().equals(lot.name())))
                .findFirst()
                .orElseThrow();
        var found = kept.with(new LabReport(
                new UUID(5, 6),
                hay.id(),
                "A",
                "",
                null,
                DAY,
                LabReport.HowSampled.PLAN,
                List.of(
                        new Reading(Analyte.CP, 10, Unit.PERCENT, Basis.DRY_MATTER),
                        new Reading(Analyte.NO3N, 2500, Unit.PPM, Basis.DRY_MATTER)),
                List.of()));
        var stale = FeedLetter.of(found, cows, DAY);
        assertThat(stale.notices())
                .hasSize(2)
                .first()
                .asString()
                .startsWith("Stop.")
                .contains(hay.name());
        assertThat(flat(text(stale.paper(Paper.Size.LETTER).pdf()))).startsWith("Stop.");
        assertThat(stale.message()).contains(stale.notices().get(0));
    }

    @Test
    void anotherGroupsChangeLeavesALetterAlone() {
        var groups = groups().toList();
        var kept = DEMO.with(letter(groups.get(0)).letter());
        assertThat(FeedLetter.of(kept.withoutGroup(groups.get(1).id()), groups.get(0), DAY)
                        .isStale())
                .isFalse();
    }

    @Test
    void markupInWordsIsShownAsItWasTyped() {
        var cows = groups().findFirst().orElseThrow();
        var letter = letter(cows).with(Part.OWN, "<b>Not bold</b> & \"fine\" <img src='file:///etc/passwd'/>");
        assertThat(flat(text(letter.paper(Paper.Size.LETTER).pdf())))
                .contains("<b>Not bold</b> & \"fine\" <img src='file:///etc/passwd'/>");
    }

    @Test
    void wordsWithoutEndRunOntoASecondPageAndAreNotLost() {
        var cows = groups().findFirst().orElseThrow();
        var letter = letter(cows).with(Part.OWN, "Check the water.\n".repeat(80) + "The very last line.");
        var paper = letter.paper(Paper.Size.LETTER);
        assertThat(paper.pages()).isGreaterThan(1);
        assertThat(text(paper.pdf())).contains("The very last line.");
    }

    private static Lot withPrice(Lot lot, Quantity price) {
        return new Lot(
                lot.id(),
                lot.name(),
                lot.feedClass(),
                lot.bookRow(),
                lot.where(),
                lot.cutting(),
                lot.madeOn(),
                lot.storage(),
                lot.stock(),
                price,
                lot.nitrateRisk(),
                lot.notes(),
                lot.makeup(),
                null,
                lot.weighings());
    }

    /** 15 mm of margin are 43 points; a letter cut at the edge would be found beyond it. */
    @Test
    void anEndlessWordStaysOnThePaper() throws IOException {
        var group = DEMO.groups().values().iterator().next();
        var letter = letter(group).with(Part.OWN, "Mind the " + "d".repeat(2_000) + ".");
        try (var document = Loader.loadPDF(letter.paper(Paper.Size.LETTER).pdf())) {
            var width = document.getPage(0).getMediaBox().getWidth();
            var beyond = new ArrayList<String>();
            new PDFTextStripper() {
                @Override
                protected void writeString(String text, List<TextPosition> positions) {
                    positions.stream()
                            .filter(p -> p.getXDirAdj() + p.getWidthDirAdj() > width - 42)
                            .forEach(p -> beyond.add(p.getUnicode()));
                }
            }.getText(document);
            assertThat(beyond).isEmpty();
        }
        assertThat(flat(text(letter.paper(Paper.Size.LETTER).pdf())).replace(" ", ""))
                .contains("d".repeat(2_000) + ".");
    }
}
