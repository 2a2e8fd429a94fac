package haywright.outlook;

import static haywright.quantity.Unit.KILOGRAM_A_DAY;
import static haywright.quantity.Unit.MCAL_PER_KG;
import static haywright.quantity.Unit.MEGACALORIE;
import static haywright.quantity.Unit.NONE;

import haywright.cattle.LiveWeight;
import haywright.cattle.Reserves;
import haywright.cattle.herd.Group;
import haywright.cattle.intake.CowIntake1996;
import haywright.cattle.need.GroupRequirement;
import haywright.cattle.need.NeedByWeek;
import haywright.quantity.Unit;
import haywright.ranch.LastWinter;
import haywright.ranch.Ranch;
import haywright.ranch.Settings;
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
 * Last winter: what was fed, beside what cattle that eat to appetite would have taken, per head per day.
 * <pre>
 * F  = fed / head / days                                 kg as fed
 * K  = (M + C + R)/NEm + G/NEg                           kg of dry matter that the need takes
 * E1 = max(0.90·I, K),  E2 = max(1.15·I, K)              kg of dry matter eaten, the least and the most
 * N  = E·(1 + x)/DM                                      kg as fed; x is left lying for each kg eaten
 * r  = F/N1 below N1, F/N2 above N2, else 1
 * h: N with h·C in place of C, and h·x within {@link Settings#hayLossPercent()} in place of x, is F
 * </pre>
 * M is NEm on a day without cold stress, C what that winter's cold stress adds, G is NEg, I the expected free-choice
 * intake of the hay, each the mean over today's herd in the weeks of last winter. R is what the cows put on their backs,
 * or took off them (0.80 of it), between the two scores. Cattle in front of hay eat to appetite whatever they need: what
 * they eat above K becomes condition and is no waste.
 *
 * @param fed F
 * @param mild M, Mcal
 * @param cold C, Mcal
 * @param gain G, Mcal
 * @param reserves R, Mcal; 0 where a score is not known
 * @param appetite I, kg of dry matter
 * @param hay of this ranch, each lot by its tons
 * @param dryMatter DM, share
 * @param settings that say the share lost in feeding, without a factor
 * @param scoreTakes Mcal that one score of condition is for a cow of this herd; 0 where there are no cows
 * @param from first day fed
 * @param to last day fed
 * @param ownWinter whether that very winter is known; else the usual cold stands
 */
public record BackCast(
        double fed,
        double mild,
        double cold,
        double gain,
        double reserves,
        double appetite,
        HayMeasure hay,
        double dryMatter,
        Settings settings,
        double scoreTakes,
        LocalDate from,
        LocalDate to,
        boolean ownWinter)
        implements Worked {
    /** Of the expected intake: what cattle in front of hay eat at least. */
    public static final double LEAST_EATEN = 0.90;

    /** And at most: by so much the equation was found low, {@link CowIntake1996#ATE_MORE}. */
    public static final double MOST_EATEN = 1.15;

    private static final double REPLACED = 0.80;
    private static final double AGREES = 0.03;
    private static final int DAYS_A_WEEK = 7;
    private static final int HALVINGS = 50;
    private static final double MIDDLE_SCORE = 5;
    private static final Source APPETITE =
            Source.judgment("cattle on free-choice hay eat at least nine tenths of what is expected");
    private static final Source HERD = Source.judgment("today's herd, in the weeks of last winter");

    /**
     * Empty where the ranch has not said head, days and tons, the turnout date, or where it lies, or has no cattle.
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
                || ranch.settings().weather() == null
                || ranch.groups().isEmpty()) {
            return Optional.empty();
        }
        int weeks = Math.max(1, Math.round(last.days() / (float) DAYS_A_WEEK));
        // today's herd calves in the winter that comes, so its weeks are those before the next turnout date
        var to = next(turnout, today);
        var ended = to.minusYears(1);
        var from = to.minusWeeks(weeks);
        var own = winter(ranch, ended.getYear());
        double mild = 0;
        double cold = 0;
        double gain = 0;
        double cows = 0;
        double appetite = 0;
        double scoreTakes = 0;
        int calving = 0;
        var hay = HayMeasure.mixed(new Yard(ranch, today));
        for (var group : ranch.groups().values()) {
            // what this winter is to put on them was not eaten last winter; its two scores say what was
            var needs = needs(ranch, group.holding(), from, weeks, own);
            double share = group.head() / (double) ranch.head();
            mild += share * mean(needs, need -> need.nem() - need.nemCold());
            cold += share * mean(needs, GroupRequirement::nemCold);
            gain += share * mean(needs, GroupRequirement::neg);
            appetite += share * mean(needs, need -> need.intake(hay.nem()).kilograms());
            if (group.animals().calves()) {
                cows += share * reserves(group, last);
                scoreTakes += group.head() * new Reserves(atFive(group), MIDDLE_SCORE, MIDDLE_SCORE + 1).energy();
                calving += group.head();
            }
        }
        double loss = ranch.settings().hayLossPercent() / 100;
        return Optional.of(new BackCast(
                last.fed().base() / last.head() / last.days(),
                mild,
                cold,
                gain,
                cows / last.days(),
                appetite,
                hay,
                1 / (hay.putOut() * (1 - loss)),
                ranch.settings(),
                calving == 0 ? 0 : scoreTakes / calving,
                ended.minusDays(last.days()),
                ended,
                own.isPresent()));
    }

    /** The first day after today that the grass of this or another year came on. */
    private static LocalDate next(LocalDate turnout, LocalDate today) {
        var next = turnout.plusYears(Math.max(0, today.getYear() - turnout.getYear()));
        while (!next.isAfter(today)) {
            next = next.plusYears(1);
        }
        while (next.minusYears(1).isAfter(today)) {
            next = next.minusYears(1);
        }
        return next;
    }

    private static Optional<KeptWinter> winter(Ranch ranch, int spring) {
        var kept = ranch.winters();
        return kept != null && kept.drawn()
                ? Optional.empty()
                : ranch.knownWinters().stream().filter(w -> w.year() == spring).findFirst();
    }

    private static List<GroupRequirement> needs(
            Ranch ranch, Group group, LocalDate from, int weeks, Optional<KeptWinter> own) {
        var needs = NeedByWeek.of(group, from, weeks, ranch.settings().system());
        var weather = new HerdWeather(ranch.settings());
        return needs.in(needs.begins().stream()
                .map(week -> own.filter(winter -> HerdWeather.covers(week))
                        .map(winter -> weather.in(winter, List.of(week)).get(0))
                        .orElseGet(() -> weather.usual(week)))
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
        double energy = new Reserves(atFive(group), last.scoreBefore(), last.scoreAfter()).energy();
        return energy < 0 ? REPLACED * energy : energy;
    }

    private static double atFive(Group group) {
        return new LiveWeight(group.matureWeight().base(), group.shrunk()).shrunk();
    }

    /** K, kg of dry matter that the need takes per head per day, with the cold multiplied. */
    private double taken(double factor) {
        return (mild + factor * cold + reserves) / hay.nem() + (gain > 0 ? gain / hay.neg() : 0);
    }

    /** x: left lying for each kg eaten, with waste counted so many times. */
    public double left(double factor) {
        double loss = settings.withHerdFactor(factor).hayLossPercent() / 100;
        return loss / (1 - loss);
    }

    /** x: left lying for each kg eaten. */
    public double left() {
        return left(1);
    }

    /** What they took at the end of their appetite that lies nearer to what was fed, counted so many times, kg as fed. */
    public double counted(double factor) {
        return needed(factor, fed > needed() ? MOST_EATEN : LEAST_EATEN);
    }

    private double needed(double factor, double share) {
        return Math.max(share * appetite, taken(factor)) * (1 + left(factor)) / dryMatter;
    }

    /** K put out, kg as fed per head per day: what the need alone took. */
    public double neededForNeed() {
        return needed(1, 0);
    }

    /** N1, kg as fed per head per day. */
    public double needed() {
        return needed(1, LEAST_EATEN);
    }

    /** N2, kg as fed per head per day. */
    public double mostNeeded() {
        return needed(1, MOST_EATEN);
    }

    /** r: above 1 where more was fed than they eat, below where less. */
    public double ratio() {
        return Math.max(fed / mostNeeded(), Math.min(fed / needed(), 1));
    }

    /** Whether the two agree, as far as tons and weights are known. */
    public boolean agrees() {
        return Math.abs(ratio() - 1) < AGREES;
    }

    /** Scores that the surplus of what they ate at least would have put on a cow, beyond those that were scored. */
    public double scoresOfSurplus() {
        double surplus = Math.max(0, LEAST_EATEN * appetite - taken(1)) * hay.nem();
        return scoreTakes == 0 ? 0 : surplus * days() / scoreTakes;
    }

    /** h; empty where the two agree, or no cold from nothing to three times and no waste that is known explain it. */
    public OptionalDouble factor() {
        double share = fed > needed() ? MOST_EATEN : LEAST_EATEN;
        if (agrees() || !(needed(0, share) < fed && needed(Settings.MOST_FACTOR, share) > fed)) {
            return OptionalDouble.empty();
        }
        double low = 0;
        double high = Settings.MOST_FACTOR;
        for (int i = 0; i < HALVINGS; i++) {
            double middle = (low + high) / 2;
            if (needed(middle, share) < fed) {
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
        var nem = of("the hays of this ranch, by their tons", "NEm", hay.nem(), MCAL_PER_KG);
        var m = of("average of today’s herd in those weeks", "M", mild, MEGACALORIE);
        var c = of("average of today’s herd in those weeks", "C", cold, MEGACALORIE);
        var r = of("average of today’s herd in those weeks", "R", reserves, MEGACALORIE);
        var g = of("average of today’s herd in those weeks", "G", gain, MEGACALORIE);
        var taken = gain > 0
                ? Line.of(
                        "K",
                        "(M + C + R)/NEm + G/NEg",
                        taken(1),
                        KILOGRAM_A_DAY,
                        HERD,
                        m,
                        c,
                        r,
                        nem,
                        g,
                        of("the hays of this ranch, by their tons", "NEg", hay.neg(), MCAL_PER_KG))
                : Line.of("K", "(M + C + R)/NEm", taken(1), KILOGRAM_A_DAY, HERD, m, c, r, nem);
        var i = of("average of today’s herd in those weeks, of that hay", "I", appetite, KILOGRAM_A_DAY);
        var x = of("by the share lost in feeding", "x", left(), NONE);
        var dm = of("the hays of this ranch, by their tons", "DM", dryMatter, NONE);
        return List.of(
                taken,
                Line.of("E1", "max(0.90·I, K)", eaten(LEAST_EATEN), KILOGRAM_A_DAY, APPETITE, i),
                Line.of("E2", "max(1.15·I, K)", eaten(MOST_EATEN), KILOGRAM_A_DAY, CowIntake1996.ATE_MORE, i),
                Line.of("N1", "E1·(1 + x)/DM", needed(), KILOGRAM_A_DAY, Source.ARITHMETIC, x, dm),
                Line.of("N2", "E2·(1 + x)/DM", mostNeeded(), KILOGRAM_A_DAY, Source.ARITHMETIC, x, dm),
                Line.of(
                        "r",
                        "max(F/N2, min(F/N1, 1))",
                        ratio(),
                        NONE,
                        Source.ARITHMETIC,
                        of("tons over head and days", "F", fed, KILOGRAM_A_DAY)));
    }

    private double eaten(double share) {
        return Math.max(share * appetite, taken(1));
    }
}
