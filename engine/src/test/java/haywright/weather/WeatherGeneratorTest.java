package haywright.weather;

import static haywright.quantity.Unit.FAHRENHEIT;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import haywright.chance.Draws;
import haywright.workings.PublishedTable;
import java.time.LocalDate;
import java.util.List;
import java.util.function.ToDoubleFunction;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

/** Fitted to one half of the record; held against published parameters of it, and against the half it has not seen. */
class WeatherGeneratorTest {
    private static final Station SEEN =
            StationTest.STATION.between(LocalDate.of(1950, 1, 1), LocalDate.of(1999, 12, 31));
    private static final Station UNSEEN =
            StationTest.STATION.between(LocalDate.of(1900, 1, 1), LocalDate.of(1949, 12, 31));
    private static final WeatherGenerator GENERATOR = WeatherGenerator.fit(SEEN);
    private static final List<Winter> DRAWN = drawn(600);

    private static List<Winter> drawn(int winters) {
        var draws = new Draws(20261125);
        return IntStream.range(0, winters)
                .mapToObj(i -> GENERATOR.winter(2027, draws))
                .toList();
    }

    /** Half of the last printed digit; the first day of the record has no day before it, which moves a chance by 1e-3. */
    @Test
    void monthsAgreeWithPublishedParameters() {
        var rows = PublishedTable.read(WeatherGeneratorTest.class, "fort_collins_generator_params.csv")
                .rows();
        for (int i = 0; i < 12; i++) {
            var row = rows.get(i);
            var month = GENERATOR.months().get(i);
            assertThat(month.wetAfterWet())
                    .isCloseTo(row.number("p_wet_given_wet").orElseThrow(), within(0.0011));
            assertThat(month.wetAfterDry())
                    .isCloseTo(row.number("p_wet_given_dry").orElseThrow(), within(0.0011));
            var cent = within(0.01);
            assertThat(FAHRENHEIT.fromBase(month.spread().highMean()))
                    .isCloseTo(row.number("tmax_mean_f").orElseThrow(), cent);
            assertThat(FAHRENHEIT.fromBase(month.spread().lowMean()))
                    .isCloseTo(row.number("tmin_mean_f").orElseThrow(), cent);
            assertThat(1.8 * month.spread().highSpread())
                    .isCloseTo(row.number("tmax_sd_f").orElseThrow(), cent);
            assertThat(1.8 * month.spread().lowSpread())
                    .isCloseTo(row.number("tmin_sd_f").orElseThrow(), cent);
            assertThat(month.rain() / 25.4)
                    .isCloseTo(row.number("wet_day_mean_in").orElseThrow(), within(0.000500001));
        }
    }

    /** As an independent script on a linear-algebra library printed them, of the same pairs of days. */
    @Test
    void matricesAgreeWithAnIndependentFit() {
        var half = within(0.000051);
        assertThat(GENERATOR.a().get(0).get(0)).isCloseTo(0.7119, half);
        assertThat(GENERATOR.a().get(0).get(1)).isCloseTo(-0.0502, half);
        assertThat(GENERATOR.a().get(1).get(0)).isCloseTo(0.5395, half);
        assertThat(GENERATOR.a().get(1).get(1)).isCloseTo(0.2729, half);
        assertThat(GENERATOR.b().get(0).get(0)).isCloseTo(0.7333, half);
        assertThat(GENERATOR.b().get(1).get(0)).isCloseTo(0.2421, half);
        assertThat(GENERATOR.b().get(1).get(1)).isCloseTo(0.6181, half);
    }

    private static double mean(List<Winter> winters, ToDoubleFunction<Winter> of) {
        return winters.stream().mapToDouble(of).average().orElseThrow();
    }

    private static double sd(List<Winter> winters, ToDoubleFunction<Winter> of) {
        double mean = mean(winters, of);
        return Math.sqrt(mean(winters, w -> Math.pow(of.applyAsDouble(w) - mean, 2)));
    }

    private static double quantile(List<Winter> winters, double p, ToDoubleFunction<Winter> of) {
        var sorted = winters.stream().mapToDouble(of).sorted().toArray();
        return sorted[(int) (p * (sorted.length - 1))];
    }

    /** Correlation of a day's mean with that of the day before, January and February. */
    private static double lagOne(List<Winter> winters) {
        double xy = 0;
        double xx = 0;
        double mean = mean(winters, WeatherGeneratorTest::midwinter);
        for (var winter : winters) {
            var days = winter.days().stream()
                    .filter(d -> d.date().getMonthValue() <= 2)
                    .toList();
            for (int i = 1; i < days.size(); i++) {
                xy += (days.get(i).mean() - mean) * (days.get(i - 1).mean() - mean);
                xx += Math.pow(days.get(i).mean() - mean, 2);
            }
        }
        return xy / xx;
    }

    private static double midwinter(Winter winter) {
        return winter.days().stream()
                .filter(d -> d.date().getMonthValue() <= 2)
                .mapToDouble(DailyWeather::mean)
                .average()
                .orElseThrow();
    }

    /** Against the years it was fitted to: sampling error of 49 winters, twice. */
    @Test
    void drawnWintersAreLikeThoseTheyWereFittedTo() {
        var real = SEEN.winters();
        assertThat(mean(DRAWN, Winter::mean)).isCloseTo(mean(real, Winter::mean), within(0.35));
        double ratio = sd(DRAWN, Winter::mean) / sd(real, Winter::mean);
        assertThat(ratio).isBetween(0.75, 1.25);
        assertThat(lagOne(DRAWN)).isCloseTo(lagOne(real), within(0.05));
        double wet = mean(DRAWN, WeatherGeneratorTest::wetDays);
        assertThat(wet).isCloseTo(mean(real, WeatherGeneratorTest::wetDays), within(3.0));
    }

    private static double wetDays(Winter winter) {
        return winter.days().stream().filter(DailyWeather::wet).count();
    }

    /** Against the years it has not seen; half a century apart the climate itself may have moved by a degree. */
    @Test
    void drawnWintersAreLikeThoseTheyHaveNotSeen() {
        var unseen = UNSEEN.winters();
        assertThat(mean(DRAWN, Winter::mean)).isCloseTo(mean(unseen, Winter::mean), within(1.5));
        assertThat(sd(DRAWN, Winter::mean) / sd(unseen, Winter::mean)).isBetween(0.6, 1.4);
        assertThat(lagOne(DRAWN)).isCloseTo(lagOne(unseen), within(0.08));
        assertThat(mean(DRAWN, w -> longestSpell(w)))
                .isBetween(0.6 * mean(unseen, w -> longestSpell(w)), 1.4 * mean(unseen, w -> longestSpell(w)));
    }

    /** Days in a row from November to March whose mean is under freezing. */
    private static double longestSpell(Winter winter) {
        int run = 0;
        int longest = 0;
        for (var day : winter.days()) {
            run = day.mean() < 0 ? run + 1 : 0;
            longest = Math.max(longest, run);
        }
        return longest;
    }

    /** Why the real winters are shown: the hardest ones come too seldom among drawn ones. */
    @Test
    void theHardestWintersAreUnderdrawn() {
        ToDoubleFunction<Winter> hardness = w -> w.degreeDaysUnder(FAHRENHEIT.toBase(18));
        assertThat(quantile(DRAWN, 0.9, hardness)).isLessThan(quantile(SEEN.winters(), 0.9, hardness));
        assertThat(quantile(DRAWN, 0.5, hardness)).isCloseTo(quantile(SEEN.winters(), 0.5, hardness), within(25.0));
    }

    @Test
    void theSameSeedGivesTheSameWinterAndEveryDayIsSound() {
        assertThat(GENERATOR.winter(2027, new Draws(5))).isEqualTo(GENERATOR.winter(2027, new Draws(5)));
        assertThat(GENERATOR.winter(2028, new Draws(5)).days()).hasSize(244);
    }
}
