package haywright.season.play;

import haywright.season.given.Body;
import haywright.season.given.Season;
import java.util.ArrayList;
import java.util.List;
import java.util.SortedSet;
import java.util.TreeSet;

/**
 * Stretches of weeks that a plan looks at: this week alone, then growing ones, none of which goes over a date that counts:
 * calving, and the day said for grass. The weeks in which grass may come late are one stretch.
 *
 * @param from the first week of each, and last the week after all
 */
public record Blocks(List<Integer> from) {
    /** Weeks of one after the other; the last stands for all that follow. */
    public static final List<Integer> GROWING = List.of(1, 1, 2, 4, 6);

    /** Six or so from December to May. */
    public static final List<Integer> FEW = List.of(1, 3, 6, 8);

    public Blocks {
        from = List.copyOf(from);
    }

    public static Blocks of(Season season, int week) {
        return of(season, week, GROWING);
    }

    /** @param growing weeks of one after the other */
    public static Blocks of(Season season, int week, List<Integer> growing) {
        var anchors = anchors(season);
        var from = new ArrayList<Integer>();
        int at = week;
        while (at < season.weeks()) {
            from.add(at);
            int next = at + growing.get(Math.min(from.size() - 1, growing.size() - 1));
            int before = at;
            var anchor = anchors.tailSet(before + 1).first();
            // less than half a stretch before an anchor is taken into this one
            at = next + (next - before) / 2 >= anchor ? anchor : next;
            if (from.size() == 1 && next < anchor) {
                at = next;
            }
        }
        if (at < season.allWeeks()) {
            from.add(Math.max(at, week));
        }
        from.add(season.allWeeks());
        return new Blocks(from);
    }

    /** Each week by itself. */
    public static Blocks weekly(Season season) {
        var from = new ArrayList<Integer>();
        for (int week = 0; week <= season.allWeeks(); week++) {
            from.add(week);
        }
        return new Blocks(from);
    }

    private static SortedSet<Integer> anchors(Season season) {
        var anchors = new TreeSet<Integer>();
        for (var eater : season.eaters()) {
            eater.body().ifPresent(body -> {
                if (body.calvingDay() > 0) {
                    anchors.add(calvingWeek(body));
                }
            });
        }
        anchors.removeIf(week -> week >= season.weeks());
        anchors.add(season.weeks());
        return anchors;
    }

    /** The week that begins on the day of the first calving, or next before it. */
    public static int calvingWeek(Body body) {
        return body.calvingDay() / Season.DAYS_A_WEEK;
    }

    public int count() {
        return from.size() - 1;
    }

    public int from(int block) {
        return from.get(block);
    }

    public int to(int block) {
        return from.get(block + 1);
    }

    /** The week whose stage a block is fed by. */
    public int middle(int block) {
        return (from(block) + to(block) - 1) / 2;
    }
}
