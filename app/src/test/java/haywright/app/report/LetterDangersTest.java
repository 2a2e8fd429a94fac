package haywright.app.report;

import static org.assertj.core.api.Assertions.assertThat;

import haywright.app.document.TinLantern;
import haywright.app.report.FeedLetter.Part;
import haywright.cattle.herd.Group;
import haywright.diet.DietRow;
import haywright.diet.HowNitrateIsFed;
import haywright.feeding.Offers;
import haywright.feeding.Rations;
import haywright.forage.FeedClass;
import haywright.quantity.Quantity;
import haywright.quantity.Unit;
import haywright.ranch.FedNow;
import haywright.ranch.Outfit;
import haywright.ranch.Ranch;
import haywright.ranch.WaterSource;
import haywright.ranch.Wishes;
import java.time.LocalDate;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;

/** What the letter says of dangers, only where they are at hand. */
class LetterDangersTest {
    private static final Ranch DEMO = TinLantern.ranch();
    private static final LocalDate DAY = LocalDate.of(2027, 1, 10);
    private static final Group COWS = DEMO.groups().values().iterator().next();

    /** The demo with oat hay of so much nitrate, of which the cows are to get some, and an outfit that mixes, does not, or says nothing. */
    static Ranch ranch(double no3n, @Nullable Boolean mixer) {
        var some = new Wishes.Wish(OatHay.LOT.id(), DietRow.Sense.AT_LEAST, Quantity.of(4, Unit.POUND_A_DAY));
        return DEMO.with(OatHay.report(10, 36, no3n))
                .with(new Outfit(mixer, null, false, false, null, 1))
                .with(new Wishes(COWS.id(), List.of(some), List.of(), null, null));
    }

    private static String watch(Ranch ranch) {
        return FeedLetter.of(ranch, COWS, DAY).words(Part.WATCH_FOR);
    }

    @Test
    void withoutAMixerTheSecondFeedRuleAndTheLimitsArePrinted() {
        assertThat(watch(ranch(900, false))).contains("Feed Oat hay second", "678", "1,000");
        assertThat(watch(ranch(900, null))).contains("Feed Oat hay second");
        assertThat(watch(ranch(900, true))).contains("Mix Oat hay").doesNotContain("second");
        assertThat(watch(ranch(500, null))).doesNotContain("Feed Oat hay second", "Mix Oat hay");
        var out = new Rations(ranch(1500, false), DAY).question(COWS).diet().leftOut();
        assertThat(out).extracting(l -> l.feed().name()).contains("Oat hay");
    }

    /** 900 ppm of one test is counted at more: both figures are there, and what the second-feed rule allows. */
    @Test
    void theFigureThatIsCountedIsPrintedAndGrainIsSaidOnlyWhereThereIsSome() {
        var offers = new Offers(new Rations(ranch(900, false), DAY), COWS);
        var diet = offers.rations().question(COWS).diet();
        var fed = offers.sure().orElseThrow().mix().portions();
        var oats = fed.stream()
                .map(p -> p.feed().feed())
                .filter(f -> f.name().equals("Oat hay"))
                .findFirst()
                .orElseThrow();
        double counted = HowNitrateIsFed.counted(oats, diet);
        assertThat(counted).isGreaterThan(1000);
        var watch = FeedLetter.of(offers).words(Part.WATCH_FOR);
        assertThat(watch).contains("900 ppm", "%,.0f".formatted(counted));
        boolean grain = fed.stream().anyMatch(p -> p.feed().feed().feedClass() == FeedClass.GRAIN);
        assertThat(watch.contains("with some grain")).isEqualTo(grain);
        assertThat(grain).isFalse();
    }

    /** Without a mixer nothing is mixed: the card has the feeds one after another, the one high in nitrate after clean hay. */
    @Test
    void withoutAMixerTheCardPutsTheCleanHayFirst() {
        for (var mixer : new Boolean[] {false, null}) {
            var card = new WagonCard(new Offers(new Rations(ranch(900, mixer), DAY), COWS));
            var names = card.lines().stream().map(WagonCard.Line::feed).toList();
            assertThat(names).hasSizeGreaterThan(1);
            assertThat(names.indexOf("Oat hay")).isPositive();
            assertThat(names.get(0)).contains("hay");
            var page = Paper.text("haywright/app/report/wagonCard.jte", card);
            assertThat(page)
                    .contains("one after another", "Feed Oat hay second")
                    .doesNotContain("Mix 3 to 5", "running total", Loads.NOT_ZEROED);
            assertThat(FeedLetter.of(card.offers()).letter().table())
                    .extracting(row -> row.feed())
                    .startsWith(names.toArray(String[]::new));
        }
        var mixed = new WagonCard(new Offers(new Rations(ranch(900, true), DAY), COWS));
        assertThat(Paper.text("haywright/app/report/wagonCard.jte", mixed))
                .contains("Mix 3 to 5", "Mix Oat hay into the rest");
    }

    @Test
    void aTextMessageBeginsWithWhatCanKill() {
        var letter = FeedLetter.of(ranch(900, false), COWS, DAY);
        var message = letter.message();
        assertThat(message).contains("Feed Oat hay second", "Colder");
        assertThat(message.indexOf("Feed Oat hay second")).isLessThan(message.indexOf(" a head ("));
        for (var group : DEMO.groups().values()) {
            var other = FeedLetter.of(DEMO, group, DEMO.settings().today(DAY));
            var text = other.message();
            assertThat(text.length()).as(text).isLessThan(900);
            assertThat(text).contains("Do not feed Oat hay");
            assertThat(text.indexOf("Do not feed Oat hay")).isLessThan(text.indexOf(" a head ("));
            boolean grain = other.words(Part.WATCH_FOR).contains(Cautions.GRAIN);
            assertThat(text.contains(Cautions.GRAIN)).isEqualTo(grain);
        }
    }

    @Test
    void sulfateIsSaidWithDistillersGrainsAndIceInMidwinter() {
        var grains = DEMO.feedsForSale().values().stream()
                .filter(f -> f.name().contains("distillers"))
                .findFirst()
                .orElseThrow();
        var fed = new LinkedHashMap<UUID, Quantity>(Map.of(grains.id(), Quantity.of(3, Unit.POUND_A_DAY)));
        var water = new WaterSource(
                new UUID(7, 7),
                "dugout",
                "",
                null,
                null,
                Quantity.of(1500, Unit.MILLIGRAM_PER_LITER),
                null,
                false,
                null,
                false);
        var without = DEMO;
        for (var feed : DEMO.feedsForSale().keySet()) {
            without = feed.equals(grains.id()) ? without : without.withoutFeedForSale(feed);
        }
        var rations = new Rations(without.with(water).with(new FedNow(COWS.id(), fed)), DAY);
        var now = rations.fedNow(COWS).orElseThrow();
        assertThat(haywright.outlook.FeedingDangers.of(
                        rations.yard(), rations.question(COWS).diet(), now.portions()))
                .extracting(c -> c.words())
                .anyMatch(w -> w.contains("sulfate"))
                .anyMatch(w -> w.contains("Under ice"));
        var dry = new Rations(without.with(new FedNow(COWS.id(), fed)), DAY);
        assertThat(haywright.outlook.FeedingDangers.of(
                        dry.yard(), dry.question(COWS).diet(), now.portions()))
                .extracting(c -> c.words())
                .noneMatch(w -> w.contains("sulfate") || w.contains("Under ice"));
    }
}
