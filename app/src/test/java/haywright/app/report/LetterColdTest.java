package haywright.app.report;

import static org.assertj.core.api.Assertions.assertThat;

import haywright.app.document.BentBucket;
import haywright.app.document.TinLantern;
import haywright.app.report.FeedLetter.Part;
import haywright.app.words.ColdWords;
import haywright.app.words.NumberWords;
import haywright.app.words.Show;
import haywright.cattle.AnimalClass;
import haywright.cattle.herd.Group;
import haywright.diet.DietRow;
import haywright.feeding.Offers;
import haywright.feeding.Rations;
import haywright.forage.FeedClass;
import haywright.forage.lab.LabReport;
import haywright.quantity.Quantity;
import haywright.quantity.Unit;
import haywright.ranch.FedNow;
import haywright.ranch.Lot;
import haywright.ranch.Outfit;
import haywright.ranch.Ranch;
import haywright.ranch.Wishes;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.junit.jupiter.api.Test;

/** What goes out in a storm is a hay by name that nothing is the matter with, or somebody is asked. */
class LetterColdTest {
    private static final Ranch DEMO = TinLantern.ranch();
    private static final LocalDate DAY = LocalDate.of(2027, 1, 10);
    private static final Group COWS = DEMO.groups().values().iterator().next();
    private static final Lot OATS = OatHay.LOT;
    private static final Lot MEADOW = OatHay.lot("Meadow hay");

    /** Of so much nitrate, and of more energy than any hay of the demo. */
    private static LabReport oats(double no3n) {
        return OatHay.report(14, 24, no3n);
    }

    private static Ranch wanting(double pounds, double no3n) {
        var some = new Wishes.Wish(OATS.id(), DietRow.Sense.AT_LEAST, Quantity.of(pounds, Unit.POUND_A_DAY));
        return DEMO.with(oats(no3n))
                .with(new Outfit(false, null, false, false, null, 1))
                .with(new Wishes(COWS.id(), List.of(some), List.of(), null, null));
    }

    /** They get 20 lb of it, no ration works, and only these lots lie there besides. */
    private static Ranch fedNow(double no3n, Set<Lot> besides) {
        var ranch =
                wanting(100, no3n).with(new FedNow(COWS.id(), Map.of(OATS.id(), Quantity.of(20, Unit.POUND_A_DAY))));
        for (var feed : DEMO.feedsForSale().keySet()) {
            ranch = ranch.withoutFeedForSale(feed);
        }
        for (var lot : DEMO.lots().values()) {
            if (!lot.id().equals(OATS.id()) && !besides.contains(lot)) {
                ranch = ranch.withoutLot(lot.id());
            }
        }
        return ranch;
    }

    private static Offers offers(Ranch ranch) {
        return new Offers(new Rations(ranch, DAY), COWS);
    }

    private static String cold(Ranch ranch) {
        return FeedLetter.of(offers(ranch)).lines(Part.WATCH_FOR).stream()
                .filter(line -> line.contains("Colder") || line.contains("cold"))
                .findFirst()
                .orElseThrow();
    }

    @Test
    void theHayIsNamedAndIsNotTheOneHighInNitrate() {
        var high = offers(wanting(6, 900));
        assertThat(high.sure().orElseThrow().mix().portions())
                .anyMatch(p -> p.feed().feed().name().equals("Oat hay"));
        var hay = high.cold().orElseThrow().hay().orElseThrow();
        assertThat(hay.feed().name()).isNotEqualTo("Oat hay");
        assertThat(cold(wanting(6, 900))).contains(hay.feed().name()).doesNotContain("Oat hay");
        assertThat(String.join(" ", ColdWords.of(high.cold().orElseThrow())))
                .contains("of " + hay.feed().name());
        // the same lot with little nitrate is the richest they have
        assertThat(cold(wanting(6, 100))).contains("Oat hay");
    }

    /** Bulls may have up to 1,000 ppm alone on any day, but not hungry out of a storm. */
    @Test
    void theLineOfTheMostCarefulHoldsForAllCattle() {
        var bulls = DEMO.groups().values().stream()
                .filter(group -> group.animals() == AnimalClass.BULL)
                .findFirst()
                .orElseThrow();
        var some = new Wishes.Wish(OATS.id(), DietRow.Sense.AT_LEAST, Quantity.of(10, Unit.POUND_A_DAY));
        var ranch = wanting(6, 850).with(new Wishes(bulls.id(), List.of(some), List.of(), null, null));
        var offers = new Offers(new Rations(ranch, DAY), bulls);
        assertThat(offers.sure().orElseThrow().mix().portions())
                .anyMatch(p -> p.feed().feed().name().equals("Oat hay"));
        assertThat(offers.cold().orElseThrow().hay().orElseThrow().feed().name())
                .isNotEqualTo("Oat hay");
    }

    @Test
    void whereTheRationsOnlyHayIsHighAnotherLotIsNamed() {
        var ranch = fedNow(900, Set.of(MEADOW));
        var cold = offers(ranch).cold().orElseThrow();
        assertThat(cold.hay().orElseThrow().feed().name()).isEqualTo("Meadow hay");
        assertThat(cold.steps()).isNotEmpty();
        assertThat(cold(ranch)).contains("Meadow hay");
    }

    @Test
    void whereNoLotIsKnownToBeCleanSomebodyIsAsked() {
        for (var settings : List.of(DEMO.settings(), DEMO.settings().with((haywright.ranch.RanchWeather) null))) {
            var ranch = fedNow(900, Set.of(OatHay.lot("Barley straw"))).with(settings);
            assertThat(offers(ranch).cold().orElseThrow().hay()).isEmpty();
            assertThat(cold(ranch)).contains("ask before you add hay").doesNotContain("Oat hay", "more good hay");
            assertThat(ColdWords.of(offers(ranch).cold().orElseThrow())).hasSize(1);
        }
    }

    /**
     * No hay is asked of them that they cannot hold, and what to do in more cold is said: the line's degrees times the
     * pounds that fit in, below where it begins.
     */
    @Test
    void whereNoMoreHayFitsInTheLetterSaysUntilWhen() {
        int capped = 0;
        for (var ranch : List.of(DEMO, BentBucket.ranch())) {
            var rations = new Rations(ranch, LocalDate.of(2026, 12, 1));
            for (var group : ranch.groups().values()) {
                var offers = new Offers(rations, group);
                var rule = offers.cold().orElseThrow();
                if (!rule.fills() || ColdWords.isFull(rule)) {
                    continue;
                }
                capped++;
                double pounds = Math.rint(2 * Unit.POUND.fromBase(rule.most())) / 2;
                double full = Math.rint(Unit.FAHRENHEIT.fromBase(rule.below()))
                        - pounds * Math.rint(1.8 / Unit.POUND.fromBase(rule.perDegree()));
                var letter = FeedLetter.of(offers).lines(Part.WATCH_FOR).stream()
                        .filter(line -> line.contains("Colder"))
                        .findFirst()
                        .orElseThrow();
                assertThat(letter)
                        .contains(NumberWords.halves(pounds) + " at most")
                        .contains("call");
                assertThat(ColdWords.of(rule))
                        .anyMatch(line -> line.contains(Show.number(pounds, 1).replace(".0", ""))
                                && line.contains(Show.temperature(Unit.FAHRENHEIT.toBase(Math.rint(full)))));
            }
        }
        assertThat(capped).isPositive();
    }

    /** Half a percent of body weight in one feeding (practice limit L02): bred heifers on grain had 5 lb more on top. */
    @Test
    void theColdAddsNoGrainBeyondItsOwnLimit() {
        int grained = 0;
        for (var ranch : List.of(DEMO, BentBucket.ranch())) {
            var rations = new Rations(ranch, LocalDate.of(2026, 12, 1));
            for (var group : ranch.groups().values()) {
                if (group.animals() == AnimalClass.GROWING) {
                    continue;
                }
                var offers = new Offers(rations, group);
                double has = offers.sure().orElseThrow().mix().portions().stream()
                        .filter(p -> p.feed().feed().feedClass() == FeedClass.GRAIN)
                        .mapToDouble(p -> Unit.POUND.fromBase(p.kgPutOut()))
                        .sum();
                double more = ColdWords.grain(offers.cold().orElseThrow());
                grained += has > 0 ? 1 : 0;
                assertThat(has > 0 || more == 0).isTrue();
                assertThat(has + more)
                        .as(group.name())
                        .isLessThanOrEqualTo(
                                Math.max(has, 0.005 * group.weight().in(Unit.POUND)));
                assertThat(ColdWords.of(offers.cold().orElseThrow()).stream()
                                .anyMatch(line -> line.contains("lb of grain")))
                        .as(group.name())
                        .isEqualTo(more >= 1 && offers.cold().orElseThrow().fills());
            }
        }
        assertThat(grained).isPositive();
    }
}
