package haywright.app.report;

import static org.assertj.core.api.Assertions.assertThat;

import haywright.app.document.BentBucket;
import haywright.app.document.TinLantern;
import haywright.app.report.FeedLetter.Part;
import haywright.cattle.herd.Group;
import haywright.feeding.Offers;
import haywright.feeding.Rations;
import haywright.quantity.Quantity;
import haywright.quantity.Unit;
import haywright.ranch.Contacts;
import haywright.ranch.FedNow;
import haywright.ranch.Lot;
import haywright.ranch.Ranch;
import haywright.ration.NoRation;
import java.io.IOException;
import java.time.LocalDate;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.UUID;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.Test;

/** The card never loads what may not be fed. */
class WagonCardTest {
    private static final Ranch DEMO = TinLantern.ranch();
    private static final LocalDate DAY = DEMO.settings().today(LocalDate.EPOCH);
    private static final Group COWS = DEMO.groups().values().iterator().next();
    private static final String PHONE = "308-555-0173";

    /** No ration works, and what the cows get now holds oat hay that was not tested for nitrate. */
    private static Ranch oatHayFedNow() {
        var ranch = DEMO;
        for (var feed : DEMO.feedsForSale().keySet()) {
            ranch = ranch.withoutFeedForSale(feed);
        }
        var amounts = new LinkedHashMap<UUID, Quantity>();
        for (Lot lot : DEMO.lots().values()) {
            if (lot.name().equals("Barley straw") || lot.name().equals("Oat hay")) {
                amounts.put(lot.id(), Quantity.of(10, Unit.POUND_A_DAY));
            } else {
                ranch = ranch.withoutLot(lot.id());
            }
        }
        return ranch.with(new FedNow(COWS.id(), amounts)).with(new Contacts(PHONE, "", ""));
    }

    private static String text(byte[] pdf) throws IOException {
        try (var document = Loader.loadPDF(pdf)) {
            return new PDFTextStripper().getText(document).replaceAll("\\s+", " ");
        }
    }

    @Test
    void aFeedThatMayNotBeFedIsOnNoCard() throws IOException {
        var ranch = oatHayFedNow();
        var offers = new Offers(new Rations(ranch, DAY), COWS);
        assertThat(offers.answer()).isInstanceOf(NoRation.class);
        var card = new WagonCard(offers);
        assertThat(card.lines()).isEmpty();
        assertThat(card.beside()).isEmpty();
        assertThat(card.changeover()).isEmpty();
        assertThat(card.stop())
                .hasValueSatisfying(says -> assertThat(says)
                        .contains("Oat hay", ranch.settings().adviser().replaceAll("\\s*\\(.*", ""), "308.555.0173"));
        for (var size : Paper.Size.values()) {
            assertThat(text(card.paper(size).pdf())).contains(card.stop().orElseThrow());
        }
        var letter = FeedLetter.of(offers);
        assertThat(letter.letter().table()).isEmpty();
        assertThat(letter.words(Part.WHAT_TO_DO)).contains(card.stop().orElseThrow());
        assertThat(letter.message()).contains(card.stop().orElseThrow());
        assertThat(letter.phonePage()).contains(card.stop().orElseThrow());
    }

    /** A lot whose place nobody entered, in bales: no comma leads its line, and no bale is counted finer than a half. */
    @Test
    void aCardSaysWhatCanBeWeighedAndCounted() {
        var ranch = DEMO;
        for (var lot : DEMO.lots().values()) {
            ranch = ranch.with(nowhere(lot));
        }
        var rations = new Rations(ranch, DAY);
        int baled = 0;
        for (var group : ranch.groups().values()) {
            var card = new WagonCard(new Offers(rations, group));
            for (var line : card.lines()) {
                assertThat(line.note()).doesNotStartWith(",").doesNotContainPattern("[0-9]\\.[0-9]|a week");
                baled += line.note().contains("bale") ? 1 : 0;
            }
            for (var size : Paper.Size.values()) {
                assertThat(card.paper(size).pages()).as(group.name()).isEqualTo(1);
            }
            assertThat(card.beside()).noneMatch(line -> line.matches(".*[0-9]\\.[0-9].*"));
            var page = Paper.text("haywright/app/report/wagonCard.jte", card);
            assertThat(page.contains("Left in bunk"))
                    .isEqualTo(!ranch.pen(group.id()).bunk().isBlank());
        }
        assertThat(baled).isPositive();
    }

    private static Lot nowhere(Lot lot) {
        return new Lot(
                lot.id(),
                lot.name(),
                lot.feedClass(),
                lot.bookRow(),
                "",
                lot.cutting(),
                lot.madeOn(),
                lot.storage(),
                lot.stock(),
                lot.replacementPrice(),
                lot.nitrateRisk(),
                lot.notes(),
                lot.makeup(),
                lot.weathered(),
                lot.weighings());
    }

    /** Of every group of the demo: what the letter forbids is on no line of its card. */
    @Test
    void noCardOfTheDemoLoadsWhatItsLetterForbids() {
        var rations = new Rations(DEMO, DAY);
        for (var group : DEMO.groups().values()) {
            var offers = new Offers(rations, group);
            var out = rations.question(group).diet().leftOut().stream()
                    .filter(left -> left.danger())
                    .map(left -> left.feed().name())
                    .toList();
            assertThat(new WagonCard(offers).lines()).as(group.name()).noneMatch(line -> out.contains(line.feed()));
        }
    }

    /** Whoever loads holds the card, not the letter: what may hold nitrate is on it, and that what they get now must stop. */
    @Test
    void whatIsDangerousOnTheLetterIsOnTheCard() {
        int nitrate = 0;
        int stops = 0;
        for (var ranch : List.of(DEMO, BentBucket.ranch(), LetterDangersTest.ranch(900, true))) {
            var rations = new Rations(ranch, DAY);
            for (var group : ranch.groups().values()) {
                var offers = new Offers(rations, group);
                var dangers = new WagonCard(offers).dangers();
                for (var portion : rations.toFeed(group)) {
                    var feed = portion.feed().feed();
                    if (feed.nitrateDanger()) {
                        assertThat(dangers).as(group.name()).anyMatch(line -> line.contains(feed.name()));
                        nitrate++;
                    }
                }
                if (offers.sure().isPresent()
                        && offers.now()
                                .filter(now -> !now.mix().notAllowed().isEmpty())
                                .isPresent()) {
                    assertThat(dangers).as(group.name()).anyMatch(line -> line.contains("must stop"));
                    stops++;
                }
            }
        }
        assertThat(nitrate).isPositive();
        assertThat(stops).isPositive();
    }
}
