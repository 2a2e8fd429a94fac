package haywright.forage.lot;

import haywright.chance.Gaussian;
import java.util.Collections;
import java.util.Map;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.function.ToDoubleFunction;

/**
 * What is known of a lot's figures on the scales of their bells: what is its own, and what it shares with other lots.
 *
 * @param own means, and the spread that no other lot shares
 * @param shared for each shared doubt how far one standard deviation of it moves each figure
 */
record Theta(Gaussian own, SortedMap<Shared, double[]> shared) {
    Theta {
        shared = Collections.unmodifiableSortedMap(new TreeMap<>(shared));
    }

    Theta(Gaussian own) {
        this(own, Collections.emptySortedMap());
    }

    int size() {
        return own.size();
    }

    double mean(int i) {
        return own.mean(i);
    }

    /** Own and shared together. */
    double covariance(int i, int j) {
        double sum = own.covariance(i, j);
        for (var moves : shared.values()) {
            sum += moves[i] * moves[j];
        }
        return sum;
    }

    double sd(int i) {
        return Math.sqrt(covariance(i, i));
    }

    /** @param z standard normal values of its own. @param doubts of what it shares, standard normal each */
    double[] at(double[] z, ToDoubleFunction<Shared> doubts) {
        var values = own.at(z);
        for (Map.Entry<Shared, double[]> doubt : shared.entrySet()) {
            double by = doubts.applyAsDouble(doubt.getKey());
            var moves = doubt.getValue();
            for (int i = 0; i < values.length; i++) {
                values[i] += by * moves[i];
            }
        }
        return values;
    }
}
