package haywright.cattle.herd;

import static haywright.quantity.Unit.DAY;
import static haywright.quantity.Unit.NONE;
import static haywright.quantity.Unit.PERCENT;

import haywright.cattle.Animal;
import haywright.cattle.AnimalClass;
import haywright.cattle.Breed;
import haywright.cattle.Findings;
import haywright.cattle.Limits;
import haywright.cattle.Reserves;
import haywright.quantity.Quantity;
import haywright.workings.Note;
import haywright.workings.Note.Level;
import haywright.workings.Refused;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** Whether what is said of a group can be, and what in it is unusual. Levels and limits: {@code herd_limits.csv}. */
public final class HerdCheck {
    private HerdCheck() {}

    /** Most serious or not, in the order of the group's fields; empty when all is well. */
    public static List<Note> of(Group group, LocalDate date) {
        return findings(group, date).notes();
    }

    /** Without a calf for longer, a cow is open: judgment. */
    private static final int LONG_AGO = 400;

    public static Findings findings(Group group, LocalDate date) {
        return Findings.of(
                Limits.of("head").check("head", group.head(), NONE),
                weights(group),
                weightsOfMost(group),
                Limits.of("condition_score").check("conditionScore", group.conditionScore(), NONE),
                condition(group, date),
                wantedScore(group),
                scoresOfMost(group),
                breed(group),
                calving(group, date),
                typed("calf_birth_weight", "calfBirthWeight", group.calfBirthWeight()),
                typed("peak_milk", "peakMilk", group.peakMilk()),
                weaning(group),
                typed("gain", "gain", group.gain()));
    }

    private static Findings typed(String rule, String field, @Nullable Quantity quantity) {
        return quantity == null ? Findings.NONE : Limits.of(rule).check(field, quantity.value(), quantity.unit());
    }

    private static Findings weights(Group group) {
        var weight = group.weight();
        double mature = group.matureWeight().in(weight.unit());
        var own = group.animals().checkWeight("weight", weight.value(), mature, weight.unit());
        if (group.animals() == AnimalClass.GROWING) {
            return Findings.of(own, stillGrowing(group, mature));
        }
        double ratio = Math.max(weight.value() / mature, mature / weight.value());
        var mixed = Limits.of("weight_ratio").check("matureWeight", ratio, NONE);
        if (group.animals() != AnimalClass.MATURE_COW) {
            return Findings.of(own, mixed, stillGrowing(group, mature));
        }
        double score = Math.max(1, Math.min(9, group.conditionScore()));
        double asScored = 100 * weight.value() / mature / Reserves.weightRatio(score);
        return Findings.of(
                own,
                typed("weight_mature", "matureWeight", group.matureWeight()),
                mixed,
                Limits.of("weight_for_score").check("weight", asScored, PERCENT));
    }

    /** The mean lies between, and so far to either side of it weights have to be possible. */
    private static Findings weightsOfMost(Group group) {
        var weights = group.weights();
        var weight = group.weight();
        if (weights == null || !(weight.base() > 0)) {
            return Findings.NONE;
        }
        var unit = weight.unit();
        if (!(weights.lightest().base() < weight.base()
                && weight.base() < weights.heaviest().base())) {
            return Findings.one(
                    Level.REFUSE,
                    "weights_of_most",
                    "lightest",
                    weights.lightest().asTyped() + " to " + weights.heaviest().asTyped(),
                    "The average, " + weight.asTyped() + ", is between the light ones and the heavy ones",
                    "Check the average and the two.");
        }
        double half = unit.fromBase(Variety.half(weights));
        double mature = group.matureWeight().in(unit) / weight.value();
        double light = weight.value() - half;
        double heavy = weight.value() + half;
        return Findings.of(
                        group.animals().checkWeight("lightest", light, light * mature, unit),
                        group.animals().checkWeight("heaviest", heavy, heavy * mature, unit))
                .refusals();
    }

    private static Findings wantedScore(Group group) {
        var wanted = group.wantedScore();
        return wanted == null ? Findings.NONE : Limits.of("condition_score").check("wantedScore", wanted, NONE);
    }

    private static Findings scoresOfMost(Group group) {
        var scores = group.scores();
        double mean = group.conditionScore();
        return scores == null || scores.thinnest() <= mean && mean <= scores.fattest()
                ? Findings.NONE
                : Findings.one(
                        Level.REFUSE,
                        "scores_of_most",
                        "thinnest",
                        Limits.said(scores.thinnest()) + " to " + Limits.said(scores.fattest()),
                        "The average, " + Limits.said(mean) + ", is between the thin ones and the fat ones",
                        "Check the average and the two.");
    }

    private static Findings stillGrowing(Group group, double mature) {
        var weight = group.weight();
        return Animal.growing(
                weight.value(), mature, weight.unit(), group.gain().value());
    }

    private static Findings condition(Group group, LocalDate date) {
        boolean ahead = group.calving().stream().anyMatch(w -> w.begins().isAfter(date));
        return ahead
                ? Limits.of(group.animals().firstCalf() ? "calving_score_heifers" : "calving_score_cows")
                        .check("conditionScore", group.conditionScore(), NONE)
                : Findings.NONE;
    }

    private static Findings breed(Group group) {
        try {
            Breed.named(group.breed());
            return Findings.NONE;
        } catch (Refused refused) {
            var problem = refused.problems().get(0);
            return Findings.one(Level.REFUSE, "breed", "breed", problem.value(), problem.rule(), problem.fix());
        }
    }

    private static Findings calving(Group group, LocalDate date) {
        var weeks = group.calving();
        if (!group.animals().calves()) {
            return weeks.isEmpty()
                    ? Findings.NONE
                    : Findings.one(
                            Level.REFUSE,
                            "calving_class",
                            "calving",
                            Findings.said(weeks.get(0).begins()),
                            "In " + group.animals().words() + " nothing calves",
                            "If they are bred heifers, change the class; otherwise clear the calving dates");
        }
        if (weeks.isEmpty()) {
            return Findings.one(
                    Level.SAY,
                    "calving_empty",
                    "calving",
                    "no calving dates",
                    "They are fed as open",
                    "If they are bred, enter how many are due each week");
        }
        int due = weeks.stream().mapToInt(Group.CalvingWeek::head).sum();
        var first = first(group);
        var last = last(group);
        return Findings.of(
                heads(group, due),
                Limits.of("calving_spread").check("calving", ChronoUnit.DAYS.between(first, last) + 7.0, DAY),
                Limits.of("due_ahead").check("calving", ChronoUnit.DAYS.between(date, last), DAY),
                longAgo(last, date));
    }

    /** A year that was mistyped shows in a calving that no cow in milk can have behind her. */
    private static Findings longAgo(LocalDate last, LocalDate date) {
        return last.plusDays(LONG_AGO).isBefore(date)
                ? Findings.one(
                        Level.ASK,
                        "calved_long_ago",
                        "calving",
                        Findings.said(last),
                        "The last calving week began more than " + LONG_AGO + " days ago, on " + Findings.said(last),
                        "Check the year")
                : Findings.NONE;
    }

    private static Findings heads(Group group, int due) {
        if (group.calving().stream().anyMatch(w -> w.head() < 0)) {
            return Findings.one(
                    Level.REFUSE,
                    "calving_head",
                    "calving",
                    "fewer than 0 head in a week",
                    "a week has 0 head or more",
                    "Enter how many are due that week");
        }
        if (due > group.head()) {
            return Findings.one(
                    Level.REFUSE,
                    "calving_head",
                    "calving",
                    due + " head",
                    "The calving weeks cannot hold more than the " + group.head() + " head of the group",
                    "Check for a week counted twice, or a larger group");
        }
        return due == group.head()
                ? Findings.NONE
                : Findings.one(
                        Level.SAY,
                        "calving_open",
                        "calving",
                        due + " of " + group.head() + " head",
                        "The other " + (group.head() - due) + " are in no calving week and are fed as open",
                        "If they are bred, add them to their week");
    }

    private static Findings weaning(Group group) {
        var weaning = group.weaning();
        if (weaning == null || group.calving().isEmpty()) {
            return Findings.NONE;
        }
        if (!weaning.isAfter(last(group))) {
            return Findings.one(
                    Level.REFUSE,
                    "weaning_before_birth",
                    "weaning",
                    Findings.said(weaning),
                    "Calves are weaned after they are born, and the last calving week begins "
                            + Findings.said(last(group)),
                    "Check the year It is the weaning of the calves of these calving dates");
        }
        double meanBirth = group.calving().stream()
                        .mapToDouble(w -> (double) w.head() * w.begins().toEpochDay())
                        .sum()
                / Math.max(
                        1,
                        group.calving().stream()
                                .mapToInt(Group.CalvingWeek::head)
                                .sum());
        return Limits.of("weaning_age").check("weaning", Math.rint(weaning.toEpochDay() - meanBirth), DAY);
    }

    private static LocalDate first(Group group) {
        return group.calving().stream()
                .map(Group.CalvingWeek::begins)
                .min(LocalDate::compareTo)
                .orElseThrow();
    }

    private static LocalDate last(Group group) {
        return group.calving().stream()
                .map(Group.CalvingWeek::begins)
                .max(LocalDate::compareTo)
                .orElseThrow();
    }
}
