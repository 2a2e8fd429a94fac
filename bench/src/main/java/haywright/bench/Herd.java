package haywright.bench;

import haywright.app.document.TinLantern;
import haywright.cattle.Animal;
import haywright.cattle.RequirementSystem;
import haywright.cattle.cold.Coat;
import haywright.cattle.cold.ColdSystem;
import haywright.cattle.cold.Exposure;
import haywright.cattle.cold.Hide;
import haywright.cattle.herd.Group;
import haywright.cattle.need.Need;
import haywright.cattle.need.NeedByWeek;
import haywright.weather.Station;
import haywright.weather.Winter;
import java.lang.ref.Reference;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.IntStream;

/**
 * What every group of the demo needs in thirty weeks of a hundred real winters: set up once and given each winter's
 * weather, against every day worked out anew, and against every animal on its own. All three must come to the same.
 */
final class Herd {
    private static final int WEEKS = 30;
    private static final int WINTERS = 100;
    private static final int ALONE = 10;
    private static final LocalDate FROM = LocalDate.of(2026, 10, 20);

    private Herd() {}

    public static void main(String[] ignored) {
        Locale.setDefault(Locale.ROOT);
        var groups = List.copyOf(TinLantern.ranch().groups().values());
        var station = Station.fortCollins().winters();
        var winters = IntStream.range(0, WINTERS)
                .mapToObj(i -> weeks(station.get(i % station.size())))
                .toList();
        System.out.printf(
                "%d groups, %d head, %d weeks, %d winters%n",
                groups.size(), groups.stream().mapToInt(Group::head).sum(), WEEKS, WINTERS);
        byWeek(groups, winters); // warm
        System.out.printf("held: %.0f MB with every need of every winter kept open%n", held(groups, winters));
        var once = timed("set up once", () -> byWeek(groups, winters), WINTERS);
        var anew = timed("each day anew", () -> anew(groups, winters.subList(0, ALONE)), ALONE);
        var alone = timed("each animal alone", () -> alone(groups, winters.subList(0, ALONE)), ALONE);
        double first = byWeek(groups, winters.subList(0, ALONE));
        System.out.printf(
                "to set up once: each day anew %.1f, each animal alone %.0f%n",
                anew.seconds / once.seconds, alone.seconds / once.seconds);
        if (Math.abs(anew.sum - first) > 1e-9 * first || Math.abs(alone.sum - first) > 1e-9 * first) {
            System.out.printf("they differ: %s, %s, %s%n", first, anew.sum, alone.sum);
            System.exit(1);
        }
    }

    private record Took(double sum, double seconds) {}

    private interface Work {
        double run();
    }

    private static Took timed(String what, Work work, int winters) {
        double from = Cpu.seconds();
        double sum = work.run();
        double took = (Cpu.seconds() - from) / winters;
        System.out.printf("%s: %.2f ms of processor a winter%n", what, 1000 * took);
        return new Took(sum, took);
    }

    /** MB more than before, after collecting. */
    private static double held(List<Group> groups, List<List<NeedByWeek.Weather>> winters) {
        double before = used();
        var kept = groups.stream()
                .map(group -> NeedByWeek.of(group, FROM, WEEKS, RequirementSystem.USUAL))
                .map(weeks -> winters.stream().map(weeks::in).toList())
                .toList();
        double after = used();
        Reference.reachabilityFence(kept);
        return after - before;
    }

    private static double used() {
        System.gc();
        var runtime = Runtime.getRuntime();
        return (runtime.totalMemory() - runtime.freeMemory()) / 1e6;
    }

    /** Mcal and kg of the whole herd, so that no part of the need goes unread. */
    private static double read(Need need) {
        return need.nem() + need.neg() + need.crudeProtein() + need.calcium() + need.phosphorus();
    }

    private static double byWeek(List<Group> groups, List<List<NeedByWeek.Weather>> winters) {
        double sum = 0;
        for (var group : groups) {
            var weeks = NeedByWeek.of(group, FROM, WEEKS, RequirementSystem.USUAL);
            for (var winter : winters) {
                for (var need : weeks.in(winter)) {
                    sum += group.head() * read(need);
                }
            }
        }
        return sum;
    }

    private static double anew(List<Group> groups, List<List<NeedByWeek.Weather>> winters) {
        double sum = 0;
        for (var group : groups) {
            for (var winter : winters) {
                for (int week = 0; week < WEEKS; week++) {
                    var weather = winter.get(week);
                    sum += group.head()
                            * read(NeedByWeek.of(group, FROM.plusWeeks(week), 1, RequirementSystem.USUAL)
                                    .in(0, weather));
                }
            }
        }
        return sum;
    }

    private static double alone(List<Group> groups, List<List<NeedByWeek.Weather>> winters) {
        double sum = 0;
        for (var group : groups) {
            for (var winter : winters) {
                for (int week = 0; week < WEEKS; week++) {
                    var weather = winter.get(week);
                    var need = NeedByWeek.of(group, FROM.plusWeeks(week), 1, RequirementSystem.USUAL)
                            .in(0, weather);
                    for (var member : need.members()) {
                        for (int head = 0; head < member.head(); head++) {
                            sum += read(member.need()) / weather.days().size();
                        }
                    }
                }
            }
        }
        return sum;
    }

    private static List<NeedByWeek.Weather> weeks(Winter winter) {
        var moved = winter.inYear(FROM.getYear() + 1);
        var weeks = new ArrayList<NeedByWeek.Weather>();
        for (int week = 0; week < WEEKS; week++) {
            var first = FROM.plusWeeks(week);
            double before = first.minusDays(14)
                    .datesUntil(first)
                    .mapToDouble(date -> moved.day(date).mean())
                    .average()
                    .orElse(Animal.NO_ACCLIMATIZATION);
            weeks.add(new NeedByWeek.Weather(
                    before,
                    first.datesUntil(first.plusDays(7))
                            .map(date -> new Exposure(
                                    moved.day(date).mean(), 10, Coat.WINTER, Hide.DRY, true, ColdSystem.USUAL))
                            .toList()));
        }
        return weeks;
    }
}
