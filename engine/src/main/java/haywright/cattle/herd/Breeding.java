package haywright.cattle.herd;

import haywright.cattle.Findings;
import haywright.cattle.Pregnancy;
import haywright.cattle.herd.Group.CalvingWeek;
import haywright.workings.Problem;
import haywright.workings.Refused;
import haywright.workings.Source;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;

/**
 * When cattle will calve, by when they were with the bull and what the pregnancy check found, until the calves say better.
 * They calve 283 days after. Where the check did not say how far along they are, six in ten of those still open settle in
 * each three weeks with the bull ({@link #SETTLING}), as many on one day as on another.
 *
 * @param from the day the bulls went in, or of artificial insemination
 * @param to the day they came out; the same day for one insemination
 * @param inCalf how many were found bred, at least 1
 * @param byCycle how many of them settled in the first 21 days, the next 21 and so on, as the check found; empty where it
 *     did not say
 */
public record Breeding(LocalDate from, LocalDate to, int inCalf, List<Integer> byCycle) {
    /** How cows settle where nobody checked. */
    public static final Source SETTLING =
            Source.practice("six in ten open cows settle in each three weeks with the bull");

    private static final double SETTLE = 0.6;
    private static final int CYCLE = 21;
    private static final int WEEK = 7;
    private static final int LONGEST = 250;

    /** @throws Refused for a season that cannot be, or counts that do not go together */
    public Breeding {
        byCycle = List.copyOf(byCycle);
        var problems = new ArrayList<Problem>();
        long days = ChronoUnit.DAYS.between(from, to) + 1;
        if (days < 1 || days > LONGEST) {
            problems.add(new Problem(
                    "to",
                    Findings.said(to),
                    "The bulls come out after they went in, " + Findings.said(from) + ", and within " + LONGEST
                            + " days",
                    "Check both years."));
        } else if (byCycle.size() > (days + CYCLE - 1) / CYCLE) {
            problems.add(new Problem(
                    "byCycle",
                    byCycle.size() + " counts",
                    days + " days with the bull have " + (days + CYCLE - 1) / CYCLE + " three-week cycles at most",
                    "Enter one count for each cycle, in order."));
        }
        if (inCalf < 1) {
            problems.add(
                    new Problem("inCalf", inCalf + " head", "bred head is 1 or more", "Enter how many were bred."));
        }
        int found = byCycle.stream().mapToInt(n -> n).sum();
        if (byCycle.stream().anyMatch(n -> n < 0) || !byCycle.isEmpty() && found != inCalf) {
            problems.add(new Problem(
                    "byCycle",
                    found + " head",
                    "These counts are 0 or more and add up to the " + inCalf + " bred head",
                    "Check them."));
        }
        Refused.unlessEmpty(problems);
    }

    /** How many calve in each week; weeks without any are left out. */
    public List<CalvingWeek> calving() {
        int days = (int) ChronoUnit.DAYS.between(from, to) + 1;
        int weeks = (days + WEEK - 1) / WEEK;
        var share = new double[weeks];
        for (int day = 0; day < days; day++) {
            share[day / WEEK] += settling(day, days);
        }
        // a week counts from its middle day: days that fill less than a week stand about theirs
        var first = from.plusDays((long) Pregnancy.GESTATION).minusDays(weeks == 1 ? (WEEK - days) / 2 : 0);
        var heads = whole(share);
        return IntStream.range(0, weeks)
                .filter(week -> heads[week] > 0)
                .mapToObj(week -> new CalvingWeek(first.plusWeeks(week), heads[week]))
                .toList();
    }

    /** Head, or where they were not counted a share of them, that settled on a day. */
    private double settling(int day, int days) {
        int cycle = day / CYCLE;
        int length = Math.min(CYCLE, days - cycle * CYCLE);
        if (byCycle.isEmpty()) {
            return Math.pow(1 - SETTLE, cycle) / CYCLE;
        }
        return cycle < byCycle.size() ? byCycle.get(cycle) / (double) length : 0;
    }

    /** Whole head that add up: what is left after rounding down goes where most was cut off. */
    private int[] whole(double[] share) {
        double all = IntStream.range(0, share.length).mapToDouble(i -> share[i]).sum();
        var heads = new int[share.length];
        int left = inCalf;
        for (int i = 0; i < share.length; i++) {
            share[i] *= inCalf / all;
            heads[i] = (int) Math.floor(share[i] + 1e-9);
            left -= heads[i];
        }
        for (; left > 0; left--) {
            int most = 0;
            for (int i = 1; i < share.length; i++) {
                if (share[i] - heads[i] > share[most] - heads[most] + 1e-9) {
                    most = i;
                }
            }
            heads[most]++;
        }
        return heads;
    }
}
