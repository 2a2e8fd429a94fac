package haywright.cattle.herd;

import haywright.cattle.Animal;
import haywright.chance.Normal;
import java.util.List;
import java.util.stream.IntStream;

/**
 * How far the animals of a group lie apart beside their calving dates: normally spread about the mean, weight and
 * condition each for itself.
 *
 * @param weight standard deviation of weight, as a share of the mean
 * @param score standard deviation of condition scores
 */
public record Variety(double weight, double score) {
    static final Variety NONE = new Variety(0, 0);

    /** Standard deviations from the mean to the ends of the middle nine in ten. */
    static final double NINE_IN_TEN = Normal.quantile(0.95);

    /** Twenty animals stand for a group; their scores are dealt so that they hardly hang together with weight (0.006). */
    private static final int ANIMALS = 20;

    private static final int STEP = 7;
    private static final int START = 3;
    private static final double[] Z = IntStream.range(0, ANIMALS)
            .mapToDouble(i -> Normal.quantile((i + 0.5) / ANIMALS))
            .toArray();

    public static Variety of(Group group) {
        var weights = group.weights();
        var scores = group.scores();
        return new Variety(
                weights == null ? 0 : half(weights) / group.weight().base() / NINE_IN_TEN,
                scores == null ? 0 : (scores.fattest() - scores.thinnest()) / 2 / NINE_IN_TEN);
    }

    /** kg from the mean to either end of the weights of most. */
    static double half(Group.Weights weights) {
        return (weights.heaviest().base() - weights.lightest().base()) / 2;
    }

    /** Animals that are equally likely; the mean one alone where all are alike. Heavy ones grow up heavier. */
    public List<Animal> of(Animal mean) {
        return weight == 0 && score == 0
                ? List.of(mean)
                : IntStream.range(0, ANIMALS)
                        .mapToObj(i -> mean.varied(1 + weight * Z[i], score * Z[(STEP * i + START) % ANIMALS]))
                        .toList();
    }
}
