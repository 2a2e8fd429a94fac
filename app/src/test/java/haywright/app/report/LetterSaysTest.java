package haywright.app.report;

import static org.assertj.core.api.Assertions.assertThat;

import haywright.app.document.TinLantern;
import haywright.app.report.FeedLetter.Part;
import haywright.app.words.ColdWords;
import haywright.app.words.Show;
import haywright.app.words.ration.CountedTdn;
import haywright.cattle.cold.Hide;
import haywright.cattle.herd.Group;
import haywright.feeding.ColdSnap;
import haywright.feeding.Offers;
import haywright.feeding.Rations;
import haywright.feeding.hay.ShortOfHay;
import haywright.forage.Analyte;
import haywright.forage.lab.Reading;
import haywright.quantity.Quantity;
import haywright.quantity.Unit;
import haywright.ranch.FedNow;
import haywright.ranch.FeedForSale;
import haywright.ranch.Ranch;
import haywright.ranch.RanchWeather;
import haywright.ration.Ration;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** What a letter must say of cost, cold, change and energy, whatever else is on it. */
class LetterSaysTest {
    private static final Ranch DEMO = TinLantern.ranch();
    private static final LocalDate DAY = DEMO.settings().today(LocalDate.EPOCH);
    private static final Group COWS = DEMO.groups().values().iterator().next();

    static Stream<Group> groups() {
        return DEMO.groups().values().stream();
    }

    private static Offers offers(Ranch ranch, Group group) {
        return new Offers(new Rations(ranch, DAY), group);
    }

    @ParameterizedTest
    @MethodSource("groups")
    void whatARationCostsAndTheColdAreOnEveryLetter(Group group) {
        var offers = offers(DEMO, group);
        var letter = FeedLetter.of(offers);
        if (offers.answer() instanceof Ration && letter.letter().table().size() < 4) {
            assertThat(letter.words(Part.WHY)).containsPattern("\\$[0-9]+\\.[0-9]{2}");
        }
        if (!letter.letter().table().isEmpty()) {
            assertThat(letter.lines(Part.WATCH_FOR)).anyMatch(line -> line.matches("(?i).*\\bcold(er)?\\b.*"));
        }
    }

    /** A quarter of a ration for three days and nothing else would starve them. */
    @Test
    void whileTheyChangeOverSomethingFillsIn() {
        var unsaid = FeedLetter.of(offers(nothingFedNow(), COWS)).words(Part.WHAT_TO_DO);
        assertThat(unsaid).contains("trade a quarter").doesNotContain("go up by a quarter");
        var hay = DEMO.lots().values().stream()
                .filter(lot -> lot.name().equals("Barley straw"))
                .findFirst()
                .orElseThrow();
        var straw = DEMO.with(new FedNow(COWS.id(), Map.of(hay.id(), Quantity.of(20, Unit.POUND_A_DAY))));
        assertThat(FeedLetter.of(offers(straw, COWS)).words(Part.WHAT_TO_DO)).containsPattern("\\bquarter\\b");
    }

    private static Ranch nothingFedNow() {
        return DEMO.with(new FedNow(COWS.id(), Map.of()));
    }

    @Test
    void whoLoadsOverAScaleIsToldThatItRunsOn() {
        var letter = FeedLetter.of(offers(DEMO, COWS));
        assertThat(letter.loaded()).contains("running total");
        assertThat(letter.words(Part.WHAT_TO_DO)).contains(Loads.NOT_ZEROED);
        assertThat(letter.message()).contains(Loads.NOT_ZEROED);
        assertThat(Paper.text("haywright/app/report/wagonCard.jte", new WagonCard(offers(DEMO, COWS))))
                .contains(Loads.NOT_ZEROED);
    }

    /** Of "Range cubes, 20 %" nothing is left hanging. */
    @Test
    void aFeedsNameIsCutClean() {
        var ranch = DEMO;
        for (var sale : DEMO.feedsForSale().values()) {
            ranch = ranch.with(new FeedForSale(
                    sale.id(),
                    sale.name().replaceAll("[0-9].*", "").strip() + ", 20 %",
                    sale.feedClass(),
                    sale.bookRow(),
                    sale.tag(),
                    sale.price(),
                    sale.atMost(),
                    sale.delivery()));
        }
        int bought = 0;
        for (var group : DEMO.groups().values()) {
            var letter = FeedLetter.of(offers(ranch, group));
            for (var row : letter.letter().table()) {
                assertThat(row.feed()).doesNotContainPattern("[,;:/(]$");
                bought += row.where().equals("bought") ? 1 : 0;
            }
            assertThat(letter.words(Part.WHAT_TO_DO) + letter.words(Part.RESTS_ON))
                    .doesNotContainPattern(",[;.,]");
        }
        assertThat(bought).isPositive();
    }

    /** A line from fiber read in a source for such hay goes before the laboratory's own TDN. */
    @Test
    void energyThatIsNotTheLaboratorysIsSaid() {
        var offers = offers(DEMO, COWS);
        var apart =
                CountedTdn.of(offers.yard(), offers.sure().orElseThrow().mix().portions());
        assertThat(apart).isNotEmpty().allSatisfy(one -> {
            assertThat(DEMO.reportsOn(one.lot().id()).stream()
                            .flatMap(report -> report.counted().stream())
                            .filter(reading -> reading.analyte() == Analyte.TDN)
                            .map(Reading::value))
                    .contains(one.printed());
            assertThat(Math.abs(one.counted() - one.printed())).isGreaterThan(1);
            assertThat(FeedLetter.of(offers).words(Part.RESTS_ON)).contains(one.words(), "TDN");
        });
    }

    /** The rule and its steps are of the same coats: at a step, the pounds are those of the slope or more. */
    @Test
    void theStepsOfAColdSnapAreOfTheRanchsOwnCoats() {
        var said = Objects.requireNonNull(DEMO.settings().weather());
        var wet = DEMO.withWeather(withCoats(said, Hide.WET), null);
        var cold = offers(wet, COWS).cold().orElseThrow();
        assertThat(cold.steps()).isNotEmpty();
        var step = cold.steps().get(0);
        double bySlope = Math.min(cold.most(), (cold.below() - step.celsius()) * cold.perDegree());
        assertThat(step.kg()).isCloseTo(bySlope, org.assertj.core.api.Assertions.within(0.25));
    }

    private static RanchWeather withCoats(RanchWeather of, Hide hide) {
        return new RanchWeather(
                of.place(),
                of.monthly(),
                of.wind(),
                of.coat(),
                of.windbreak(),
                of.coldSystem(),
                hide,
                of.departures(),
                of.found());
    }

    /** Cows at score 4 in December are brought to 5 by calving, or held there by whoever says so; the letter says which. */
    @Test
    void thinCattleAreSaidToGainOrToHold() {
        var thin = COWS.scored(4, null);
        assertThat(ofScore(thin)).contains("score four", "five by calving").doesNotContain("stay");
        assertThat(ofScore(thin.wanting(4.5))).contains("score four", "four and a half by calving");
        assertThat(ofScore(thin.holding())).contains("stay at score four;", "five by calving takes");
        assertThat(FeedLetter.of(offers(DEMO, COWS.scored(5.5, null))).words(Part.WHY))
                .doesNotContain("score");
    }

    private static String ofScore(Group thin) {
        return FeedLetter.of(offers(DEMO.with(thin), thin)).lines(Part.WHY).stream()
                .filter(says -> says.contains("score"))
                .findFirst()
                .orElseThrow();
    }

    @Test
    void aRanchThatIsShortOfHaySaysSoWithTheBenchsDay() {
        var offers = offers(DEMO, COWS);
        var hay = ShortOfHay.of(offers.rations(), ShortOfHay.Asked.NOTHING).orElseThrow();
        assertThat(hay.isShort()).isTrue();
        assertThat(FeedLetter.of(offers).words(Part.WHY))
                .contains("gone by", Show.day(hay.gone().orElseThrow()));
    }

    @Test
    void cattleThatAreFullAreNotToldToAddNothing() {
        var cold = offers(DEMO, COWS).cold().orElseThrow();
        var full = new ColdSnap(
                cold.hay(),
                cold.inRation(),
                cold.below(),
                cold.perDegree(),
                List.of(new ColdSnap.Step(cold.below() - 5, 0)),
                cold.wetBelow(),
                0,
                0.1,
                cold.grain());
        assertThat(ColdWords.isFull(full)).isTrue();
        assertThat(ColdWords.isFull(cold)).isFalse();
        assertThat(String.join(" ", ColdWords.of(full))).isNotBlank().doesNotContainPattern("\\b0 lb");
    }
}
