package haywright.outlook;

import haywright.cattle.cold.Hide;
import haywright.cattle.herd.Group;
import haywright.ranch.Settings;
import java.time.LocalDate;

/**
 * A day colder than the time of the year: what one head needs for it, and how much more that is than in the usual cold.
 *
 * @param costs of the whole cold of that day, Mcal of NEm
 * @param more over the usual cold of the time, which they get already, Mcal of NEm; never below zero
 * @param percent of maintenance that the whole cold is
 */
public record ColdDay(double costs, double more, double percent) {
    /**
     * @param celsius mean of the day
     * @param hide what lies on their coats that day
     */
    public static ColdDay of(Settings settings, Group group, LocalDate day, double celsius, Hide hide) {
        var weather = new HerdWeather(settings);
        var usual = weather.need(group, day);
        double costs = weather.cold(group, day, celsius, hide);
        return new ColdDay(costs, Math.max(0, costs - usual.nemCold()), 100 * costs / usual.nemMaintenance());
    }
}
