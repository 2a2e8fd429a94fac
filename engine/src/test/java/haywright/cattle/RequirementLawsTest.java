package haywright.cattle;

import static haywright.cattle.RequirementSystem.NASEM_2016;
import static haywright.cattle.RequirementSystem.NRC_1996;
import static org.assertj.core.api.Assertions.assertThat;

import haywright.cattle.cold.Coat;
import haywright.cattle.cold.ColdSystem;
import haywright.cattle.cold.Exposure;
import haywright.cattle.cold.Hide;
import haywright.cattle.cold.LowerCritical;
import haywright.cattle.need.Need;
import haywright.cattle.need.Requirement;
import java.util.List;
import java.util.SplittableRandom;
import java.util.function.ToDoubleFunction;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** What must hold of any animal, tried on drawn ones. */
class RequirementLawsTest {
    private static final List<ToDoubleFunction<Need>> FACTS = List.of(
            Need::nem, Need::neg, Need::metabolizableProtein, Need::crudeProtein, Need::calcium, Need::phosphorus);

    record Drawn(double weight, double score, double day, double birth, double week, double peak, double temperature) {
        Animal animal(double weight, double score, @Nullable Pregnancy pregnancy, @Nullable Lactation lactation) {
            return new Animal(
                    AnimalClass.MATURE_COW,
                    Breed.AVERAGE,
                    LiveWeight.full(weight),
                    score,
                    pregnancy,
                    lactation,
                    0,
                    600,
                    temperature);
        }

        Animal animal() {
            return animal(weight, score, new Pregnancy(birth, day), new Lactation(week, peak, 8.5));
        }
    }

    static Stream<Drawn> drawn() {
        var random = new SplittableRandom(20261125);
        return Stream.generate(() -> new Drawn(
                        random.nextDouble(400, 750),
                        random.nextDouble(2, 8),
                        random.nextDouble(60, 270),
                        random.nextDouble(25, 50),
                        random.nextDouble(1, 28),
                        random.nextDouble(5, 14),
                        random.nextDouble(-25, 20)))
                .limit(200);
    }

    private static void needsAtLeast(Animal more, Animal less) {
        for (var fact : FACTS) {
            assertThat(fact.applyAsDouble(new Requirement(more, NRC_1996)))
                    .isGreaterThanOrEqualTo(fact.applyAsDouble(new Requirement(less, NRC_1996)));
        }
    }

    @ParameterizedTest
    @MethodSource("drawn")
    void heavierNeverNeedsLess(Drawn d) {
        needsAtLeast(
                d.animal(d.weight + 20, d.score, new Pregnancy(d.birth, d.day), null),
                d.animal(d.weight, d.score, new Pregnancy(d.birth, d.day), null));
    }

    @ParameterizedTest
    @MethodSource("drawn")
    void fatterAtTheSameWeightNeverNeedsLess(Drawn d) {
        needsAtLeast(d.animal(d.weight, d.score + 1, null, null), d.animal(d.weight, d.score, null, null));
    }

    @ParameterizedTest
    @MethodSource("drawn")
    void furtherInCalfOrWithAHeavierCalfNeverNeedsLess(Drawn d) {
        var now = d.animal(d.weight, d.score, new Pregnancy(d.birth, d.day), null);
        needsAtLeast(d.animal(d.weight, d.score, new Pregnancy(d.birth, d.day + 10), null), now);
        needsAtLeast(d.animal(d.weight, d.score, new Pregnancy(d.birth + 5, d.day), null), now);
        needsAtLeast(now, d.animal(d.weight, d.score, null, null));
    }

    @ParameterizedTest
    @MethodSource("drawn")
    void moreMilkNeverNeedsLess(Drawn d) {
        var now = d.animal(d.weight, d.score, null, new Lactation(d.week, d.peak, 8.5));
        needsAtLeast(d.animal(d.weight, d.score, null, new Lactation(d.week, d.peak + 1, 8.5)), now);
        needsAtLeast(now, d.animal(d.weight, d.score, null, null));
    }

    @ParameterizedTest
    @MethodSource("drawn")
    void aColderMonthNeverNeedsLess(Drawn d) {
        var now = d.animal();
        needsAtLeast(
                new Animal(
                        now.animals(),
                        now.breed(),
                        now.weight(),
                        now.conditionScore(),
                        now.pregnancy(),
                        now.lactation(),
                        now.gain(),
                        now.matureWeight(),
                        now.previousTemperature() - 5),
                now);
    }

    @ParameterizedTest
    @MethodSource("drawn")
    void fasterGainNeverNeedsLess(Drawn d) {
        double weight = d.weight / 2;
        double gain = d.day / 200;
        needsAtLeast(Published.growing(weight, 600, gain + 0.1), Published.growing(weight, 600, gain));
    }

    /** As far as recalled the editions part only in the intake of growing cattle, heifer targets and shares of the diet. */
    @ParameterizedTest
    @MethodSource("drawn")
    void bothEditionsNeedTheSame(Drawn d) {
        var cow = d.animal();
        var calf = Published.growing(d.weight / 2, 600, d.day / 200);
        for (var animal : List.of(cow, calf)) {
            for (var fact : FACTS) {
                assertThat(fact.applyAsDouble(new Requirement(animal, NASEM_2016)))
                        .isEqualTo(fact.applyAsDouble(new Requirement(animal, NRC_1996)));
            }
        }
        assertThat(new Requirement(cow, NASEM_2016).intake(1.2).kilograms())
                .isEqualTo(new Requirement(cow, NRC_1996).intake(1.2).kilograms());
    }

    /**
     * In the cold. On a mild day it is the other way round: COMP has a thin cow live on less. The table of critical
     * temperatures tells scores 4 to 6 apart; beyond half of upkeep more, nobody eats enough anyway.
     */
    @ParameterizedTest
    @MethodSource("drawn")
    void aThinnerCowInTheColdNeverNeedsLess(Drawn d) {
        double score = 4.5 + (d.score - 2) / 4; // 4.5 to 6
        for (double below : new double[] {0, 5, 10, 20}) {
            double celsius = new LowerCritical(Coat.WINTER, false, score).celsius() - below;
            var cold = List.of(new Exposure(celsius, 0, Coat.WINTER, Hide.DRY, false, ColdSystem.RULE_OF_THUMB));
            assertThat(need(d, score - 0.5, cold)).isGreaterThanOrEqualTo(need(d, score, cold));
            assertThat(need(d, score - 0.5, cold) - need(d, score - 0.5, List.of()))
                    .isGreaterThan(need(d, score, cold) - need(d, score, List.of()));
        }
    }

    private static double need(Drawn d, double score, List<Exposure> weather) {
        return new Requirement(d.animal(d.weight, score, null, null).after(20), NRC_1996, weather).nem();
    }
}
