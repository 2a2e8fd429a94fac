package haywright.cattle.herd;

import haywright.cattle.LiveWeight;
import haywright.cattle.herd.Group.CalvingWeek;
import haywright.cattle.herd.Group.Past;
import haywright.quantity.Quantity;
import haywright.workings.Refused;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.TreeMap;
import java.util.UUID;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/** One group made two, or two made one, each remembering it. */
public final class Regrouping {
    private Regrouping() {}

    /** Who goes when a group is split. */
    public enum Who {
        /** Of every calving week the same share. */
        ALIKE,
        /** Those due or calved first; those in no calving week last. */
        EARLY,
        /** Those due or calved last; those in no calving week after them. */
        LATE
    }

    /** @param goes has the new name */
    public record Split(Group stays, Group goes) {}

    /**
     * Weight, condition and all else stand for both as they stood; only head and calving weeks are divided.
     *
     * @param head that go, at least 1 and fewer than there are
     */
    public static Split split(Group group, UUID id, String name, int head, Who who, LocalDate on) {
        if (head < 1 || head >= group.head()) {
            throw new Refused(
                    "head",
                    head + " head",
                    "some go and some stay of the %d".formatted(group.head()),
                    "Enter how many go. To move all, rename the group.");
        }
        var go = new TreeMap<LocalDate, Integer>();
        switch (who) {
            case ALIKE -> alike(group, head, go);
            case EARLY -> inTurn(weeks(group, Comparator.naturalOrder()), head, go);
            case LATE -> inTurn(weeks(group, Comparator.reverseOrder()), head, go);
        }
        var goes = group.calving().stream()
                .filter(week -> go.getOrDefault(week.begins(), 0) > 0)
                .map(week -> new CalvingWeek(week.begins(), go.getOrDefault(week.begins(), 0)))
                .toList();
        var stays = group.calving().stream()
                .map(week -> new CalvingWeek(week.begins(), week.head() - go.getOrDefault(week.begins(), 0)))
                .filter(week -> week.head() > 0)
                .toList();
        return new Split(
                with(
                        group,
                        group.id(),
                        group.name(),
                        group.head() - head,
                        stays,
                        group.past(),
                        new Past(on, "%d head split off as %s".formatted(head, name))),
                with(
                        group,
                        id,
                        name,
                        head,
                        goes,
                        group.past(),
                        new Past(on, "%d head split from %s".formatted(head, group.name()))));
    }

    private static List<CalvingWeek> weeks(Group group, Comparator<LocalDate> order) {
        return group.calving().stream()
                .sorted(Comparator.comparing(CalvingWeek::begins, order))
                .toList();
    }

    private static void inTurn(List<CalvingWeek> weeks, int head, TreeMap<LocalDate, Integer> go) {
        int left = head;
        for (var week : weeks) {
            int taken = Math.min(left, week.head());
            go.put(week.begins(), taken);
            left -= taken;
        }
    }

    /** Rounded down, and what is left by the largest remainders, those in no calving week among them. */
    private static void alike(Group group, int head, TreeMap<LocalDate, Integer> go) {
        double share = head / (double) group.head();
        int due = group.calving().stream().mapToInt(CalvingWeek::head).sum();
        int open = (int) Math.floor(share * (group.head() - due));
        int left = head - open;
        for (var week : group.calving()) {
            int down = (int) Math.floor(share * week.head());
            go.put(week.begins(), down);
            left -= down;
        }
        var byRemainder = group.calving().stream()
                .sorted(Comparator.comparingDouble(
                        (CalvingWeek week) -> Math.floor(share * week.head()) - share * week.head()))
                .toList();
        for (var week : byRemainder) {
            if (left > 0 && go.getOrDefault(week.begins(), 0) < week.head()) {
                go.merge(week.begins(), 1, Integer::sum);
                left--;
            }
        }
    }

    /**
     * The first with the second in it. Weights, condition and gain are means by head, weights brought to the later of the
     * two weighings and to the scale of the first; calving weeks are added, and spreads go from the lightest and thinnest to
     * the heaviest and fattest of both. What can be only one or the other (breed,
     * weaning, turnout, a birth weight or milk that only one has) stands as the larger group has it.
     *
     * @throws Refused where they are not of one class
     */
    public static Group join(Group one, Group other, LocalDate on) {
        if (one.animals() != other.animals()) {
            throw new Refused(
                    "other",
                    other.name(),
                    "%s and %s need different feed, and cannot be one group"
                            .formatted(one.animals().words(), other.animals().words()),
                    "Add one again in the other class first.");
        }
        var larger = other.head() > one.head() ? other : one;
        var later = one.weighedOn().isAfter(other.weighedOn()) ? one.weighedOn() : other.weighedOn();
        var weeks = new TreeMap<LocalDate, Integer>();
        Stream.of(one, other)
                .forEach(group ->
                        group.calving().forEach(week -> weeks.merge(week.begins(), week.head(), Integer::sum)));
        var past = new ArrayList<>(one.past());
        past.addAll(other.past());
        past.sort(Comparator.comparing(Past::on));
        past.add(new Past(on, "%d head of %s joined %d head".formatted(other.head(), other.name(), one.head())));
        return new Group(
                one.id(),
                one.name(),
                one.animals(),
                one.head() + other.head(),
                mean(one, weight(one, one, later), other, weight(other, one, later)),
                one.shrunk(),
                later,
                mean(one, one.matureWeight(), other, scaled(other, one, other.matureWeight())),
                (one.head() * one.conditionScore() + other.head() * other.conditionScore())
                        / (one.head() + other.head()),
                larger.breed(),
                weeks.entrySet().stream()
                        .map(week -> new CalvingWeek(week.getKey(), week.getValue()))
                        .toList(),
                maybe(one, one.calfBirthWeight(), other, other.calfBirthWeight(), larger.calfBirthWeight()),
                maybe(one, one.peakMilk(), other, other.peakMilk(), larger.peakMilk()),
                larger.weaning(),
                mean(one, one.gain(), other, other.gain()),
                larger.turnout(),
                weights(one, other),
                scores(one.scores(), other.scores()),
                larger.wantedScore(),
                past,
                one.gainTaken() || other.gainTaken());
    }

    private static Group.@Nullable Weights weights(Group one, Group other) {
        var first = one.weights();
        var second = other.weights();
        if (first == null || second == null) {
            return null;
        }
        var lightest = scaled(other, one, second.lightest());
        var heaviest = scaled(other, one, second.heaviest());
        return new Group.Weights(
                lightest.base() < first.lightest().base() ? lightest : first.lightest(),
                heaviest.base() > first.heaviest().base() ? heaviest : first.heaviest());
    }

    private static Group.@Nullable Scores scores(Group.@Nullable Scores first, Group.@Nullable Scores second) {
        return first == null || second == null
                ? null
                : new Group.Scores(
                        Math.min(first.thinnest(), second.thinnest()), Math.max(first.fattest(), second.fattest()));
    }

    /** On a day, on the other's scale. */
    private static Quantity weight(Group group, Group scale, LocalDate on) {
        double gained = group.gain().base() * ChronoUnit.DAYS.between(group.weighedOn(), on);
        var weight = scaled(group, scale, group.weight());
        return Quantity.of(weight.value() + weight.unit().fromBase(gained), weight.unit());
    }

    private static Quantity scaled(Group group, Group scale, Quantity weight) {
        double ratio =
                group.shrunk() == scale.shrunk() ? 1 : scale.shrunk() ? LiveWeight.SHRINK : 1 / LiveWeight.SHRINK;
        return Quantity.of(weight.value() * ratio, weight.unit());
    }

    /** By head, in the unit of the first. */
    private static Quantity mean(Group one, Quantity first, Group other, Quantity second) {
        double mean =
                (one.head() * first.value() + other.head() * second.in(first.unit())) / (one.head() + other.head());
        return Quantity.of(Math.round(100 * mean) / 100.0, first.unit());
    }

    private static @Nullable Quantity maybe(
            Group one, @Nullable Quantity first, Group other, @Nullable Quantity second, @Nullable Quantity larger) {
        return first == null || second == null ? larger : mean(one, first, other, second);
    }

    private static Group with(
            Group group, UUID id, String name, int head, List<CalvingWeek> calving, List<Past> before, Past now) {
        return new Group(
                id,
                name,
                group.animals(),
                head,
                group.weight(),
                group.shrunk(),
                group.weighedOn(),
                group.matureWeight(),
                group.conditionScore(),
                group.breed(),
                calving,
                group.calfBirthWeight(),
                group.peakMilk(),
                group.weaning(),
                group.gain(),
                group.turnout(),
                group.weights(),
                group.scores(),
                group.wantedScore(),
                Stream.concat(before.stream(), Stream.of(now)).toList(),
                group.gainTaken());
    }
}
