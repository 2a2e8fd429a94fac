package haywright.cattle.need;

import haywright.cattle.RequirementSystem;
import haywright.cattle.herd.Group;
import haywright.quantity.Quantity;
import haywright.quantity.Unit;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.Optional;

/**
 * The gain to propose where is not entered one: heifers grow to the weight they should have when they calve, growing cattle
 * gain 1.5 lb a day, mature cattle hold. Proposed, never taken unasked.
 *
 * @param gain 0 or above, in lb a day, to the next 0.05
 * @param weight wanted by then on the scale of the group's weights, kg; 0 where none is
 * @param on the day of that weight; that of the weighing where none is
 * @see "University of Nebraska, Wintering and Backgrounding Calves, G2064: 1.5 lb a day of a 500 lb calf (read)"
 */
public record ProposedGain(Quantity gain, To to, double weight, LocalDate on) {
    /** What it is to reach. */
    public enum To {
        FIRST_CALVING,
        SECOND_CALVING,
        GROW,
        HOLD
    }

    private static final double GROWING_POUNDS = 1.5;
    private static final double STEPS_A_POUND = 20;

    /** Empty for heifers whose next calving is not known. */
    public static Optional<ProposedGain> of(Group group) {
        return switch (group.animals()) {
            case MATURE_COW, BULL -> Optional.of(hold(group));
            case GROWING ->
                Optional.of(
                        isGrown(group)
                                ? hold(group)
                                : new ProposedGain(
                                        Quantity.of(GROWING_POUNDS, Unit.POUND_A_DAY), To.GROW, 0, group.weighedOn()));
            case BRED_HEIFER ->
                HeiferTarget.of(group, RequirementSystem.USUAL)
                        .map(at -> to(group, To.FIRST_CALVING, at.target(), at.on()));
            case FIRST_CALF_HEIFER ->
                group.firstCalving()
                        .map(first -> first.isAfter(group.weighedOn()) ? first : first.plusYears(1))
                        .filter(next -> next.isAfter(group.weighedOn()))
                        .map(next -> to(
                                group,
                                To.SECOND_CALVING,
                                new HeiferTarget(group.matureWeight().base(), RequirementSystem.USUAL).secondCalving(),
                                next));
        };
    }

    private static boolean isGrown(Group group) {
        return group.weight().base() >= group.matureWeight().base();
    }

    private static ProposedGain hold(Group group) {
        return new ProposedGain(Quantity.of(0, Unit.POUND_A_DAY), To.HOLD, 0, group.weighedOn());
    }

    private static ProposedGain to(Group group, To to, double target, LocalDate on) {
        double kilograms =
                HeiferTarget.gainNeeded(group.weight().base(), target, ChronoUnit.DAYS.between(group.weighedOn(), on));
        double pounds = Math.max(
                0, Math.ceil(Unit.KILOGRAM_A_DAY.to(Unit.POUND_A_DAY, kilograms) * STEPS_A_POUND) / STEPS_A_POUND);
        return new ProposedGain(Quantity.of(pounds, Unit.POUND_A_DAY), to, target, on);
    }
}
