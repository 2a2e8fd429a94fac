package haywright.season.given;

import haywright.cattle.AnimalClass;
import haywright.cattle.RequirementSystem;
import haywright.cattle.need.Need;
import haywright.workings.Line;
import java.util.List;

/** A need that is asked many times: what a group averages anew at every question is worked out once here. */
public final class SteadyNeed implements Need {
    private final Need need;
    private final double bodyWeight;
    private final double shrunkWeight;
    private final double pregnantShare;
    private final double milkingShare;
    private final double milk;
    private final double maintenance;
    private final double pregnancy;
    private final double lactation;
    private final double cold;
    private final double regain;
    private final double neg;
    private final double intakeFactor;
    private final double water;
    private final double protein;

    public SteadyNeed(Need need) {
        this.need = need;
        bodyWeight = need.bodyWeight();
        shrunkWeight = need.shrunkWeight();
        pregnantShare = need.pregnantShare();
        milkingShare = need.milkingShare();
        milk = need.milk();
        maintenance = need.nemMaintenance();
        pregnancy = need.nemPregnancy();
        lactation = need.nemLactation();
        cold = need.nemCold();
        regain = need.nemRegain();
        neg = need.neg();
        intakeFactor = need.intakeFactor();
        water = need.water();
        protein = need.crudeProtein();
    }

    @Override
    public AnimalClass animals() {
        return need.animals();
    }

    @Override
    public RequirementSystem system() {
        return need.system();
    }

    @Override
    public double bodyWeight() {
        return bodyWeight;
    }

    @Override
    public double shrunkWeight() {
        return shrunkWeight;
    }

    @Override
    public double pregnantShare() {
        return pregnantShare;
    }

    @Override
    public double daysPregnant() {
        return need.daysPregnant();
    }

    @Override
    public double milkingShare() {
        return milkingShare;
    }

    @Override
    public double milk() {
        return milk;
    }

    @Override
    public double nemMaintenance() {
        return maintenance;
    }

    @Override
    public double nemPregnancy() {
        return pregnancy;
    }

    @Override
    public double nemLactation() {
        return lactation;
    }

    @Override
    public double nemCold() {
        return cold;
    }

    @Override
    public double nemRegain() {
        return regain;
    }

    @Override
    public double nemAcclimatization() {
        return need.nemAcclimatization();
    }

    @Override
    public double neg() {
        return neg;
    }

    @Override
    public double gain() {
        return need.gain();
    }

    @Override
    public double gainOn(double otherNeg) {
        return need.gainOn(otherNeg);
    }

    @Override
    public Need gaining(double other) {
        return new SteadyNeed(need.gaining(other));
    }

    @Override
    public double metabolizableProtein() {
        return need.metabolizableProtein();
    }

    @Override
    public double crudeProtein() {
        return protein;
    }

    @Override
    public double calcium() {
        return need.calcium();
    }

    @Override
    public double phosphorus() {
        return need.phosphorus();
    }

    @Override
    public double water() {
        return water;
    }

    @Override
    public double intakeFactor() {
        return intakeFactor;
    }

    @Override
    public List<Line> lines() {
        return need.lines();
    }
}
