package haywright.app.web.herd;

import haywright.app.words.Show;
import haywright.cattle.Group;
import haywright.cattle.Need;
import haywright.cattle.Requirement;
import haywright.diet.PoorestDiet;
import haywright.forage.NetEnergy;
import haywright.quantity.Unit;
import haywright.ranch.Settings;
import java.time.LocalDate;
import java.util.List;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;

/**
 * What to add on a day that is colder than the time of year, as pounds of the hay that would carry them otherwise.
 *
 * @param hay what hay that is, in words
 */
public record ColdSnap(String hay, List<Row> rows) {
    private static final int WARMEST = 20;
    private static final int STEP = 10;
    private static final int STEPS = 6;

    /** % of maintenance: more than that is not eaten. */
    private static final double MOST_THAT_IS_EATEN = 50;

    /** @param adds dry hay a head, in words */
    public record Row(String temperature, String costs, String adds) {}

    /** Null where no weather is said, or no diet carries the gain that is wanted. */
    static @Nullable ColdSnap of(Settings settings, Group group, LocalDate day) {
        var weather = settings.weather();
        var usual = settings.need(group, day);
        var diet = PoorestDiet.of(usual);
        if (weather == null || diet.isEmpty()) {
            return null;
        }
        double tdn = diet.get().tdn();
        double hayNem = new NetEnergy(tdn).nem();
        double before = weather.normals().monthBefore(day);
        var rows = IntStream.range(0, STEPS)
                .mapToObj(i -> {
                    int fahrenheit = WARMEST - STEP * i;
                    var one = weather.day(Unit.FAHRENHEIT.toBase(fahrenheit));
                    var need = Requirement.of(group, day, settings.system(), before, List.of(one));
                    return row(fahrenheit, usual, need, hayNem);
                })
                .toList();
        return new ColdSnap("hay of " + Show.number(tdn, 0) + " % TDN", rows);
    }

    private static Row row(int fahrenheit, Need usual, Need need, double hayNem) {
        double more = need.nem() - usual.nem();
        double percent = 100 * need.nemCold() / need.nemMaintenance();
        double pounds = Unit.POUND.fromBase(more / hayNem);
        var adds = pounds < 0.5
                ? "nothing"
                : percent > MOST_THAT_IS_EATEN
                        ? "more than they can eat: what they clean up, and the rest over the days after"
                        : Show.number(pounds, 0) + " lb";
        return new Row(fahrenheit + " °F", Show.number(need.nemCold(), 1) + " Mcal", adds);
    }
}
