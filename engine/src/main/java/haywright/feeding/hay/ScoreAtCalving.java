package haywright.feeding.hay;

import haywright.cattle.AnimalClass;
import haywright.cattle.Reserves;
import haywright.cattle.herd.Group;
import haywright.cattle.herd.Regain;
import haywright.outlook.Yard;
import haywright.ration.Allotment;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.OptionalDouble;

/**
 * The condition score at which mature cows calve, from the energy that they are not given until then.
 * <pre>
 * lost = Σ (unmet·NEm + NEmr0 − NEmr)·days over stretches before calving        Mcal a head
 * ER(from, planned) − lost            from the score they have; reserves of {@link Reserves}, at 0.80 below that score
 * </pre>
 * NEmr0 is what it takes a day to calve at the planned score, NEmr how much of it a stretch was asked for. Cattle that are
 * given all come to the planned score: {@link Regain#planned}. Of those in milk the loss until grass.
 */
final class ScoreAtCalving {
    /** Mcal of NEm in the diet that 1 Mcal of reserve replaces: {@link Reserves}. */
    private static final double REPLACES = 0.80;

    private static final double LOWEST = 1;
    private static final double HIGHEST = 9;

    /** Mcal by which sums of days may miss. */
    private static final double HAIR = 1e-6;

    private static final double STEP = 0.05;

    private ScoreAtCalving() {}

    /** Mean over the mature cows that are due; empty where none calve before grass. */
    static OptionalDouble of(Yard yard, List<Allotment.Eater> eaters, Allotment fed) {
        double head = 0;
        double scores = 0;
        for (var group : yard.ranch().groups().values()) {
            boolean due = group.animals() == AnimalClass.MATURE_COW
                    && group.firstCalving()
                            .filter(first -> first.isAfter(yard.day()))
                            .isPresent();
            if (due) {
                head += group.head();
                scores += group.head() * score(yard, group, eaters, fed);
            }
        }
        return head > 0 ? OptionalDouble.of(scores / head) : OptionalDouble.empty();
    }

    private static double score(Yard yard, Group group, List<Allotment.Eater> eaters, Allotment fed) {
        var calving = group.firstCalving().orElseThrow();
        double regain = Regain.of(group, yard.day()).map(Regain::nem).orElse(0.0);
        double lost = lost(HayEaters.id(group, false), eaters, fed, yard.day().until(calving, ChronoUnit.DAYS), regain);
        if (lost == 0) {
            return Regain.planned(group);
        }
        double gains = regain == 0
                ? 0
                : new Reserves(atFive(yard, group), group.conditionScore(), Regain.planned(group)).energy();
        return group.conditionScore() - off(yard, group, lost - gains);
    }

    /** Points that a cow in milk loses until grass; 0 where she is given all. */
    static double lostInMilk(Yard yard, Group group, List<Allotment.Eater> eaters, Allotment fed) {
        return off(yard, group, lost(HayEaters.id(group, true), eaters, fed, Yard.LONGEST_WINTER, 0));
    }

    /** Mcal of NEm a head over so many days. @param regain Mcal a day that are wanted for it */
    private static double lost(String id, List<Allotment.Eater> eaters, Allotment fed, long days, double regain) {
        double lost = 0;
        for (var eater : eaters) {
            int from = 0;
            for (int t = 0; eater.id().equals(id) && t < eater.stretches().size() && from < days; t++) {
                var stretch = eater.stretches().get(t);
                int stage = t;
                double unmet = fed.eaten().stream()
                        .filter(e -> e.eater().equals(id) && e.stretch() == stage)
                        .mapToDouble(e -> Math.max(
                                e.unmet().getOrDefault("nem", 0.0), e.unmet().getOrDefault("nem_two_feedings", 0.0)))
                        .max()
                        .orElse(0);
                var need = stretch.question().need();
                lost += (unmet * need.nem() + Math.max(0, regain - need.nemRegain())) * stretch.days();
                from += stretch.days();
            }
        }
        return lost;
    }

    private static double off(Yard yard, Group group, double lost) {
        if (lost == 0) {
            return 0; // also of calves, which have no reserves of a grown cow
        }
        double now = group.conditionScore();
        double weight = atFive(yard, group);
        double score = now;
        while (lost < 0 && score < HIGHEST && new Reserves(weight, now, score + STEP).energy() <= -lost + HAIR) {
            score += STEP;
        }
        while (score - STEP > LOWEST && -new Reserves(weight, now, score).energy() * REPLACES < lost) {
            score -= STEP;
        }
        return now - score;
    }

    private static double atFive(Yard yard, Group group) {
        return yard.need(group).shrunkWeight() / Reserves.weightRatio(group.conditionScore());
    }
}
