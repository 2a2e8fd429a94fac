package haywright.cattle.need;

import static haywright.quantity.Unit.KILOGRAM;
import static haywright.quantity.Unit.NONE;

import haywright.cattle.Limits;
import haywright.cattle.RequirementSystem;
import haywright.cattle.herd.Group;
import haywright.workings.Input;
import haywright.workings.Line;
import haywright.workings.Refused;
import haywright.workings.Source;
import haywright.workings.Worked;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/**
 * What a replacement heifer should weigh on the way to her mature weight.
 * <pre>
 * B = 0.60·MW          at breeding, kg
 * C = f·MW             at first calving, kg; f is 0.80 in 1996, and 0.85 in the tables of 2018 on the edition of 2016
 * D = 0.92·MW          at second calving, kg
 * </pre>
 * Breeding is for cattle of British and European breeds: 0.65 for zebu, 0.55 for dairy.
 *
 * @param matureWeight MW, kg
 */
public record HeiferTarget(double matureWeight, RequirementSystem system) implements Worked {
    private static final Source BREEDING = Source.memory("NRC 1996/2000, replacement heifers");
    private static final Source OLDER = Source.memory("NRC 1996/2000: 0.80");
    private static final Source NEWER = Source.read("Arkansas Cooperative Extension MP391, 2018: 0.85");
    private static final Source SECOND = Source.read("Ohio State; Iowa State: 0.92");

    public HeiferTarget {
        Limits.of("weight_mature").check("matureWeight", matureWeight, KILOGRAM).refuse();
    }

    /** kg. */
    public double breeding() {
        return 0.60 * matureWeight;
    }

    /** kg. */
    public double firstCalving() {
        return share() * matureWeight;
    }

    /** kg. */
    public double secondCalving() {
        return 0.92 * matureWeight;
    }

    /**
     * kg a day.
     *
     * @param days between the two weights, above 0; not counting both ends
     */
    public static double gainNeeded(double from, double to, double days) {
        if (!(days > 0)) {
            throw new Refused(
                    "days",
                    Limits.said(days) + " days",
                    "A gain needs at least a day between the two weights",
                    "Check whether the dates are swapped.");
        }
        return (to - from) / days;
    }

    /**
     * What bred heifers weigh when they begin to calve, and should.
     *
     * @param weight kg, at the gain that is wanted now, on the scale of the group's weights and without the calf
     * @param target kg on the same scale
     * @param gain kg a day that would bring them there; negative where they are there already
     */
    public record AtCalving(LocalDate on, double weight, double target, double gain) {}

    /** Empty where none of the group is to calve after it was weighed. */
    public static Optional<AtCalving> of(Group heifers, RequirementSystem system) {
        return heifers.calving().stream()
                .map(Group.CalvingWeek::begins)
                .min(Comparator.naturalOrder())
                .filter(first -> first.isAfter(heifers.weighedOn()))
                .map(first -> {
                    double target = new HeiferTarget(heifers.matureWeight().base(), system).firstCalving();
                    return new AtCalving(
                            first,
                            GroupRequirement.weight(heifers, first),
                            target,
                            gainNeeded(
                                    heifers.weight().base(),
                                    target,
                                    ChronoUnit.DAYS.between(heifers.weighedOn(), first)));
                });
    }

    private double share() {
        return system == RequirementSystem.NASEM_2016 ? 0.85 : 0.80;
    }

    @Override
    public List<Line> lines() {
        var mature = Input.typed("MW", matureWeight, KILOGRAM);
        return List.of(
                Line.of("B", "0.60·MW", breeding(), KILOGRAM, BREEDING, mature),
                Line.of(
                        "C",
                        "f·MW",
                        firstCalving(),
                        KILOGRAM,
                        BREEDING,
                        mature,
                        Input.published("f", share(), NONE, system == RequirementSystem.NASEM_2016 ? NEWER : OLDER)),
                Line.of("D", "0.92·MW", secondCalving(), KILOGRAM, SECOND, mature));
    }
}
