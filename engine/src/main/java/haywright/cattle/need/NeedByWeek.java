package haywright.cattle.need;

import haywright.cattle.Animal;
import haywright.cattle.RequirementSystem;
import haywright.cattle.cold.Exposure;
import haywright.cattle.herd.Group;
import haywright.cattle.herd.HerdCheck;
import haywright.cattle.herd.Variety;
import haywright.workings.Refused;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;

/**
 * What one head of a group needs in each week of a stretch, for as many winters as wanted. A week's need is the mean of
 * its days' needs, each the mean over the group's calving weeks: never that of a day in the middle. The group is checked
 * once and its cattle are set up once; a winter only brings its weather.
 */
public final class NeedByWeek {
    private static final int DAYS_A_WEEK = 7;

    private final Group group;
    private final RequirementSystem system;
    private final List<LocalDate> begins;
    private final List<List<GroupRequirement>> mild;

    /**
     * A week of weather, for cattle that stand in it.
     *
     * @param previousTemperature mean of the month before, °C; {@link Animal#NO_ACCLIMATIZATION} leaves it out
     * @param days one for each day of the week; or one, which stands for all of them; empty for mild days
     */
    public record Weather(double previousTemperature, List<Exposure> days) {
        public static final Weather MILD = new Weather(Animal.NO_ACCLIMATIZATION, List.of());

        public Weather {
            days = List.copyOf(days);
            if (days.size() > 1 && days.size() != DAYS_A_WEEK) {
                throw new Refused(
                        "days",
                        days.size() + " days",
                        "a week of weather has seven days",
                        "Give each day its weather.");
            }
        }

        /** What stands on one day of the week. */
        private List<Exposure> on(int day) {
            return days.size() == DAYS_A_WEEK ? List.of(days.get(day)) : days;
        }
    }

    private NeedByWeek(
            Group group, RequirementSystem system, List<LocalDate> begins, List<List<GroupRequirement>> mild) {
        this.group = group;
        this.system = system;
        this.begins = List.copyOf(begins);
        this.mild = List.copyOf(mild);
    }

    /**
     * @param from the first day of the first week
     * @param weeks how many, at least 1
     * @throws Refused when {@link HerdCheck} finds something impossible on the first day of a week
     */
    public static NeedByWeek of(Group group, LocalDate from, int weeks, RequirementSystem system) {
        var begins = new ArrayList<LocalDate>();
        var mild = new ArrayList<List<GroupRequirement>>();
        for (int week = 0; week < weeks; week++) {
            var first = from.plusWeeks(week);
            HerdCheck.findings(group, first).refuse();
            begins.add(first);
            mild.add(first.datesUntil(first.plusDays(DAYS_A_WEEK))
                    .map(date -> GroupRequirement.checked(group, date, system, Animal.NO_ACCLIMATIZATION, List.of()))
                    .toList());
        }
        return new NeedByWeek(group, system, begins, mild);
    }

    /** The first day of each week. */
    public List<LocalDate> begins() {
        return begins;
    }

    /** In weeks without any cold. */
    public List<GroupRequirement> mild() {
        return in(begins.stream().map(week -> Weather.MILD).toList());
    }

    /**
     * In one winter.
     *
     * @param winter the weather of each week, in order; as many as there are weeks
     */
    public List<GroupRequirement> in(List<Weather> winter) {
        if (winter.size() != begins.size()) {
            throw new IllegalArgumentException(winter.size() + " weeks of weather for " + begins.size());
        }
        var needs = new ArrayList<GroupRequirement>();
        for (int week = 0; week < begins.size(); week++) {
            needs.add(in(week, winter.get(week)));
        }
        return needs;
    }

    /** @param week counted from 0 */
    public GroupRequirement in(int week, Weather weather) {
        var members = new ArrayList<GroupRequirement.Member>();
        for (int day = 0; day < DAYS_A_WEEK; day++) {
            var exposure = weather.on(day);
            for (var member : mild.get(week).get(day).members()) {
                members.add(new GroupRequirement.Member(
                        member.head(), member.need().in(weather.previousTemperature(), exposure)));
            }
        }
        return new GroupRequirement(group.animals(), system, members, Variety.of(group));
    }
}
