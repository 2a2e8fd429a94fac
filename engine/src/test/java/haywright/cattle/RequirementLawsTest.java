package haywright.cattle;

import static haywright.cattle.RequirementSystem.NRC_1996;
import static org.assertj.core.api.Assertions.assertThat;

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
}
