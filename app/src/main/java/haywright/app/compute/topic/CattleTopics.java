package haywright.app.compute.topic;

import haywright.app.compute.shape.Key;
import haywright.cattle.Animal;
import haywright.cattle.AnimalClass;
import haywright.cattle.Breed;
import haywright.cattle.Lactation;
import haywright.cattle.LiveWeight;
import haywright.cattle.Pregnancy;
import haywright.cattle.RequirementSystem;
import haywright.cattle.cold.Exposure;
import haywright.cattle.cold.Mud;
import haywright.cattle.intake.ExpectedIntake;
import haywright.cattle.intake.ForageCapacity;
import haywright.cattle.intake.IntakeTemperature;
import haywright.cattle.need.GroupRequirement;
import haywright.cattle.need.Need;
import haywright.cattle.need.Nutrient;
import haywright.cattle.need.Requirement;
import haywright.cattle.need.VitaminE;
import haywright.forage.energy.NetEnergy;
import haywright.quantity.Unit;
import haywright.workings.Caution;
import haywright.workings.Refused;
import haywright.workings.Source;
import haywright.workings.Worked;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import org.jspecify.annotations.Nullable;

/** What cattle need and what they eat. */
public final class CattleTopics {
    private static final String COW = """
            {"class":"mature_cow","body_weight_lb":1175,"weight_is":"full","condition_score":5,"days_pregnant":240,\
            "calf_birth_weight_kg":40,"previous_temperature_c":20,"system":"nrc-1996\"""";

    private CattleTopics() {}

    static final List<Topic<?, ?>> ALL = List.of(
            new Topic<>(
                    "requirement",
                    "What one animal, or one head of a group that calves over weeks, needs on a day, in mild weather or in the"
                            + " weather said.",
                    RequirementIn.class,
                    Needed.class,
                    COW + "}",
                    CattleTopics::requirement),
            new Topic<>(
                    "intake",
                    "What an animal is expected to eat of a diet when there is always some left.",
                    IntakeIn.class,
                    Eaten.class,
                    COW + ",\"tdn_pct_dm\":55}",
                    CattleTopics::intake));

    /** How a weight was taken. */
    enum WeightIs {
        FULL,
        SHRUNK
    }

    record AnimalIn(
            @Key(name = "class") AnimalClass animals,

            @Key(value = Unit.KILOGRAM, words = "Without the calf.")
            double bodyWeight,

            @Key(words = "shrunk: after a night without feed and water. Taken as full when not said.") @Nullable
            WeightIs weightIs,

            @Key(words = "1 to 9; 5 when not said.") OptionalDouble conditionScore,

            @Key(words = "Day of gestation; 0 or nothing when open.")
            OptionalDouble daysPregnant,

            @Key(value = Unit.KILOGRAM, words = "The breed's when not said.")
            OptionalDouble calfBirthWeight,

            @Key(words = "Weeks since calving; 0 or nothing when dry.")
            OptionalDouble weeksInMilk,

            @Key(value = Unit.KILOGRAM, words = "A day, at the peak; the breed's when not said.")
            OptionalDouble peakMilk,

            @Key(words = "Week of the peak; 8.5 when not said.")
            OptionalDouble peakWeek,

            @Key(value = Unit.KILOGRAM_A_DAY, words = "Wanted; 0 when not said.")
            OptionalDouble gain,

            @Key(
                    value = Unit.KILOGRAM,
                    name = "final_weight",
                    words = "Grown up, or when fed out; needed for a gain. Weighed as body_weight was.")
            OptionalDouble matureWeight,

            @Key(value = Unit.CELSIUS, words = "Mean of the month before; 20, which changes nothing, when not said.")
            OptionalDouble previousTemperature,

            @Key(words = "Empty for average beef cattle; a cross is written Angus x Hereford.") @Nullable
            String breed,

            @Key(words = "nrc-1996 when not said, the edition that more published tables can be checked against.")
            @Nullable
            RequirementSystem system) {
        AnimalIn {
            if (gain.orElse(0) > 0 && matureWeight.isEmpty()) {
                throw new Refused(
                        "matureWeight",
                        "nothing",
                        "what a gain takes hangs on what they weigh grown up or fed out",
                        "Add final_weight_kg or final_weight_lb.");
            }
        }

        Requirement requirement() {
            return requirement(List.of());
        }

        Requirement requirement(List<Exposure> weather) {
            var kind = Breed.named(breed == null ? "" : breed);
            double day = daysPregnant.orElse(0);
            double weeks = weeksInMilk.orElse(0);
            return new Requirement(
                    new Animal(
                            animals,
                            kind,
                            new LiveWeight(bodyWeight, weightIs == WeightIs.SHRUNK),
                            conditionScore.orElse(5),
                            day == 0 ? null : new Pregnancy(calfBirthWeight.orElse(kind.birthWeight()), day),
                            weeks == 0
                                    ? null
                                    : new Lactation(
                                            weeks,
                                            peakMilk.orElse(kind.peakMilk()),
                                            peakWeek.orElse(Lactation.USUAL_PEAK_WEEK)),
                            gain.orElse(0),
                            matureWeight.orElse(bodyWeight),
                            previousTemperature.orElse(Animal.NO_ACCLIMATIZATION)),
                    system == null ? RequirementSystem.NRC_1996 : system,
                    weather);
        }
    }

    record RequirementIn(
            @Key(inline = true) AnimalIn animal,
            @Key(inline = true) HerdIn herd,
            @Key(inline = true) WinterTopics.WeatherIn weather) {
        RequirementIn {
            if (herd.calving() != null && (animal.daysPregnant.orElse(0) > 0 || animal.weeksInMilk.orElse(0) > 0)) {
                throw new Refused(
                        "calving",
                        "calving weeks and a stage",
                        "the stage of each cow follows from the date and her calving week",
                        "Leave out days_pregnant and weeks_in_milk, or the calving weeks.");
            }
        }
    }

    public record Needed(
            @Key(Unit.MEGACALORIE) double nemMaintenance,
            @Key(Unit.MEGACALORIE) double nemPregnancy,
            @Key(Unit.MEGACALORIE) double nemLactation,
            @Key(Unit.MEGACALORIE) double nemCold,
            @Key(Unit.MEGACALORIE) double nem,
            @Key(Unit.MEGACALORIE) double neg,
            @Key(Unit.GRAM) double mp,
            @Key(Unit.POUND) double cp,
            @Key(Unit.GRAM) double ca,
            @Key(Unit.GRAM) double p,

            @Key(value = Unit.PERCENT, of = "dm", words = "This and what follows: of all they eat.")
            double mg,

            @Key(value = Unit.PERCENT, of = "dm") double k,
            @Key(value = Unit.PERCENT, of = "dm") double na,
            @Key(value = Unit.PERCENT, of = "dm") double s,
            @Key(value = Unit.PPM, of = "dm") double cu,
            @Key(value = Unit.PPM, of = "dm") double zn,
            @Key(value = Unit.PPM, of = "dm") double mn,
            @Key(value = Unit.PPM, of = "dm") double se,
            @Key(value = Unit.PPM, of = "dm") double fe,
            @Key(value = Unit.PPM, of = "dm") double co,

            @Key(value = Unit.PPM, of = "dm", name = "i") double iodine,

            @Key(value = Unit.IU_PER_KG, of = "dm") double vitaminA,
            @Key(value = Unit.IU_PER_KG, of = "dm") double vitaminD,

            @Key(value = Unit.IU, words = "A day; three times as much for calves just weaned or new to the place.")
            double vitaminE,

            @Key(
                    value = Unit.LITER,
                    words = "A day, what the feed brings included; as at 40 °F where no temperature is given.")
            double water,

            @Key(value = Unit.MEGACALORIE, words = "From here to nem_high: nine head in ten of a group.")
            OptionalDouble nemLow,

            @Key(Unit.MEGACALORIE) OptionalDouble nemHigh) {
        public static Needed of(Need need) {
            var band = need instanceof GroupRequirement group ? group.spread(Need::nem) : null;
            return new Needed(
                    need.nemMaintenance(),
                    need.nemPregnancy(),
                    need.nemLactation(),
                    need.nemCold(),
                    need.nem(),
                    need.neg(),
                    need.metabolizableProtein(),
                    Unit.KILOGRAM.to(Unit.POUND, need.crudeProtein()),
                    need.calcium(),
                    need.phosphorus(),
                    share(need, Nutrient.MAGNESIUM),
                    share(need, Nutrient.POTASSIUM),
                    share(need, Nutrient.SODIUM),
                    share(need, Nutrient.SULFUR),
                    share(need, Nutrient.COPPER),
                    share(need, Nutrient.ZINC),
                    share(need, Nutrient.MANGANESE),
                    share(need, Nutrient.SELENIUM),
                    share(need, Nutrient.IRON),
                    share(need, Nutrient.COBALT),
                    share(need, Nutrient.IODINE),
                    share(need, Nutrient.VITAMIN_A),
                    share(need, Nutrient.VITAMIN_D),
                    new VitaminE(need.bodyWeight(), false).units(),
                    need.water(),
                    band == null ? OptionalDouble.empty() : OptionalDouble.of(band.low()),
                    band == null ? OptionalDouble.empty() : OptionalDouble.of(band.high()));
        }

        private static double share(Need need, Nutrient nutrient) {
            return need.dietary(nutrient).share();
        }
    }

    private static Answer<Needed> requirement(RequirementIn in) {
        if (in.herd.calving() != null) {
            var need = in.herd.need(in.animal, in.weather.days());
            return new Answer<>(Needed.of(need), true, withDiet(need), mild(in));
        }
        var need = in.animal.requirement(in.weather.days());
        var cautions = new ArrayList<>(mild(in));
        cautions.addAll(unusual(need));
        return new Answer<>(Needed.of(need), true, withDiet(need), cautions);
    }

    private static List<Caution> mild(RequirementIn in) {
        return in.weather.days().isEmpty()
                ? List.of(new Caution(
                        "Figured for mild weather: no temperature was given.",
                        Source.judgment("cold that nobody said is not counted")))
                : List.of();
    }

    private static List<Worked> withDiet(Need need) {
        var workings = new ArrayList<Worked>(List.of(need));
        for (var nutrient : Nutrient.values()) {
            workings.add(need.dietary(nutrient));
        }
        workings.add(new VitaminE(need.bodyWeight(), false));
        return workings;
    }

    private static List<Caution> unusual(Requirement need) {
        return need.animal().notes().stream()
                .map(note -> new Caution(
                        note.words() + ". " + note.fix(), Source.judgment("what is usual in cattle of this class")))
                .toList();
    }

    record IntakeIn(
            @Key(inline = true) AnimalIn animal,

            @Key(value = Unit.MCAL_PER_KG, of = "dm", words = "Of the whole diet.")
            OptionalDouble nem,

            @Key(value = Unit.PERCENT, of = "dm", words = "Of the whole diet; in place of nem.")
            OptionalDouble tdn,

            @Key(value = Unit.CELSIUS, words = "Mean of the days; 15 to 25, which changes nothing, when not said.")
            OptionalDouble temperature,

            @Key(words = "In the lot: hoof_deep is 4 to 8 in, knee_deep 12 to 24 in; none when not said.") @Nullable
            Mud mud) {
        IntakeIn {
            if (nem.isPresent() == tdn.isPresent()) {
                throw new Refused(
                        "nem",
                        nem.isPresent() ? "NEm and TDN" : "nothing",
                        "the energy of the diet decides how much of it is eaten",
                        "Give one of nem_mcal_per_kg_dm and tdn_pct_dm.");
            }
        }
    }

    record Eaten(
            @Key(Unit.KILOGRAM) double dmi,

            @Key(value = Unit.PERCENT, of = "bw", words = "The most they can hold, when TDN is given.")
            OptionalDouble capacity) {}

    private static Answer<Eaten> intake(IntakeIn in) {
        var need = in.animal.requirement();
        var workings = new ArrayList<Worked>();
        double nem;
        var capacity = OptionalDouble.empty();
        if (in.tdn.isPresent()) {
            var energy = new NetEnergy(in.tdn.getAsDouble());
            var held = new ForageCapacity(in.tdn.getAsDouble(), need.milkingShare());
            workings.addAll(List.of(energy, held));
            nem = energy.nem();
            capacity = OptionalDouble.of(held.percent());
        } else {
            nem = in.nem.orElseThrow();
        }
        double factor = ExpectedIntake.NO_FACTOR;
        if (in.temperature.isPresent()) {
            var cold = new IntakeTemperature(in.temperature.getAsDouble());
            workings.add(cold);
            factor = cold.factor();
        }
        if (in.mud != null) {
            factor *= in.mud.factor();
        }
        var eaten = need.intakes(factor).apply(nem);
        workings.add(eaten);
        return new Answer<>(new Eaten(eaten.kilograms(), capacity), true, workings, unusual(need));
    }
}
