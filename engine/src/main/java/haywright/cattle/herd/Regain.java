package haywright.cattle.herd;

import static haywright.quantity.Unit.DAY;
import static haywright.quantity.Unit.MEGACALORIE;

import haywright.cattle.AnimalClass;
import haywright.cattle.LiveWeight;
import haywright.cattle.Reserves;
import haywright.workings.Input;
import haywright.workings.Line;
import haywright.workings.Source;
import haywright.workings.Worked;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.Optional;

/**
 * What it takes each day to bring thin cattle to the score they should calve at, spread evenly from the day they were
 * scored to the day the first of them calves.
 * <pre>
 * NEmr = ER / d      Mcal of NEm per head per day
 * </pre>
 * One Mcal of NEm over the need becomes one of reserve. Half a score a month is about the most that cattle regain on
 * winter feed; {@link #isFast} says when it is more.
 *
 * @param reserves from the score they have to the one wanted
 * @param days d, above 0
 */
public record Regain(Reserves reserves, double days) implements Worked {
    /** The last days before calving in which cattle may not lose condition by plan. */
    public static final int NO_LOSS_DAYS = 60;

    /** Score wanted at calving: 5 of cows, 6 of heifers (University of Nebraska). */
    private static final double COWS = 5;

    private static final double HEIFERS = 6;

    private static final double SCORES_A_MONTH = 0.5;
    private static final double DAYS_A_MONTH = 30;
    private static final double TENTHS = 10;
    private static final Source SPREAD = Source.judgment("the same each day until the first of them calves");

    /**
     * Of a group, on a day, to {@link #planned}; empty where they have that, the first has calved, or nothing is to calve.
     */
    public static Optional<Regain> of(Group group, LocalDate date) {
        double wanted = planned(group);
        if (!(wanted > group.conditionScore())) {
            return Optional.empty();
        }
        return group.firstCalving()
                .filter(first -> date.isBefore(first) && group.weighedOn().isBefore(first))
                .map(first -> new Regain(
                        new Reserves(
                                new LiveWeight(group.matureWeight().base(), group.shrunk()).shrunk(),
                                group.conditionScore(),
                                wanted),
                        ChronoUnit.DAYS.between(group.weighedOn(), first)));
    }

    /**
     * The score at calving that their need is figured for: the one that somebody entered; else, for cattle that are to
     * calve, the usual one, as far as half a score a month brings them from the day they were scored, in tenths. Their own
     * score where nothing is to be regained.
     */
    public static double planned(Group group) {
        double score = group.conditionScore();
        var wanted = group.wantedScore();
        if (wanted != null) {
            return Math.max(score, wanted);
        }
        double reach = group.firstCalving()
                .filter(first -> group.animals().calves())
                .map(first -> ChronoUnit.DAYS.between(group.weighedOn(), first) * SCORES_A_MONTH / DAYS_A_MONTH)
                .orElse(0.0);
        return Math.max(score, Math.min(usual(group), Math.floor(TENTHS * (score + Math.max(0, reach))) / TENTHS));
    }

    /** The usual score at calving of such cattle. */
    public static double usual(Group group) {
        return group.animals() == AnimalClass.MATURE_COW ? COWS : HEIFERS;
    }

    /** Mcal per head per day. */
    public double nem() {
        return reserves.energy() / days;
    }

    /** More than half a score a month: more feed than most hay can be, or a start too late. */
    public boolean isFast() {
        return (reserves.to() - reserves.from()) / days * DAYS_A_MONTH > SCORES_A_MONTH;
    }

    @Override
    public List<Line> lines() {
        return List.of(Line.of(
                "NEmr",
                "ER / d",
                nem(),
                MEGACALORIE,
                SPREAD,
                Input.computed("ER", reserves.energy(), MEGACALORIE, reserves),
                Input.typed("d", days, DAY)));
    }
}
