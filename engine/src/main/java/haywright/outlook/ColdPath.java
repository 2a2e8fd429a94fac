package haywright.outlook;

import haywright.cattle.cold.ColdByRule;
import haywright.cattle.cold.ColdSystem;
import haywright.cattle.herd.Group;
import haywright.ranch.Settings;
import java.time.LocalDate;
import java.util.Optional;

/**
 * What one cold day adds to the need of one head by the rule of thumb, step by step, so that it can be followed with a pencil.
 * <pre>
 * more = h·(pct/100·mild − already)      Mcal of NEm a day; pct is 1 for each °F that it feels below begins, 2 when wet
 * </pre>
 *
 * @param begins °C that it feels like, from which cold costs: coat and condition
 * @param at mean of the day, °C. @param feels with the wind that reaches them, °C
 * @param percent of {@code mild}
 * @param mild maintenance in mild weather, Mcal
 * @param already in the need of this time of year, Mcal: what last month's cold and the usual cold of the week take
 * @param factor h: what this herd's cold costs against the equations, as last winter's feeding said
 */
public record ColdPath(
        double begins, double at, double feels, double percent, double mild, double already, double factor) {
    /** Empty where no weather is said, or the cold is counted by the heat balance, which no pencil follows. */
    public static Optional<ColdPath> of(Settings settings, Group group, LocalDate day, double celsius) {
        var said = settings.weather();
        if (said == null || said.coldSystem() != ColdSystem.RULE_OF_THUMB) {
            return Optional.empty();
        }
        var weather = new HerdWeather(settings);
        var need = weather.need(group, day);
        // members differ in what they carry, not in their coat, weight and condition
        var rule = new ColdByRule(need.members().get(0).need().animal(), weather.day(day, celsius));
        var stress = rule.stress();
        double factor = settings.factor();
        return Optional.of(new ColdPath(
                stress.lowerCritical().value(),
                celsius,
                stress.effective().value(),
                stress.percent(),
                rule.mild(),
                rule.learned() + (factor > 0 ? need.nemCold() / factor : 0),
                factor));
    }

    /** What reaches them, Mcal. */
    public double costs() {
        return percent / 100 * mild;
    }

    /** Mcal over the need of this time of year. */
    public double more() {
        return Math.max(0, factor * (costs() - already));
    }
}
