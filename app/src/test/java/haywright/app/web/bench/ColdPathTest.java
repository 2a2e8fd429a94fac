package haywright.app.web.bench;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import haywright.app.document.BentBucket;
import haywright.app.document.TinLantern;
import haywright.app.words.ColdWords;
import haywright.cattle.cold.Hide;
import haywright.feeding.Offers;
import haywright.feeding.Rations;
import haywright.outlook.ColdDay;
import haywright.outlook.ColdPath;
import haywright.quantity.Unit;
import java.time.LocalDate;
import java.util.List;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;

/** The pounds of a cold day, followed with a pencil. */
class ColdPathTest {
    private static final Pattern NUMBER = Pattern.compile("−?[0-9]+(?:\\.[0-9]+)?");

    private static List<Double> numbers(String text) {
        return NUMBER.matcher(text)
                .results()
                .map(MatchResult::group)
                .map(one -> Double.valueOf(one.replace('−', '-')))
                .toList();
    }

    /** Kansas State University, 2025: 1 % of maintenance for each °F below the critical temperature. */
    @Test
    void everyStepComesOutWithAPencil() {
        int followed = 0;
        for (var ranch : List.of(TinLantern.ranch(), BentBucket.ranch())) {
            var rations = new Rations(ranch, ranch.settings().today(LocalDate.MAX));
            for (var group : ranch.groups().values()) {
                var offers = new Offers(rations, group);
                var cold = offers.cold().orElseThrow();
                var says = ColdWords.pencil(offers, cold);
                if (says.isEmpty()) {
                    continue;
                }
                followed++;
                var one = numbers(says.get(0));
                double begins = one.get(0);
                double at = one.get(1);
                double feels = one.get(3);
                assertThat(one.get(4)).isEqualTo(begins - feels);
                assertThat(feels).isLessThan(at);
                var two = numbers(says.get(1));
                assertThat(two.get(0)).isCloseTo(begins - feels, within(1.0));
                double costs = two.get(0) / 100 * two.get(1);
                assertThat(two.get(2)).as(says.get(1)).isCloseTo(costs, within(0.006 * two.get(1)));
                var three = numbers(says.get(2));
                assertThat(three.get(0)).isCloseTo(two.get(2) - two.get(3), within(0.011));
                double pounds = three.get(three.size() - 1);
                assertThat(pounds).as(says.get(2)).isCloseTo(three.get(0) / three.get(three.size() - 2), within(0.3));
                assertThat(cold.steps())
                        .as("the line above says the same")
                        .anyMatch(step -> Math.abs(Unit.FAHRENHEIT.fromBase(step.celsius()) - at) < 0.5
                                && Math.abs(Unit.POUND.fromBase(step.kg()) - pounds) <= 0.25);
                // without the windbreak it costs more, and sooner
                var open = numbers(says.get(3));
                assertThat(open.get(0)).isGreaterThan(Unit.FAHRENHEIT.fromBase(cold.below()));
                // frost costs the same there
                assertThat(open.get(2)).isCloseTo(ColdWords.degreesAPound(cold), within(1.0));
            }
        }
        assertThat(followed).isGreaterThan(6);
    }

    @Test
    void thePathIsTheNeedsOwn() {
        var ranch = BentBucket.ranch();
        var day = LocalDate.of(2027, 1, 15);
        for (var group : ranch.groups().values()) {
            for (double celsius : new double[] {-5, -20, -35}) {
                assertThat(ColdPath.of(ranch.settings(), group, day, celsius)
                                .orElseThrow()
                                .more())
                        .as("%s at %s", group.name(), celsius)
                        .isCloseTo(
                                ColdDay.of(ranch.settings(), group, day, celsius, Hide.DRY)
                                        .more(),
                                within(1e-9));
            }
        }
    }
}
