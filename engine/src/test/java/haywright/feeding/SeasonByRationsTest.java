package haywright.feeding;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import haywright.outlook.Yard;
import haywright.season.BookListener;
import haywright.season.BookMaker;
import haywright.season.WinterBook;
import haywright.season.given.Season;
import haywright.season.kept.KeptPlan;
import haywright.season.play.Invented;
import haywright.season.play.Played;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The book goes on from what the bench puts out this week. */
class SeasonByRationsTest {
    private static final int DAYS = 7;
    private static final String ALFALFA = new UUID(0, 2).toString();

    private static WinterBook book(Season season, int draws, List<Played> played) {
        return new BookMaker(1, draws, 1, false, false, () -> false)
                .of(new Yard(season.ranch(), season.today()), season, new BookListener() {
                    @Override
                    public void played(int done, int of, Played winter) {
                        played.add(winter);
                    }
                });
    }

    @ParameterizedTest
    @ValueSource(doubles = {30, 85, 300})
    void theFirstWeekOfThePlanIsTheRationsTimesHeadTimesDays(double tons) {
        var rations = new Rations(Invented.ranch(tons, 0), Invented.DAY);
        var season = SeasonByRations.of(rations);
        var plan = KeptPlan.of(book(season, 1, new ArrayList<>()).plan(), season);
        var first = plan.stretches().get(0);
        assertThat(first.to()).isEqualTo(first.from().plusDays(DAYS));
        for (var ration : plan.rations()) {
            var group = rations.ranch().groups().get(ration.group());
            var fed = rations.toFeed(group).stream()
                    .collect(Collectors.toMap(p -> p.feed().feed().id(), p -> p.kgPutOut()));
            assertThat(fed).isNotEmpty();
            assertThat(ration.portions()).extracting(KeptPlan.Portion::feed).hasSameElementsAs(fed.keySet());
            for (var portion : ration.portions()) {
                assertThat(portion.kg()).as(portion.name()).isCloseTo(fed.get(portion.feed()), within(1e-3));
            }
            for (var eats : first.eats()) {
                if (eats.group().equals(ration.group())) {
                    double kg = fed.get(eats.feed()) * group.head() * DAYS;
                    assertThat(eats.kg()).as(eats.name()).isCloseTo(kg, within(0.1));
                }
            }
        }
    }

    /** What is put out this week is there no more: no lot is fed beyond what lies there. */
    @Test
    void thePlanGoesOnFromWhatThatLeaves() {
        var season = SeasonByRations.of(new Rations(Invented.ranch(60, 0), Invented.DAY));
        var plan = KeptPlan.of(book(season, 1, new ArrayList<>()).plan(), season);
        for (var lot : plan.lots()) {
            double fed = plan.stretches().stream()
                    .flatMap(stretch -> stretch.eats().stream())
                    .filter(eats -> eats.feed().equals(lot.feed()))
                    .mapToDouble(KeptPlan.Eats::kg)
                    .sum();
            assertThat(fed).as(lot.name()).isLessThanOrEqualTo(lot.kg() + 1);
        }
    }

    @Test
    void everyWinterBeginsWithThemToo() {
        var rations = new Rations(Invented.ranch(85, 0), Invented.DAY);
        var season = SeasonByRations.of(rations);
        var played = new ArrayList<Played>();
        book(season, 4, played);
        assertThat(played).hasSize(4);
        for (var winter : played) {
            var eaten = winter.weeks().get(0).decision().eaten();
            for (int e = 0; e < eaten.length; e++) {
                var group = season.eaters().get(e).group();
                for (int f = 0; f < eaten[e].length; f++) {
                    var id = season.feeds().get(f).id();
                    double kg = rations.toFeed(group).stream()
                            .filter(p -> p.feed().feed().id().equals(id))
                            .mapToDouble(p -> p.kg() * group.head() * DAYS)
                            .sum();
                    assertThat(eaten[e][f]).as(season.feeds().get(f).name()).isCloseTo(kg, within(1e-6 * (1 + kg)));
                }
            }
        }
    }

    /** The plan that the rations are weighed by is free in that week: they would else weigh themselves. */
    @Test
    void whatWeighsTheRationsIsFreeInIt() {
        var rations = new Rations(Invented.ranch(85, 0), Invented.DAY);
        SeasonByRations.of(rations);
        assertThat(rations.plan().orElseThrow().season().eaters())
                .allSatisfy(eater -> assertThat(eater.firstWeek()).isEmpty());
    }

    /** More of one lot than lies there, and more grain than any row allows: what reaches is fed, and there is a plan. */
    @Test
    void whatCannotBeFedSoIsFedAsFarAsItReaches() {
        var ranch = Invented.ranch(85, 0);
        var barley = new UUID(2, 2).toString();
        var settled = Map.of(Invented.COWS, Map.of(ALFALFA, 40.0, barley, 12.0, "none", 3.0));
        var season = Season.of(new Yard(ranch, Invented.DAY), new Season.Changes(Set.of(), 0, settled));
        var plan = KeptPlan.of(book(season, 2, new ArrayList<>()).plan(), season);
        double alfalfa = plan.stretches().get(0).eats().stream()
                .filter(eats -> eats.feed().equals(ALFALFA))
                .mapToDouble(KeptPlan.Eats::kg)
                .sum();
        double there = plan.lots().stream()
                .filter(lot -> lot.feed().equals(ALFALFA))
                .mapToDouble(KeptPlan.LotEnds::kg)
                .sum();
        // a week of storage is lost first
        assertThat(alfalfa).isBetween(0.99 * there, there);
        assertThat(plan.usedUp(ALFALFA)).contains(Invented.DAY.plusDays(DAYS - 1));
    }

    @Test
    void theSameRationsHaveTheSameBookAndOthersAnother() {
        var ranch = Invented.ranch(85, 0);
        var season = SeasonByRations.of(new Rations(ranch, Invented.DAY));
        var again = SeasonByRations.of(new Rations(ranch, Invented.DAY));
        var free = Season.of(new Yard(ranch, Invented.DAY));
        var hash = book(season, 1, new ArrayList<>()).hash();
        assertThat(book(again, 1, new ArrayList<>()).hash()).isEqualTo(hash);
        assertThat(book(free, 1, new ArrayList<>()).hash()).isNotEqualTo(hash);
    }
}
