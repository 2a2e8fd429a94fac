package haywright.chance;

/**
 * A positive definite matrix as L·Lᵀ, L below the diagonal. Only sums, products, quotients and square roots, each exact
 * to the last bit by IEEE 754, so the same matrix gives the same numbers on every machine.
 */
final class Cholesky {
    private final double[][] lower;

    /** @throws IllegalArgumentException if the matrix is not square or not positive definite */
    Cholesky(double[][] matrix) {
        int n = matrix.length;
        lower = new double[n][n];
        for (int i = 0; i < n; i++) {
            if (matrix[i].length != n) {
                throw new IllegalArgumentException("row %d of %d has %d numbers".formatted(i, n, matrix[i].length));
            }
            for (int j = 0; j <= i; j++) {
                double rest = matrix[i][j];
                for (int k = 0; k < j; k++) {
                    rest -= lower[i][k] * lower[j][k];
                }
                if (j < i) {
                    lower[i][j] = rest / lower[j][j];
                } else if (rest > 0) { // NaN is not
                    lower[i][i] = Math.sqrt(rest);
                } else {
                    throw new IllegalArgumentException(
                            "the matrix is not positive definite: row %d leaves %s on its diagonal".formatted(i, rest));
                }
            }
        }
    }

    /** L·z. */
    double[] times(double[] z) {
        var product = new double[lower.length];
        for (int i = 0; i < product.length; i++) {
            for (int k = 0; k <= i; k++) {
                product[i] += lower[i][k] * z[k];
            }
        }
        return product;
    }

    /** The x of L·Lᵀ·x = b. */
    double[] solve(double[] b) {
        int n = lower.length;
        var x = b.clone();
        for (int i = 0; i < n; i++) {
            for (int k = 0; k < i; k++) {
                x[i] -= lower[i][k] * x[k];
            }
            x[i] /= lower[i][i];
        }
        for (int i = n - 1; i >= 0; i--) {
            for (int k = i + 1; k < n; k++) {
                x[i] -= lower[k][i] * x[k];
            }
            x[i] /= lower[i][i];
        }
        return x;
    }

    double[][] inverse() {
        int n = lower.length;
        var inverse = new double[n][];
        for (int i = 0; i < n; i++) {
            var unit = new double[n];
            unit[i] = 1;
            inverse[i] = solve(unit);
        }
        return inverse;
    }
}
