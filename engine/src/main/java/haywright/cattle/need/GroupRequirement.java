package haywright.cattle.need;

import static haywright.quantity.Unit.GRAM_A_DAY;
import static haywright.quantity.Unit.HEAD;
import static haywright.quantity.Unit.KILOGRAM_A_DAY;
import static haywright.quantity.Unit.LITER;
import static haywright.quantity.Unit.MEGACALORIE;

import haywright.cattle.Animal;
import haywright.cattle.AnimalClass;
import haywright.cattle.Breed;
import haywright.cattle.Lactation;
import haywright.cattle.LiveWeight;
import haywright.cattle.Maintenance;
import haywright.cattle.Pregnancy;
import haywright.cattle.RequirementSystem;
import haywright.cattle.cold.Exposure;
import haywright.cattle.herd.Group;
import haywright.cattle.herd.Regain;
import haywright.cattle.herd.Variety;
import haywright.quantity.Unit;
import haywright.workings.Input;
import haywright.workings.Line;
import haywright.workings.Source;
import haywright.workings.Worked;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;
import java.util.function.Function;
import java.util.function.ToDoubleFunction;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/**
 * What one head of a group needs on a day: the mean over the calving weeks, by head, and never that of one average cow.
 * The members keep the spread.
 *
 * <p>A calving week counts from its middle day. Before it a cow is pregnant, if not more than 283 days away; after it she
 * is in milk until weaning, or for 30 weeks where no weaning is planned. Head that stand in no calving week are open.
 * Cattle that gain weigh more each day from the weighing on, up to their mature weight.
 *
 * <p>Heifers with their first calf give less milk and lighter calves than mature cows, and so, less so, do those with their
 * second: of a first-calf heifer that is the calf that came after she was weighed.
 *
 * <p>The mean is taken at the mean weight and score of each week: need bends so little with weight that weights a tenth
 * apart would lower it by a thousandth. The {@link #spread} has them.
 */
public final class GroupRequirement implements Need {
    private final AnimalClass animals;
    private final RequirementSystem system;
    private final List<Member> members;
    private final Variety variety;
    /** A program asks the same means thousands of times. */
    private final Map<String, Double> means = new ConcurrentHashMap<>();

    /** A calving week counts from this many days after it begins. */
    public static final int MIDDLE_OF_WEEK = 3;

    private static final int DAYS_A_WEEK = 7;

    /**
     * What two-year-old dams, three-year-old ones and mature cows have of the breed's calf weight and milk: calves 8 and 5 %
     * lighter, 0.74 (Arkansas MP391 of 2018, read) and 0.88 of the milk (NRC 1996/2000, from memory).
     */
    private enum Dam {
        FIRST_CALF(0.92, 0.74),
        SECOND_CALF(0.95, 0.88),
        GROWN(1, 1);

        private final double birth;
        private final double milk;

        Dam(double birth, double milk) {
            this.birth = birth;
            this.milk = milk;
        }

        /** First-calf heifers have calved by then: a calf that came after they were weighed is their second. */
        static Dam of(Group group, Group.CalvingWeek week) {
            return switch (group.animals()) {
                case BRED_HEIFER -> FIRST_CALF;
                case FIRST_CALF_HEIFER -> week.begins().isAfter(group.weighedOn()) ? SECOND_CALF : FIRST_CALF;
                default -> GROWN;
            };
        }
    }

    GroupRequirement(AnimalClass animals, RequirementSystem system, List<Member> members, Variety variety) {
        this.animals = animals;
        this.system = system;
        this.members = List.copyOf(members);
        this.variety = variety;
    }

    @Override
    public AnimalClass animals() {
        return animals;
    }

    @Override
    public RequirementSystem system() {
        return system;
    }

    public List<Member> members() {
        return members;
    }

    public Variety variety() {
        return variety;
    }

    @Override
    public boolean equals(@Nullable Object other) {
        return other instanceof GroupRequirement same
                && animals == same.animals
                && system == same.system
                && members.equals(same.members)
                && variety.equals(same.variety);
    }

    @Override
    public int hashCode() {
        return Objects.hash(animals, system, members, variety);
    }

    /** Of those that are in milk, or of the others; empty where there are none. */
    public Optional<GroupRequirement> inMilk(boolean milking) {
        var some = members.stream()
                .filter(member -> member.need().milkingShare() > 0 == milking)
                .toList();
        return some.isEmpty() ? Optional.empty() : Optional.of(new GroupRequirement(animals, system, some, variety));
    }

    /** @param head how many of the group are alike in this */
    public record Member(int head, Requirement need) {}

    /** Of a group that is known to pass {@link haywright.cattle.herd.HerdCheck}. */
    static GroupRequirement checked(
            Group group, LocalDate date, RequirementSystem system, double previousTemperature, List<Exposure> weather) {
        var breed = Breed.named(group.breed());
        var members = new ArrayList<Member>();
        var regain = Regain.of(group, date).orElse(null);
        int open = group.head();
        for (var week : group.calving()) {
            if (week.head() > 0) {
                open -= week.head();
                var animal = animal(group, breed, date, week, previousTemperature);
                members.add(new Member(week.head(), new Requirement(animal, system, weather, regain)));
            }
        }
        if (open > 0) {
            var animal = animal(group, breed, date, null, previousTemperature);
            members.add(new Member(open, new Requirement(animal, system, weather, regain)));
        }
        return new GroupRequirement(group.animals(), system, members, Variety.of(group));
    }

    private static Animal animal(
            Group group, Breed breed, LocalDate date, Group.@Nullable CalvingWeek week, double previousTemperature) {
        Pregnancy pregnancy = null;
        Lactation lactation = null;
        var animals = group.animals();
        if (week != null) {
            var dam = Dam.of(group, week);
            long until = ChronoUnit.DAYS.between(date, week.begins().plusDays(MIDDLE_OF_WEEK));
            double weeks = -until / (double) DAYS_A_WEEK;
            var weaning = group.weaning();
            if (until >= 0 && until < Pregnancy.GESTATION) {
                var typed = group.calfBirthWeight();
                double birth = typed != null ? typed.base() : breed.birthWeight() * dam.birth;
                pregnancy = new Pregnancy(birth, Pregnancy.GESTATION - until);
            } else if (until < 0 && (weaning == null ? weeks <= Lactation.CURVE_ENDS : date.isBefore(weaning))) {
                var typed = group.peakMilk();
                double peak = typed != null ? typed.base() : breed.peakMilk() * dam.milk;
                lactation = new Lactation(weeks, peak, Lactation.USUAL_PEAK_WEEK);
                animals = animals == AnimalClass.BRED_HEIFER ? AnimalClass.FIRST_CALF_HEIFER : animals;
            }
        }
        return new Animal(
                animals,
                breed,
                new LiveWeight(weight(group, date), group.shrunk()),
                group.conditionScore(),
                pregnancy,
                lactation,
                group.gain().base(),
                group.matureWeight().base(),
                previousTemperature);
    }

    /** On the day, kg. */
    static double weight(Group group, LocalDate date) {
        double weighed = group.weight().base();
        double gained = group.gain().base() * ChronoUnit.DAYS.between(group.weighedOn(), date);
        return Math.min(weighed + gained, Math.max(weighed, group.matureWeight().base()));
    }

    /**
     * How far the animals lie apart in some part of their need: over calving dates, weights, condition and, where the
     * weather varies, days.
     *
     * @param of for example {@code Need::nem}
     */
    public Spread spread(ToDoubleFunction<Need> of) {
        var values = new ArrayList<Spread.Weighted>();
        for (var member : members) {
            var alike = variety.of(member.need.animal());
            var days = member.need.weather();
            double head = member.head / (double) (alike.size() * Math.max(1, days.size()));
            for (var animal : alike) {
                if (days.isEmpty()) {
                    values.add(new Spread.Weighted(
                            of.applyAsDouble(new Requirement(animal, system, List.of(), member.need.regain())), head));
                }
                for (var day : days) {
                    values.add(new Spread.Weighted(
                            of.applyAsDouble(new Requirement(animal, system, List.of(day), member.need.regain())),
                            head));
                }
            }
        }
        return Spread.of(values.toArray(Spread.Weighted[]::new), mean(of));
    }

    private double mean(ToDoubleFunction<Need> of) {
        return members.stream()
                        .mapToDouble(m -> m.head * of.applyAsDouble(m.need))
                        .sum()
                / members.stream().mapToInt(Member::head).sum();
    }

    private double kept(String name, ToDoubleFunction<Need> of) {
        return means.computeIfAbsent(name, any -> mean(of));
    }

    @Override
    public double bodyWeight() {
        return kept("bodyWeight", Need::bodyWeight);
    }

    @Override
    public double shrunkWeight() {
        return kept("shrunkWeight", Need::shrunkWeight);
    }

    @Override
    public double pregnantShare() {
        return kept("pregnantShare", Need::pregnantShare);
    }

    @Override
    public double daysPregnant() {
        double share = pregnantShare();
        return share == 0 ? 0 : kept("daysPregnant", Need::daysPregnant) / share;
    }

    @Override
    public double milkingShare() {
        return kept("milkingShare", Need::milkingShare);
    }

    @Override
    public double milk() {
        return kept("milk", Need::milk);
    }

    @Override
    public double nemMaintenance() {
        return kept("nemMaintenance", Need::nemMaintenance);
    }

    @Override
    public double nemPregnancy() {
        return kept("nemPregnancy", Need::nemPregnancy);
    }

    @Override
    public double nemLactation() {
        return kept("nemLactation", Need::nemLactation);
    }

    @Override
    public double nemCold() {
        return kept("nemCold", Need::nemCold);
    }

    @Override
    public double nemRegain() {
        return kept("nemRegain", Need::nemRegain);
    }

    @Override
    public double nemAcclimatization() {
        return kept("nemAcclimatization", Need::nemAcclimatization);
    }

    @Override
    public double intakeFactor() {
        return kept("intakeFactor", Need::intakeFactor);
    }

    @Override
    public double neg() {
        return kept("neg", Need::neg);
    }

    @Override
    public double gain() {
        return kept("gain", Need::gain);
    }

    /** Every member's energy for gain changes in the same proportion. */
    @Override
    public double gainOn(double otherNeg) {
        double share = otherNeg / neg();
        return mean(need -> need.gainOn(need.neg() * share));
    }

    @Override
    public GroupRequirement gaining(double neg) {
        double share = neg / neg();
        return new GroupRequirement(
                animals,
                system,
                members.stream()
                        .map(m -> new Member(m.head, m.need.gaining(m.need.neg() * share)))
                        .toList(),
                variety);
    }

    @Override
    public double metabolizableProtein() {
        return kept("metabolizableProtein", Need::metabolizableProtein);
    }

    @Override
    public double crudeProtein() {
        return kept("crudeProtein", Need::crudeProtein);
    }

    @Override
    public double calcium() {
        return kept("calcium", Need::calcium);
    }

    @Override
    public double phosphorus() {
        return kept("phosphorus", Need::phosphorus);
    }

    @Override
    public double water() {
        return kept("water", Need::water);
    }

    @Override
    public List<Line> lines() {
        return List.of(
                line("NEm", MEGACALORIE, Need::nem),
                line("NEg", MEGACALORIE, Need::neg),
                line("MP", GRAM_A_DAY, Need::metabolizableProtein),
                line("CP", KILOGRAM_A_DAY, Need::crudeProtein),
                line("Ca", GRAM_A_DAY, Need::calcium),
                line("P", GRAM_A_DAY, Need::phosphorus),
                line("W", LITER, Need::water));
    }

    /** {@link #nemCold()}, in weather that is said, by the cold of each member. */
    public Worked cold() {
        var line = line("NEmc", MEGACALORIE, Need::nemCold, Requirement::cold);
        return () -> List.of(line);
    }

    /** {@link #nemAcclimatization()}, by the maintenance of each member. */
    public Worked acclimatization() {
        var line = line("NEma", MEGACALORIE, Need::nemAcclimatization, need -> new Maintenance(need.animal()));
        return () -> List.of(line);
    }

    private Line line(String symbol, Unit unit, ToDoubleFunction<Need> of) {
        return line(symbol, unit, of, need -> need);
    }

    private Line line(String symbol, Unit unit, ToDoubleFunction<Need> of, Function<Requirement, Worked> by) {
        var inputs = new ArrayList<Input>();
        var heads = new ArrayList<String>();
        var products = new ArrayList<String>();
        for (int i = 0; i < members.size(); i++) {
            var member = members.get(i);
            var head = "n" + (i + 1);
            var need = symbol + (i + 1);
            inputs.add(Input.typed(head, member.head, HEAD));
            inputs.add(Input.computed(need, of.applyAsDouble(member.need), unit, by.apply(member.need)));
            heads.add(head);
            products.add(head + "·" + need);
        }
        var formula = products.stream().collect(Collectors.joining(" + ", "(", ")"))
                + " / "
                + heads.stream().collect(Collectors.joining(" + ", "(", ")"));
        return new Line(symbol, formula, mean(of), unit, Source.ARITHMETIC, inputs);
    }
}
