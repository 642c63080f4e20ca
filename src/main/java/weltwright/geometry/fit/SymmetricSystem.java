package weltwright.geometry.fit;

/**
 * A symmetric positive definite system of linear equations, such as the normal equations of a least squares fit,
 * factored once by Cholesky's decomposition (Golub and Van Loan, <i>Matrix Computations</i>, section 4.2) after scaling
 * to a unit diagonal, so that unknowns in unlike units do not spoil each other.
 */
public final class SymmetricSystem {
    private final double[][] factor;
    private final double[] scale;

    /**
     * @param matrix square and symmetric; its lower triangle is read. IllegalArgumentException if not positive definite
     */
    public SymmetricSystem(double[][] matrix) {
        int n = matrix.length;
        scale = new double[n];
        for (int i = 0; i < n; i++) {
            scale[i] = 1 / Math.sqrt(matrix[i][i]);
        }
        factor = new double[n][n];
        for (int i = 0; i < n; i++) {
            for (int j = 0; j <= i; j++) {
                double sum = matrix[i][j] * scale[i] * scale[j];
                for (int k = 0; k < j; k++) {
                    sum -= factor[i][k] * factor[j][k];
                }
                if (i > j) {
                    factor[i][j] = sum / factor[j][j];
                } else if (sum > 0) {
                    factor[i][i] = Math.sqrt(sum);
                } else {
                    throw new IllegalArgumentException("the matrix is not positive definite at row " + i);
                }
            }
        }
    }

    /** The x with matrix · x = right. */
    public double[] solve(double[] right) {
        int n = scale.length;
        double[] x = new double[n];
        for (int i = 0; i < n; i++) {
            double sum = right[i] * scale[i];
            for (int k = 0; k < i; k++) {
                sum -= factor[i][k] * x[k];
            }
            x[i] = sum / factor[i][i];
        }
        for (int i = n - 1; i >= 0; i--) {
            double sum = x[i];
            for (int k = i + 1; k < n; k++) {
                sum -= factor[k][i] * x[k];
            }
            x[i] = sum / factor[i][i];
        }
        for (int i = 0; i < n; i++) {
            x[i] *= scale[i];
        }
        return x;
    }

    /**
     * The lower triangular L with L · Lᵀ = matrix. Of a covariance, its columns are moves independent of each other.
     */
    public double[][] lowerFactor() {
        int n = scale.length;
        double[][] lower = new double[n][n];
        for (int i = 0; i < n; i++) {
            for (int j = 0; j <= i; j++) {
                lower[i][j] = factor[i][j] / scale[i];
            }
        }
        return lower;
    }

    /** The inverse of the matrix. Of an information matrix, the covariance. */
    public double[][] inverse() {
        int n = scale.length;
        double[][] inverse = new double[n][];
        for (int i = 0; i < n; i++) {
            double[] unit = new double[n];
            unit[i] = 1;
            inverse[i] = solve(unit);
        }
        return inverse;
    }
}
