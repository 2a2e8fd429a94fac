package haywright.outlook;

import haywright.cattle.herd.Group;
import haywright.cattle.need.GroupRequirement;
import haywright.cattle.need.NeedByWeek;
import haywright.ranch.Ranch;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;

/**
 * What one head of a group needs in each week of a stretch: in the cold usual then, and in every winter that the ranch
 * keeps. A week's need is the mean of its days.
 *
 * @param begins the first day of each week
 * @param mild on mild days
 * @param usual in the usual cold; on mild days where no weather is said
 * @param winters NEm of each week in every winter, Mcal a day, the mildest first; empty for weeks that no winter covers
 */
public record WeeksOfNeed(
        List<LocalDate> begins, List<GroupRequirement> mild, List<GroupRequirement> usual, List<List<Double>> winters) {
    /** Under so many winters nothing is said of one in ten. */
    private static final int FEWEST = 10;

    private static final int ONE_IN = 10;

    /**
     * @param from the first day of the first week
     * @param weeks how many, at least 1
     * @throws haywright.workings.Refused when the group cannot be
     */
    public static WeeksOfNeed of(Ranch ranch, Group group, LocalDate from, int weeks) {
        var needs = NeedByWeek.of(group, from, weeks, ranch.settings().system());
        var mild = needs.mild();
        if (ranch.settings().weather() == null) {
            return new WeeksOfNeed(needs.begins(), mild, mild, none(weeks));
        }
        var weather = new HerdWeather(ranch.settings());
        var usual = needs.in(needs.begins().stream().map(weather::usual).toList());
        var known = ranch.knownWinters();
        if (known.size() < FEWEST) {
            return new WeeksOfNeed(needs.begins(), mild, usual, none(weeks));
        }
        var covered = IntStream.range(0, weeks)
                .filter(week -> HerdWeather.covers(needs.begins().get(week)))
                .boxed()
                .toList();
        var begins = covered.stream().map(needs.begins()::get).toList();
        var winters = new ArrayList<List<Double>>();
        none(weeks).forEach(empty -> winters.add(new ArrayList<>()));
        for (var winter : known) {
            var of = weather.in(winter, begins);
            for (int i = 0; i < covered.size(); i++) {
                int week = covered.get(i);
                winters.get(week).add(needs.in(week, of.get(i)).nem());
            }
        }
        return new WeeksOfNeed(
                needs.begins(),
                mild,
                usual,
                winters.stream().map(w -> w.stream().sorted().toList()).toList());
    }

    private static List<List<Double>> none(int weeks) {
        return IntStream.range(0, weeks).mapToObj(week -> List.<Double>of()).toList();
    }

    /** NEm that one winter in ten stays under, Mcal a day; empty where nothing is known of it. */
    public Optional<Double> mild(int week) {
        var all = winters.get(week);
        return all.isEmpty() ? Optional.empty() : Optional.of(all.get(all.size() / ONE_IN));
    }

    /** NEm that one winter in ten is over. */
    public Optional<Double> hard(int week) {
        var all = winters.get(week);
        return all.isEmpty() ? Optional.empty() : Optional.of(all.get(all.size() - 1 - all.size() / ONE_IN));
    }
}
