package haywright.app.compute.topic;

import haywright.app.compute.shape.Key;
import haywright.cattle.Animal;
import haywright.cattle.RequirementSystem;
import haywright.cattle.cold.Exposure;
import haywright.cattle.herd.Group;
import haywright.cattle.need.GroupRequirement;
import haywright.cattle.need.Requirement;
import haywright.quantity.Quantity;
import haywright.quantity.Unit;
import haywright.workings.Problem;
import haywright.workings.Refused;
import java.time.LocalDate;
import java.util.List;
import java.util.OptionalDouble;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/** A group in place of one animal: keys among those of the animal that stands for it. */
record HerdIn(
        @Key(words = "The day of the need; asked with calving, for a group.") @Nullable
        LocalDate date,

        @Key(words = "How many are due, or calved, in the week that begins on each date: makes it a group.") @Nullable
        List<CalvingIn> calving,

        @Key(words = "Head without a calf in them, beside those of the weeks; 0 when not said.") @Nullable
        Integer openHead,

        @Key(words = "The day the calves leave; 30 weeks of milk when not said.") @Nullable
        LocalDate weaning) {
    record CalvingIn(LocalDate begins, int head) {}

    HerdIn {
        if (calving == null && (date != null || openHead != null || weaning != null)) {
            throw new Refused(
                    "calving",
                    "nothing",
                    "a date, open head and weaning are those of a group, and a group has calving weeks",
                    "Add calving, or say days_pregnant or weeks_in_milk of one animal.");
        }
        if (calving != null && date == null) {
            throw new Refused(
                    "date", "nothing", "the stage of each cow follows from the date", "Add it, like 2027-02-15.");
        }
    }

    /** @throws Refused when the group cannot be */
    GroupRequirement need(CattleTopics.AnimalIn one, List<Exposure> weather) {
        if (calving == null || date == null) {
            throw new IllegalStateException("no group is given");
        }
        int head = calving.stream().mapToInt(CalvingIn::head).sum() + (openHead == null ? 0 : openHead);
        var group = new Group(
                new UUID(0, 0),
                "",
                one.animals(),
                head,
                Quantity.of(one.bodyWeight(), Unit.KILOGRAM),
                one.weightIs() == CattleTopics.WeightIs.SHRUNK,
                date,
                Quantity.of(one.matureWeight().orElse(one.bodyWeight()), Unit.KILOGRAM),
                one.conditionScore().orElse(5),
                one.breed() == null ? "" : one.breed(),
                calving.stream()
                        .map(week -> new Group.CalvingWeek(week.begins, week.head))
                        .toList(),
                quantity(one.calfBirthWeight(), Unit.KILOGRAM),
                quantity(one.peakMilk(), Unit.KILOGRAM_A_DAY),
                weaning,
                Quantity.of(one.gain().orElse(0), Unit.KILOGRAM_A_DAY),
                null,
                null,
                null,
                one.conditionScore().orElse(5), // as of one animal, whose need has nothing to regain
                List.of());
        try {
            return Requirement.of(
                    group,
                    date,
                    one.system() == null ? RequirementSystem.USUAL : one.system(),
                    one.previousTemperature().orElse(Animal.NO_ACCLIMATIZATION),
                    weather);
        } catch (Refused refused) {
            throw new Refused(refused.problems().stream()
                    .map(p -> p.field().equals("weight") ? new Problem("bodyWeight", p.value(), p.rule(), p.fix()) : p)
                    .toList());
        }
    }

    private static @Nullable Quantity quantity(OptionalDouble value, Unit unit) {
        return value.isEmpty() ? null : Quantity.of(value.getAsDouble(), unit);
    }
}
