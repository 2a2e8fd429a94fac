package haywright.app.compute.topic;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.ObjectMapper;
import haywright.app.compute.Asked;
import haywright.app.compute.Compute;
import haywright.weather.DailyWeather;
import haywright.weather.Station;
import java.time.LocalDate;
import java.util.Locale;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The keys that are promised, from a name and from a record. */
class WintersTopicTest {
    private static final ObjectMapper JSON = new ObjectMapper();
    private static final Asked COMPUTE = new Asked(Topics.ALL);
    private static final Station STATION = Station.fortCollins();

    private static String csv(int from, int to) {
        return "DATE,TMAX,TMIN\n"
                + STATION.between(LocalDate.of(from, 7, 1), LocalDate.of(to, 6, 30)).days().stream()
                        .map(WintersTopicTest::line)
                        .collect(Collectors.joining("\n"));
    }

    private static String line(DailyWeather day) {
        return String.format(Locale.ROOT, "%s,%.2f,%.2f", day.date(), day.high() * 1.8 + 32, day.low() * 1.8 + 32);
    }

    /** January 1991 to 2020 at Valentine's airport: 24.4 °F (WMO normals: −4.2 °C). */
    @Test
    void aPlaceByItsName() {
        var outcome = COMPUTE.run("winters", "{\"place\":\"valentine, nebraska\"}");
        assertThat(outcome.exit()).isEqualTo(Compute.DONE);
        var answer = outcome.body().get("answer");
        assertThat(answer.get("from").asText()).startsWith("nearest station Valentine Miller Fld, NE");
        assertThat(answer.get("january_mean_f").asDouble()).isCloseTo(24.44, within(0.005));
        assertThat(answer.get("winters")).hasSize(28);
        for (var winter : answer.get("winters")) {
            assertThat(winter.fieldNames())
                    .toIterable()
                    .containsExactly("winter", "degree_days_below_18f", "coldest_week_f");
        }
        assertThat(answer.at("/winters/6/winter").asText()).isEqualTo("1996-97");
        var moved = COMPUTE.run("winters", "{\"place\":\"Valentine, NE\",\"warmer_by_f\":-5,\"height_ft\":2600}")
                .body()
                .get("answer");
        assertThat(moved.get("january_mean_f").asDouble()).isCloseTo(19.44, within(0.005));
        assertThat(moved.at("/winters/6/coldest_week_f").asDouble())
                .isCloseTo(answer.at("/winters/6/coldest_week_f").asDouble() - 5, within(1e-6));
    }

    /** Summed again here, day by day, from the days that went in. */
    @Test
    void aRecordIsUsedAsItIs() throws Exception {
        var text = JSON.writeValueAsString(csv(1980, 1990));
        var answer =
                COMPUTE.run("winters", "{\"station_file\":" + text + "}").body().get("answer");
        assertThat(answer.get("winters")).hasSize(10);
        var last = answer.at("/winters/9");
        assertThat(last.get("winter").asText()).isEqualTo("1989-90");
        assertThat(last.has("drawn")).isFalse();
        double sum = STATION.between(LocalDate.of(1989, 11, 1), LocalDate.of(1990, 3, 31)).days().stream()
                .mapToDouble(day -> Math.max(0, 18 - (day.mean() * 1.8 + 32)))
                .sum();
        assertThat(last.get("degree_days_below_18f").asDouble()).isCloseTo(sum, within(0.01));
    }

    /** Ten years of days with nine whole winters among them: drawn, and each marked. */
    @Test
    void drawnWintersAreMarked() throws Exception {
        var lines = csv(1980, 1991)
                .lines()
                .filter(line -> !line.startsWith("1985-12") && !line.startsWith("1986-12"))
                .collect(Collectors.joining("\n"));
        var body = COMPUTE.run("winters", "{\"station_file\":" + JSON.writeValueAsString(lines) + "}")
                .body();
        var winters = body.at("/answer/winters");
        assertThat(winters).hasSize(30);
        for (var winter : winters) {
            assertThat(winter.get("drawn").asBoolean()).isTrue();
            assertThat(winter.get("winter").asText()).startsWith("drawn ");
        }
        assertThat(body.at("/answer/from").asText()).contains("drawn");
    }

    @Test
    void whereNoWintersAreKnownTheAnswerIsNo() {
        var outcome = COMPUTE.run("winters", "{\"place\":\"Fairbanks, AK\"}");
        assertThat(outcome.exit()).isEqualTo(Compute.NO);
        assertThat(outcome.body().at("/answer/winters")).isEmpty();
        assertThat(outcome.body().at("/answer/january_mean_f").asDouble()).isLessThan(5);
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "{} | place",
                "{'place':'Lincoln'} | Lincoln, NE",
                "{'place':'Valentin, NE'} | Valentine, NE",
                "{'place':'Valentine, NE','station_file':'x'} | place",
                "{'station_file':'/etc/hosts'} | text of the file",
                "{'station_file':'a\\nb'} | .dly",
                "{'place':'Valentine, NE','warmer_by_f':99} | 20 °F"
            })
    void whatCannotBeIsRefused(String asked, String words) {
        var outcome = COMPUTE.run("winters", asked.replace('\'', '"'));
        assertThat(outcome.exit()).isEqualTo(Compute.REFUSED);
        assertThat(outcome.body().toString()).contains(words);
    }
}
