package haywright.cattle.herd;

import haywright.cattle.AnimalClass;
import haywright.cattle.Findings;
import haywright.cattle.Limits;
import haywright.quantity.Kind;
import haywright.quantity.Quantity;
import haywright.quantity.Unit;
import haywright.workings.Names;
import haywright.workings.Refused;
import java.time.LocalDate;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/**
 * A group of cattle that is fed together.
 *
 * @param head how many; at least 1
 * @param weight mean live weight on {@code weighedOn}, without the unborn calf
 * @param shrunk whether {@code weight} was taken after shrink
 * @param matureWeight what they weigh grown up at condition 5; for bulls and steers the final weight
 * @param conditionScore mean, 1 to 9
 * @param breed a row of {@code breeds.csv}, which decides breed effect, birth weight and milk; empty for average cattle
 * @param calving how many are due or calved in the week that begins on each date; empty where none are
 * @param calfBirthWeight mean; null takes the breed's
 * @param peakMilk a day at peak; null takes the breed's, scaled for first-calf heifers
 * @param weaning the day the calves leave; null when there are none
 * @param gain wanted gain a day; zero for mature cattle that hold
 * @param turnout the day this group goes to turnout, if planned
 * @param weights how far weights lie apart; null where was not entered
 * @param scores how far condition scores lie apart; null where was not entered
 * @param wantedScore the score they are to calve at, which is in their need until then; the score they have or less holds them;
 *     null leaves it to {@link Regain#planned}
 * @param past what became of it since it was entered: split or joined, oldest first
 * @param gainTaken whether the gain was left empty and the one proposed was taken: it stays said as assumed until somebody
 *     enters one
 */
public record Group(
        UUID id,
        String name,
        AnimalClass animals,
        int head,
        Quantity weight,
        boolean shrunk,
        LocalDate weighedOn,
        Quantity matureWeight,
        double conditionScore,
        String breed,
        List<CalvingWeek> calving,
        @Nullable Quantity calfBirthWeight,
        @Nullable Quantity peakMilk,
        @Nullable LocalDate weaning,
        Quantity gain,
        @Nullable LocalDate turnout,
        @Nullable Weights weights,
        @Nullable Scores scores,
        @Nullable Double wantedScore,
        List<Past> past,
        boolean gainTaken) {
    /** With a gain that somebody entered. */
    public Group(
            UUID id,
            String name,
            AnimalClass animals,
            int head,
            Quantity weight,
            boolean shrunk,
            LocalDate weighedOn,
            Quantity matureWeight,
            double conditionScore,
            String breed,
            List<CalvingWeek> calving,
            @Nullable Quantity calfBirthWeight,
            @Nullable Quantity peakMilk,
            @Nullable LocalDate weaning,
            Quantity gain,
            @Nullable LocalDate turnout,
            @Nullable Weights weights,
            @Nullable Scores scores,
            @Nullable Double wantedScore,
            List<Past> past) {
        this(
                id,
                name,
                animals,
                head,
                weight,
                shrunk,
                weighedOn,
                matureWeight,
                conditionScore,
                breed,
                calving,
                calfBirthWeight,
                peakMilk,
                weaning,
                gain,
                turnout,
                weights,
                scores,
                wantedScore,
                past,
                false);
    }

    public Group {
        Names.fits("name", name);
        calving = List.copyOf(calving);
        past = List.copyOf(past);
    }

    /**
     * One thing that became of a group.
     *
     * @param words a sentence without a full stop: {@code 60 head split off as Thin cows}
     */
    public record Past(LocalDate on, String words) {}

    /** The first day that any of them is to calve, or calved; empty where none does. */
    public Optional<LocalDate> firstCalving() {
        return calving.stream().map(CalvingWeek::begins).min(Comparator.naturalOrder());
    }

    /** With another mean score and another spread of scores. */
    public Group scored(double mean, @Nullable Scores spread) {
        return with(mean, gain, spread, wantedScore);
    }

    /** With a score to calve at, or without. */
    public Group wanting(@Nullable Double score) {
        return with(conditionScore, gain, scores, score);
    }

    /** To calve at the score that they have. */
    public Group holding() {
        return wanting(conditionScore);
    }

    /** With another gain wanted. */
    public Group gaining(Quantity wanted) {
        return with(conditionScore, wanted, scores, wantedScore);
    }

    /** With a gain that was proposed and taken, since nobody entered one. */
    public Group taking(Quantity proposed) {
        return with(
                head,
                calving,
                conditionScore,
                weaning,
                proposed,
                turnout,
                scores,
                wantedScore,
                past,
                proposed.value() > 0);
    }

    /** With another number of cattle, due so. */
    public Group counting(int cattle, List<CalvingWeek> due) {
        return with(cattle, due, conditionScore, weaning, gain, turnout, scores, wantedScore, past, gainTaken);
    }

    /** With other days, and with nothing of what became of it before. */
    public Group dated(List<CalvingWeek> due, @Nullable LocalDate weaned, @Nullable LocalDate toGrass) {
        return with(head, due, conditionScore, weaned, gain, toGrass, scores, wantedScore, List.of(), gainTaken);
    }

    private Group with(double mean, Quantity otherGain, @Nullable Scores spread, @Nullable Double wanted) {
        return with(head, calving, mean, weaning, otherGain, turnout, spread, wanted, past, gainTaken);
    }

    private Group with(
            int cattle,
            List<CalvingWeek> due,
            double mean,
            @Nullable LocalDate weaned,
            Quantity otherGain,
            @Nullable LocalDate toGrass,
            @Nullable Scores spread,
            @Nullable Double wanted,
            List<Past> before,
            boolean taken) {
        return new Group(
                id,
                name,
                animals,
                cattle,
                weight,
                shrunk,
                weighedOn,
                matureWeight,
                mean,
                breed,
                due,
                calfBirthWeight,
                peakMilk,
                weaned,
                otherGain,
                toGrass,
                weights,
                spread,
                wanted,
                before,
                taken);
    }

    /** @param begins the first day of the week */
    public record CalvingWeek(LocalDate begins, int head) {}

    /** Nine head in ten weigh from the one to the other. */
    public record Weights(Quantity lightest, Quantity heaviest) {
        /** @throws Refused where they are no weights, or the other way round */
        public Weights {
            Refused.unlessOfKind(Kind.MASS, "lightest", lightest);
            Refused.unlessOfKind(Kind.MASS, "heaviest", heaviest);
            if (!(lightest.base() < heaviest.base())) {
                throw new Refused(
                        "heaviest",
                        heaviest.asTyped(),
                        "the heavy ones weigh more than the light ones, " + lightest.asTyped(),
                        "Check whether the two are swapped.");
            }
        }
    }

    /** Nine head in ten score from the one to the other. */
    public record Scores(double thinnest, double fattest) {
        /** @throws Refused outside 1 to 9, or the other way round */
        public Scores {
            Findings.of(
                            Limits.of("score_of_most").check("thinnest", thinnest, Unit.NONE),
                            Limits.of("score_of_most").check("fattest", fattest, Unit.NONE))
                    .refuse();
            if (thinnest > fattest) {
                throw new Refused(
                        "fattest",
                        Limits.said(fattest),
                        "the fat ones score more than the thin ones, " + Limits.said(thinnest),
                        "Check whether the two are swapped.");
            }
        }

        /** As a sample of scores has it, to half scores. */
        public static Scores of(double mean, double deviation) {
            double most = Variety.NINE_IN_TEN * deviation;
            return new Scores(
                    Math.max(1, Math.rint(2 * (mean - most)) / 2), Math.min(9, Math.rint(2 * (mean + most)) / 2));
        }
    }
}
