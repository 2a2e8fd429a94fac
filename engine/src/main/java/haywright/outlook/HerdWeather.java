package haywright.outlook;

import haywright.cattle.RequirementSystem;
import haywright.cattle.cold.Coat;
import haywright.cattle.cold.Exposure;
import haywright.cattle.cold.HairCoat;
import haywright.cattle.cold.Hide;
import haywright.cattle.herd.Group;
import haywright.cattle.need.GroupRequirement;
import haywright.cattle.need.NeedByWeek;
import haywright.cattle.need.Requirement;
import haywright.ranch.RanchWeather;
import haywright.ranch.Settings;
import haywright.weather.KeptWinter;
import haywright.workings.Refused;
import java.time.LocalDate;
import java.util.Collections;
import java.util.List;
import java.util.Objects;
import java.util.stream.IntStream;

/**
 * The weather of a ranch as its herd feels it, and what a group needs in it. Where no weather is said, every day is mild.
 *
 * @param settings that say the weather, the edition of the equations and what last winter said of the cold
 */
public record HerdWeather(Settings settings) {
    private static final int LAST_DAY = 6;

    /**
     * What one head of a group needs on a day, in the weather of that time of year where it is said.
     *
     * @throws Refused when the group cannot be
     */
    public GroupRequirement need(Group group, LocalDate day) {
        return need(group, day, settings.system());
    }

    /** The same by either edition. */
    public GroupRequirement need(Group group, LocalDate day, RequirementSystem by) {
        return need(group, day, by, usual(day));
    }

    private static GroupRequirement need(Group group, LocalDate day, RequirementSystem by, NeedByWeek.Weather week) {
        return Requirement.of(group, day, by, week.previousTemperature(), week.days());
    }

    /** What a day of this mean, °C, costs one head, Mcal of NEm, with this on their coats. */
    double cold(Group group, LocalDate day, double mean, Hide hide) {
        double before = said().normals().monthBefore(day);
        var week = new NeedByWeek.Weather(before, List.of(day(day, mean).with(hide)));
        return need(group, day, settings.system(), week).nemCold();
    }

    /** Days that are equally likely in the week that begins on a date; mild ones where no weather is said. */
    public NeedByWeek.Weather usual(LocalDate begins) {
        if (settings.weather() == null) {
            return NeedByWeek.Weather.MILD;
        }
        var normals = said().normals();
        return new NeedByWeek.Weather(
                normals.monthBefore(begins),
                normals.week(begins).stream().map(mean -> day(begins, mean)).toList());
    }

    /** Whether a winter that is kept has every day of the week that begins on a date. */
    public static boolean covers(LocalDate begins) {
        return KeptWinter.covers(begins) && KeptWinter.covers(begins.plusDays(LAST_DAY));
    }

    /**
     * Weeks of a winter that was, with its own wind where the station has it.
     *
     * @param begins of weeks that are covered
     */
    public List<NeedByWeek.Weather> in(KeptWinter winter, List<LocalDate> begins) {
        var weeks = winter.weeks(begins, said().normals());
        return IntStream.range(0, weeks.size())
                .mapToObj(week -> week(begins.get(week), weeks.get(week)))
                .toList();
    }

    private NeedByWeek.Weather week(LocalDate begins, KeptWinter.Week week) {
        var means = week.means();
        var winds = week.winds().isEmpty()
                ? Collections.nCopies(means.size(), said().blows().base())
                : week.winds();
        return new NeedByWeek.Weather(
                week.monthBefore(),
                IntStream.range(0, means.size())
                        .mapToObj(day -> day(begins, means.get(day), winds.get(day)))
                        .toList());
    }

    /** A day of this mean temperature, °C, in the usual wind, as this herd feels it. */
    public Exposure day(LocalDate date, double mean) {
        return day(date, mean, said().blows().base());
    }

    /** @param blows mean wind of the day in the open, km/h */
    private Exposure day(LocalDate date, double mean, double blows) {
        var said = said();
        var coat = said.coat();
        var exposure = new Exposure(
                        mean,
                        blows,
                        coat == null ? Coat.WINTER : coat,
                        said.coats(),
                        said.isSheltered(),
                        said.coldSystem())
                .ofHerd(settings.factor());
        return coat == null ? exposure.in(HairCoat.usual(date)) : exposure;
    }

    private RanchWeather said() {
        return Objects.requireNonNull(settings.weather(), "no weather is said");
    }
}
