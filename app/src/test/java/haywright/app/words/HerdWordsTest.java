package haywright.app.words;

import static org.assertj.core.api.Assertions.assertThat;

import haywright.app.document.TinLantern;
import haywright.app.report.FeedLetter;
import haywright.cattle.AnimalClass;
import haywright.cattle.cold.Coat;
import haywright.cattle.cold.ColdSystem;
import haywright.cattle.cold.Hide;
import haywright.cattle.herd.Group;
import haywright.quantity.Quantity;
import haywright.quantity.Unit;
import haywright.ranch.RanchWeather;
import haywright.ranch.Settings;
import java.time.LocalDate;
import java.util.Collections;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;

/** What moves a figure is in the headline over it: no two ways to stand in the cold have the same words. */
class HerdWordsTest {
    private static final LocalDate DAY = LocalDate.of(2026, 12, 1);

    private static Settings stand(
            @Nullable Double mph,
            @Nullable Coat coat,
            @Nullable Boolean windbreak,
            ColdSystem by,
            @Nullable Hide hide) {
        var wind = mph == null ? null : Quantity.of(mph, Unit.MILE_AN_HOUR);
        var weather = new RanchWeather(
                "an invented place",
                Collections.nCopies(12, Quantity.of(20, Unit.FAHRENHEIT)),
                wind,
                coat,
                windbreak,
                by,
                hide,
                List.of(),
                null);
        return TinLantern.ranch().settings().with(weather);
    }

    @Test
    void everyChoiceIsNamed() {
        var said = new HashSet<String>();
        int ways = 0;
        for (var coat : new Coat[] {null, Coat.SUMMER, Coat.FALL, Coat.WINTER, Coat.HEAVY_WINTER}) {
            for (var by : ColdSystem.values()) {
                for (var hide : Hide.values()) {
                    for (var mph : new double[] {4, 8, 12}) {
                        for (var windbreak : List.of(true, false)) {
                            said.add(HerdWords.figured(stand(mph, coat, windbreak, by, hide), DAY, false));
                            ways++;
                        }
                    }
                }
            }
        }
        assertThat(said).hasSize(ways);
    }

    @Test
    void aDefaultIsToldFromAChoice() {
        var open = stand(null, null, null, ColdSystem.USUAL, null);
        var chosen = stand(8.0, null, false, ColdSystem.USUAL, Hide.DRY);
        assertThat(HerdWords.figured(open, DAY, false)).isNotEqualTo(HerdWords.figured(chosen, DAY, false));
        assertThat(HerdWords.taken(open)).contains("wind", "windbreak", "coats");
        assertThat(HerdWords.taken(chosen)).isEmpty();
    }

    /** What last winter said of cold and waste moves every figure, the letter's too. */
    @Test
    void aFactorIsNamed() {
        var plain = stand(8.0, null, false, ColdSystem.USUAL, Hide.DRY);
        assertThat(HerdWords.figured(plain.withHerdFactor(1.25), DAY, true))
                .contains("1.25")
                .isNotEqualTo(HerdWords.figured(plain, DAY, true));
        assertThat(HerdWords.figured(plain.with(null).withHerdFactor(1.25), DAY, true))
                .contains("1.25");
    }

    /** Last winter's page stands on the same cold. */
    @Test
    void lastWinterNamesWhatMovedIt() {
        var open = stand(null, null, null, ColdSystem.USUAL, null);
        var chosen = stand(12.0, Coat.FALL, true, ColdSystem.HEAT_BALANCE, Hide.WET);
        var groups = List.of(cows(DAY.plusWeeks(8), "", null, null, null));
        assertThat(HerdWords.lastWinter(open, groups, DAY, DAY.plusWeeks(20)))
                .isNotEqualTo(HerdWords.lastWinter(chosen, groups, DAY, DAY.plusWeeks(20)))
                .isNotEqualTo(HerdWords.lastWinter(open, List.of(), DAY, DAY.plusWeeks(20)))
                .contains("8 mph");
    }

    /** The coat of the season is told as it is that day. */
    @Test
    void theCoatOfTheDay() {
        var open = stand(8.0, null, false, ColdSystem.USUAL, Hide.DRY);
        var words = Set.of(
                HerdWords.figured(open, LocalDate.of(2027, 1, 15), false),
                HerdWords.figured(open, LocalDate.of(2027, 4, 1), false),
                HerdWords.figured(open, LocalDate.of(2027, 5, 1), false));
        assertThat(words).hasSize(3);
    }

    @Test
    void wasteWherePoundsAreShownAndTheLetterHasTheSameWords() {
        var ranch = TinLantern.ranch();
        assertThat(HerdWords.figured(ranch.settings(), DAY, true)).contains("15 %");
        assertThat(HerdWords.figured(ranch.settings(), DAY, false)).doesNotContain("15 %");
        for (var group : ranch.groups().values()) {
            assertThat(FeedLetter.of(ranch, group, DAY).mild())
                    .isEqualTo(HerdWords.figured(ranch.settings(), List.of(group), DAY, DAY, true));
        }
    }

    private static Group cows(
            LocalDate due,
            String breed,
            @Nullable Quantity birth,
            @Nullable Quantity milk,
            @Nullable LocalDate weaning) {
        return new Group(
                new UUID(1, 2),
                "cows",
                AnimalClass.MATURE_COW,
                80,
                Quantity.of(1300, Unit.POUND),
                false,
                DAY,
                Quantity.of(1300, Unit.POUND),
                5,
                breed,
                List.of(new Group.CalvingWeek(due, 80)),
                birth,
                milk,
                weaning,
                Quantity.of(0, Unit.POUND_A_DAY),
                null,
                null,
                null,
                null,
                List.of());
    }

    /** What was left open of a group and moves its need is told from the same that was said. */
    @Test
    void whatWasLeftOpenOfAGroupIsNamedWhereItMovesItsNeed() {
        var settings = stand(8.0, null, false, ColdSystem.USUAL, Hide.DRY);
        var fall = DAY.minusWeeks(10);
        var spring = DAY.plusWeeks(15);
        var birth = Quantity.of(80, Unit.POUND);
        var milk = Quantity.of(20, Unit.POUND_A_DAY);
        var all = cows(fall, "Angus", birth, milk, fall.plusWeeks(28));
        assertThat(words(settings, all, 0)).isEqualTo(HerdWords.figured(settings, DAY, false));
        assertThat(words(settings, cows(fall, "", birth, milk, fall.plusWeeks(28)), 0))
                .isNotEqualTo(words(settings, all, 0));
        assertThat(words(settings, cows(fall, "Angus", birth, null, fall.plusWeeks(28)), 0))
                .isNotEqualTo(words(settings, all, 0));
        assertThat(words(settings, cows(fall, "Angus", birth, milk, null), 0)).isNotEqualTo(words(settings, all, 0));
        // the calf is born, and its weight moves nothing
        assertThat(words(settings, cows(fall, "Angus", null, milk, fall.plusWeeks(28)), 0))
                .isEqualTo(words(settings, all, 0));

        // bred back in winter, with no date for it: by spring the next calf would count, now it would not
        var weaned = HerdWords.figured(settings, List.of(all), DAY, DAY.plusWeeks(10), false);
        assertThat(words(settings, all, 26)).isNotEqualTo(weaned);
        assertThat(weaned).isEqualTo(words(settings, all, 1));

        var carrying = cows(spring, "Angus", birth, milk, spring.plusWeeks(28));
        assertThat(words(settings, cows(spring, "Angus", null, milk, spring.plusWeeks(28)), 0))
                .isNotEqualTo(words(settings, carrying, 0));
        // milk and its end move nothing on a day before calving, and do in weeks that reach beyond it
        var noMilk = cows(spring, "Angus", birth, null, null);
        assertThat(words(settings, noMilk, 0)).isEqualTo(words(settings, carrying, 0));
        assertThat(words(settings, noMilk, 26)).isNotEqualTo(words(settings, carrying, 26));
    }

    private static String words(Settings settings, Group group, int weeks) {
        return HerdWords.figured(settings, List.of(group), DAY, DAY.plusWeeks(weeks), false);
    }
}
