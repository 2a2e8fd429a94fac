package haywright.ranch;

import static haywright.quantity.Unit.KILOGRAM_A_DAY;
import static haywright.quantity.Unit.MCAL_PER_KG;
import static haywright.quantity.Unit.MEGACALORIE;
import static haywright.quantity.Unit.NONE;

import haywright.cattle.Group;
import haywright.cattle.GroupRequirement;
import haywright.cattle.LiveWeight;
import haywright.cattle.NeedByWeek;
import haywright.cattle.Reserves;
import haywright.quantity.Unit;
import haywright.weather.KeptWinter;
import haywright.workings.Input;
import haywright.workings.Line;
import haywright.workings.Origin;
import haywright.workings.Refused;
import haywright.workings.Source;
import haywright.workings.Worked;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.ToDoubleFunction;

/**
 * Last winter: what was fed, beside what the equations say it took, a head and day.
 * <pre>
 * F = fed / head / days                                        kg as fed
 * E = (M + C + R)/NEm + G/NEg                                  kg of dry matter eaten
 * N = E·(1 + x)/DM                                             kg as fed; x is left lying for each kg eaten
 * r = F / N
 * h: ((M + h·C + R)/NEm + G/NEg)·(1 + h·x)/DM = F              what cold and waste have to be multiplied by
 * </pre>
 * M is NEm on a day without cold stress, C what cold stress adds, G is NEg, each the mean over today's herd in the weeks of
 * last winter. R is what the cows put on their backs, or took off them (0.80 of it), between the two scores.
 *
 * @param fed F
 * @param mild M, Mcal
 * @param cold C, Mcal
 * @param gain G, Mcal
 * @param reserves R, Mcal; 0 where a score is not known
 * @param hay that all is measured by
 * @param dryMatter DM, share
 * @param left x
 * @param from first day fed
 * @param to last day fed
 * @param ownWinter whether the station's record has that very winter; else the usual cold stands
 */
public record BackCast(
        double fed,
        double mild,
        double cold,
        double gain,
        double reserves,
        HayMeasure hay,
        double dryMatter,
        double left,
        LocalDate from,
        LocalDate to,
        boolean ownWinter)
        implements Worked {
    private static final double REPLACED = 0.80;
    private static final int DAYS_A_WEEK = 7;
    private static final int HALVINGS = 50;
    private static final Source HERD = Source.judgement("today's herd, in the weeks of last winter");

    /**
     * Empty where the ranch has not said head, days and tons, or the day of grass, or has no cattle.
     *
     * @throws Refused where a group cannot be
     */
    public static Optional<BackCast> of(Ranch asIs, LocalDate today) {
        var ranch = asIs.with(asIs.settings().withHerdFactor(null));
        var last = ranch.lastWinter();
        var turnout = ranch.settings().turnout();
        if (last.head() == null
                || last.days() == null
                || last.fed() == null
                || turnout == null
                || ranch.groups().isEmpty()) {
            return Optional.empty();
        }
        int weeks = Math.max(1, Math.round(last.days() / (float) DAYS_A_WEEK));
        var from = turnout.minusWeeks(weeks);
        var to = turnout;
        int years = 0;
        while (to.minusYears(years).isAfter(today)) {
            years++;
        }
        var own = winter(ranch, to.minusYears(years).getYear());
        double mild = 0;
        double cold = 0;
        double gain = 0;
        double cows = 0;
        for (var group : ranch.groups().values()) {
            var needs = needs(ranch, group, from, weeks, own);
            double share = group.head() / (double) ranch.head();
            mild += share * mean(needs, need -> need.nem() - need.nemCold());
            cold += share * mean(needs, GroupRequirement::nemCold);
            gain += share * mean(needs, GroupRequirement::neg);
            cows += group.animals().calves() ? share * reserves(group, last) : 0;
        }
        var yard = new Yard(ranch, today);
        var hay = HayMeasure.of(yard).get(0);
        double loss = ranch.settings().hayLossPercent() / 100;
        return Optional.of(new BackCast(
                last.fed().base() / last.head() / last.days(),
                mild,
                cold,
                gain,
                cows / last.days(),
                hay,
                1 / (hay.putOut() * (1 - loss)),
                loss / (1 - loss),
                to.minusYears(years).minusDays(last.days()),
                to.minusYears(years),
                own.isPresent()));
    }

    private static Optional<KeptWinter> winter(Ranch ranch, int spring) {
        var kept = ranch.winters();
        return kept == null || kept.drawn()
                ? Optional.empty()
                : kept.winters().stream().filter(w -> w.year() == spring).findFirst();
    }

    private static List<GroupRequirement> needs(
            Ranch ranch, Group group, LocalDate from, int weeks, Optional<KeptWinter> own) {
        var needs = NeedByWeek.of(group, from, weeks, ranch.settings().system());
        var weather = ranch.settings().weather();
        if (weather == null) {
            return needs.mild();
        }
        return needs.in(needs.begins().stream()
                .map(week ->
                        own.isPresent() && KeptWinter.covers(week) && KeptWinter.covers(week.plusDays(DAYS_A_WEEK - 1))
                                ? weather.weekOf(own.get()
                                        .weeks(List.of(week), weather.normals())
                                        .get(0))
                                : weather.usualWeek(week))
                .toList());
    }

    private static double mean(List<GroupRequirement> needs, ToDoubleFunction<GroupRequirement> of) {
        return needs.stream().mapToDouble(of).average().orElseThrow();
    }

    /** Mcal of NEm that a winter's change of condition cost, or spared. */
    private static double reserves(Group group, LastWinter last) {
        if (last.scoreBefore() == null || last.scoreAfter() == null) {
            return 0;
        }
        var atFive = new LiveWeight(group.matureWeight().base(), group.shrunk()).shrunk();
        double energy = new Reserves(atFive, last.scoreBefore(), last.scoreAfter()).energy();
        return energy < 0 ? REPLACED * energy : energy;
    }

    /** E, kg of dry matter eaten a head and day, with the cold multiplied. */
    private double eaten(double factor) {
        return (mild + factor * cold + reserves) / hay.nem() + (gain > 0 ? gain / hay.neg() : 0);
    }

    private double needed(double factor) {
        return eaten(factor) * (1 + factor * left) / dryMatter;
    }

    /** N, kg as fed a head and day. */
    public double needed() {
        return needed(1);
    }

    /** r: above 1 where more was fed than the equations say. */
    public double ratio() {
        return fed / needed();
    }

    /** h; empty where no cold and waste from nothing to three times can explain what was fed. */
    public OptionalDouble factor() {
        if (!(needed(0) < fed && needed(Settings.MOST_FACTOR) > fed)) {
            return OptionalDouble.empty();
        }
        double low = 0;
        double high = Settings.MOST_FACTOR;
        for (int i = 0; i < HALVINGS; i++) {
            double middle = (low + high) / 2;
            if (needed(middle) < fed) {
                low = middle;
            } else {
                high = middle;
            }
        }
        return OptionalDouble.of((low + high) / 2);
    }

    /** Days that were fed. */
    public long days() {
        return ChronoUnit.DAYS.between(from, to);
    }

    private static Input of(String where, String symbol, double value, Unit unit) {
        return new Input(symbol, value, unit, new Origin.Typed(where));
    }

    @Override
    public List<Line> lines() {
        var nem = of("the hay that all is measured by", "NEm", hay.nem(), MCAL_PER_KG);
        var m = of("mean of today’s herd in those weeks", "M", mild, MEGACALORIE);
        var c = of("mean of today’s herd in those weeks", "C", cold, MEGACALORIE);
        var r = of("mean of today’s herd in those weeks", "R", reserves, MEGACALORIE);
        var g = of("mean of today’s herd in those weeks", "G", gain, MEGACALORIE);
        var eaten = gain > 0
                ? Line.of(
                        "E",
                        "(M + C + R)/NEm + G/NEg",
                        eaten(1),
                        KILOGRAM_A_DAY,
                        HERD,
                        m,
                        c,
                        r,
                        nem,
                        g,
                        of("the hay that all is measured by", "NEg", hay.neg(), MCAL_PER_KG))
                : Line.of("E", "(M + C + R)/NEm", eaten(1), KILOGRAM_A_DAY, HERD, m, c, r, nem);
        return List.of(
                eaten,
                Line.of(
                        "N",
                        "E·(1 + x)/DM",
                        needed(),
                        KILOGRAM_A_DAY,
                        Source.ARITHMETIC,
                        of("by the share lost in feeding", "x", left, NONE),
                        of("the hay that all is measured by", "DM", dryMatter, NONE)),
                Line.of(
                        "r",
                        "F/N",
                        ratio(),
                        NONE,
                        Source.ARITHMETIC,
                        of("tons over head and days", "F", fed, KILOGRAM_A_DAY)));
    }
}
