package haywright.app.web.herd;

import haywright.app.words.Show;
import haywright.cattle.Group;
import haywright.cattle.Hide;
import haywright.cattle.LowerCritical;
import haywright.quantity.Unit;
import haywright.ranch.ColdDay;
import haywright.ranch.HayMeasure;
import haywright.ranch.OwnRule;
import haywright.ranch.Settings;
import java.time.LocalDate;
import java.util.List;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;

/**
 * What to add on a day that is colder than the time of year, as pounds of a hay of this ranch, and the rule of thumb that
 * comes out of it.
 *
 * @param rule a sentence to remember; empty where no cold costs them anything
 * @param why where its figures come from
 */
public record ColdSnap(String rule, String why, List<Row> rows) {
    private static final int WARMEST = 50;
    private static final int STEP = 10;
    private static final int STEPS = 9;

    /** % of maintenance: more than that is not eaten. */
    private static final double MOST_THAT_IS_EATEN = 50;

    private static final double LEAST_POUNDS = 0.5;

    /** @param dry and {@code wet}: hay to add a head, in words, where the coat is dry or wet through */
    public record Row(String temperature, String dry, String wet) {}

    /** Null where no weather is said. */
    static @Nullable ColdSnap of(Settings settings, Group group, LocalDate day, HayMeasure hay) {
        var weather = settings.weather();
        if (weather == null) {
            return null;
        }
        var rows = IntStream.range(0, STEPS)
                .map(i -> WARMEST - STEP * i)
                .mapToObj(fahrenheit -> new Row(
                        Show.number(fahrenheit, 0) + " °F",
                        adds(settings, group, day, hay, fahrenheit, weather.coats()),
                        adds(settings, group, day, hay, fahrenheit, Hide.WET)))
                .toList();
        var lower = new LowerCritical(weather.coat(), weather.coats().wet(), group.conditionScore());
        var own = OwnRule.of(settings, group, day);
        return new ColdSnap(
                own.map(rule -> "Each 10 °F below %s adds about %s lb of %s, put out, a head and day."
                                .formatted(
                                        Show.fahrenheit(rule.begins()),
                                        Show.number(pounds(hay, rule.perDegree() * STEP / 1.8), 1),
                                        hay.name()))
                        .orElse(""),
                ("By the mean of day and night, with a wind of %s%s. The table of coats has the cold begin at %s in still air"
                                + " for these cattle; what last month has taught them is in their upkeep already.")
                        .formatted(
                                Show.quantity(weather.wind()),
                                weather.windbreak() ? ", behind a windbreak" : "",
                                Show.fahrenheit(lower.celsius())),
                rows);
    }

    private static double pounds(HayMeasure hay, double mcal) {
        return Unit.POUND.fromBase(hay.forMaintenance(mcal));
    }

    private static String adds(
            Settings settings, Group group, LocalDate day, HayMeasure hay, int fahrenheit, Hide hide) {
        var cold = ColdDay.of(settings, group, day, Unit.FAHRENHEIT.toBase(fahrenheit), hide);
        double pounds = pounds(hay, cold.more());
        return pounds < LEAST_POUNDS
                ? "nothing"
                : cold.percent() > MOST_THAT_IS_EATEN ? "more than they can eat" : Show.number(pounds, 0) + " lb";
    }
}
