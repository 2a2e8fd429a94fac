package haywright.app.web.ranch;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import haywright.app.compute.Asked;
import haywright.app.compute.topic.Topics;
import haywright.app.report.picture.WintersPicture;
import haywright.app.words.Show;
import haywright.cattle.cold.ColdSystem;
import haywright.ranch.FoundPlace;
import haywright.ranch.Ranch;
import haywright.ranch.RanchWeather;
import haywright.weather.MeanWinter;
import java.util.Collections;
import java.util.List;
import java.util.UUID;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The winters of a place are the same on its page and in the topic. */
class WintersViewTest {
    @ParameterizedTest
    @ValueSource(strings = {"Cando, ND", "Valentine, NE"})
    void pageAndTopicTellTheSame(String place) {
        var found = FoundPlace.of(place, null, 0);
        var weather =
                new RanchWeather(found.place(), List.of(), null, null, false, ColdSystem.USUAL, null, List.of(), found);
        var ranch = Ranch.empty(new UUID(7, 9), "Invented").withWeather(weather, null);
        var rows = WintersView.of(ranch).orElseThrow().rows();
        var told = new Asked(Topics.ALL)
                .run("winters", "{\"place\":\"" + place + "\"}")
                .body()
                .at("/answer/winters");
        assertThat(rows).hasSize(told.size()).hasSizeGreaterThan(20);
        for (int i = 0; i < told.size(); i++) {
            var row = rows.get(told.size() - 1 - i);
            assertThat(row.winter()).isEqualTo(told.get(i).get("winter").asText());
            assertThat(row.degreeDays())
                    .as(row.winter())
                    .isEqualTo(
                            Show.number(told.get(i).get("degree_days_below_18f").asDouble(), 0));
        }
    }

    /** Of 1, 2, 3 and 10 °C-days the middle is 2.5; of the first three it is 2. */
    @Test
    void theMiddleHasAsManyAboveAsBelow() {
        var winters = List.of(winter(1), winter(2), winter(3), winter(10));
        assertThat(WintersPicture.middle(winters, winter -> winter.means().get(0)))
                .isCloseTo(2.5, within(1e-12));
        assertThat(WintersPicture.middle(
                        winters.subList(0, 3), winter -> winter.means().get(0)))
                .isCloseTo(2, within(1e-12));
    }

    private static MeanWinter winter(double celsius) {
        return new MeanWinter(2001, Collections.nCopies(243, celsius));
    }
}
