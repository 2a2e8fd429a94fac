package haywright.app.web.herd;

import haywright.app.words.Measures;
import haywright.app.words.Show;
import haywright.cattle.cold.ColdSystem;
import haywright.cattle.cold.Hide;
import haywright.cattle.cold.LowerCritical;
import haywright.cattle.herd.Group;
import haywright.outlook.ColdDay;
import haywright.outlook.HayMeasure;
import haywright.outlook.HerdWeather;
import haywright.outlook.OwnRule;
import haywright.quantity.Unit;
import haywright.ranch.Settings;
import java.time.LocalDate;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;

/**
 * What to add on a day that is colder than the time of year, as pounds of a hay of this ranch, and the rule of thumb that
 * comes out of it.
 *
 * @param rule a sentence to remember; empty where no cold costs them anything
 * @param why where its figures come from
 * @param wet where the cold begins in a wet coat
 * @param methods how far the two ways to count the cold part
 */
public record ColdSnap(String rule, String why, String wet, String methods, List<Row> rows) {
    private static final int WARMEST = 50;
    private static final int STEP = 10;
    private static final int STEPS = 9;

    /** % of maintenance: more than that is not eaten. */
    private static final double MOST_THAT_IS_EATEN = 50;

    /**
     * Grain in a storm, only to cattle on grain already: 1 lb for each 5 °C that the afternoon high is below −20 °C, at most
     * 5 lb a head (Saskatchewan Agriculture; the most: common practice, no source). The source names no weight.
     */
    private static final double GRAIN_BEGINS = -20;

    private static final double GRAIN_STEP = 5;
    private static final double MOST_GRAIN = 5;

    /** °F, of the day on which the two ways are held side by side. */
    private static final double COMPARED_AT = 0;

    private static final double LEAST_POUNDS = 0.5;

    /** Times: so far apart the two methods are said to be unsure. */
    private static final double WIDE = 1.5;

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
                        Show.temperature(Unit.FAHRENHEIT.toBase(fahrenheit)),
                        adds(settings, group, day, hay, fahrenheit, weather.coats()),
                        adds(settings, group, day, hay, fahrenheit, Hide.WET)))
                .toList();
        var felt = new HerdWeather(settings);
        var animal = felt.need(group, day).members().get(0).need().animal();
        var coat = felt.day(day, 0).coat(animal);
        var lower = new LowerCritical(coat, weather.coats().wet(), group.conditionScore());
        var wet = new LowerCritical(coat, true, group.conditionScore());
        var own = OwnRule.of(settings, group, day);
        return new ColdSnap(
                own.map(rule -> "Each %s %s below %s adds about %s lb of %s per head per day."
                                .formatted(
                                        Show.number(Measures.ofTen(), 0),
                                        Measures.degree(),
                                        Show.temperature(rule.begins()),
                                        Show.number(
                                                pounds(
                                                        hay,
                                                        rule.perDegree()
                                                                * Measures.inFahrenheit(Measures.ofTen())
                                                                / 1.8),
                                                1),
                                        hay.name()))
                        .orElse(""),
                ("By the average of day and night, wind %s%s. By the table of coats, cold starts at %s in still air"
                                + " for these cattle; they are used to last month’s cold.")
                        .formatted(
                                Show.quantity(weather.blows()) + (weather.wind() == null ? " (assumed)" : ""),
                                weather.isSheltered() ? ", behind a windbreak" : "",
                                Show.temperature(lower.celsius())),
                "In a wet coat it starts at %s.".formatted(Show.temperature(wet.celsius())),
                methods(settings, group, day, hay),
                rows);
    }

    private static String methods(Settings settings, Group group, LocalDate day, HayMeasure hay) {
        double rule = costs(settings, group, day, ColdSystem.RULE_OF_THUMB);
        double balance = costs(settings, group, day, ColdSystem.HEAT_BALANCE);
        var weather = settings.weather();
        boolean byRule = weather == null || weather.coldSystem() == ColdSystem.RULE_OF_THUMB;
        boolean wide = Math.max(rule, balance) > WIDE * Math.min(rule, balance);
        return "A day at %s costs %s by the rule of thumb, %s by the heat balance: %s lb of hay apart. %s"
                .formatted(
                        Show.temperature(Unit.FAHRENHEIT.toBase(COMPARED_AT)),
                        NeedFigures.mcal(rule),
                        NeedFigures.mcal(balance),
                        Show.number(pounds(hay, Math.abs(rule - balance)), 1),
                        used(byRule, wide));
    }

    private static String used(boolean byRule, boolean wide) {
        var why = byRule
                ? "The rule of thumb is used: its tables were checked; the heat balance is from memory."
                : "The heat balance is used, as this ranch chose: it is from memory; the rule’s tables were checked.";
        return wide
                ? why
                        + " They are too far apart to be sure of either: score the cattle after a cold spell and trust that."
                : why;
    }

    private static double costs(Settings settings, Group group, LocalDate day, ColdSystem by) {
        var weather = settings.weather();
        return weather == null
                ? 0
                : ColdDay.of(
                                settings.with(weather.counted(by)),
                                group,
                                day,
                                Unit.FAHRENHEIT.toBase(COMPARED_AT),
                                weather.coats())
                        .costs();
    }

    /**
     * lb a head in a storm, for cattle that are on grain already.
     *
     * @param high of the afternoon, °C; the rows of a day's mean are colder than their afternoon, so they never take it
     */
    static double grain(double high) {
        return Math.min(MOST_GRAIN, Math.max(0, (GRAIN_BEGINS - high) / GRAIN_STEP));
    }

    /** The rule at the afternoon highs at which it gives whole pounds, in words. */
    public static String grainByHigh() {
        return IntStream.rangeClosed(1, (int) MOST_GRAIN)
                .mapToObj(pounds -> {
                    double high = GRAIN_BEGINS - GRAIN_STEP * pounds;
                    return "%s %s lb".formatted(Show.temperature(high), Show.number(grain(high), 0));
                })
                .collect(Collectors.joining(", "));
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
