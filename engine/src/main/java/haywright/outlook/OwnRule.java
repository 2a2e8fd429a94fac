package haywright.outlook;

import haywright.cattle.herd.Group;
import haywright.ranch.Settings;
import java.time.LocalDate;
import java.util.Optional;
import java.util.function.DoubleUnaryOperator;

/**
 * The rule of thumb of one group at one time of the year: when the cold of a day begins to cost feed, and what each degree
 * costs from there on. What last month has taught them is in their maintenance already, so that it begins lower than the table
 * of coats says.
 *
 * @param begins mean of the day, °C, with the wind usual here
 * @param perDegree Mcal of NEm per head per day for each °C under it
 */
public record OwnRule(double begins, double perDegree) {
    private static final double MILDEST = 40;
    private static final double COLDEST = -60;

    /** Far enough under the beginning that every member of the group is in it, °C. */
    private static final double NEAR = 12;

    private static final double FAR = 17;
    private static final int HALVINGS = 40;

    /** Empty where no weather is said, or where no cold there is costs them anything. */
    public static Optional<OwnRule> of(Settings settings, Group group, LocalDate day) {
        var said = settings.weather();
        if (said == null) {
            return Optional.empty();
        }
        var weather = new HerdWeather(settings);
        DoubleUnaryOperator cold = celsius -> weather.cold(group, day, celsius, said.coats());
        if (cold.applyAsDouble(COLDEST) <= 0) {
            return Optional.empty();
        }
        double costs = COLDEST;
        double free = MILDEST;
        for (int i = 0; i < HALVINGS; i++) {
            double middle = (costs + free) / 2;
            if (cold.applyAsDouble(middle) > 0) {
                costs = middle;
            } else {
                free = middle;
            }
        }
        double near = cold.applyAsDouble(costs - NEAR);
        double far = cold.applyAsDouble(costs - FAR);
        return Optional.of(new OwnRule(costs, (far - near) / (FAR - NEAR)));
    }
}
