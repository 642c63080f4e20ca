package weltwright.camera.adjustment;

/** Sums the normal equations of weighted least squares, residual by residual, by the Gauss-Newton approximation. */
final class NormalEquations {
    private final double[] products;
    private final double[] gradient;

    /** @param parameters number of parameters */
    NormalEquations(int parameters) {
        products = new double[parameters * (parameters + 1) / 2];
        gradient = new double[parameters];
    }

    /** Adds a residual with its derivatives by the parameters. */
    void add(double weight, double residual, double[] derivative) {
        int next = 0;
        for (int k = 0; k < derivative.length; k++) {
            double weighted = weight * derivative[k];
            gradient[k] += weighted * residual;
            for (int l = 0; l <= k; l++) {
                products[next++] += weighted * derivative[l];
            }
        }
    }

    /** Adds two residuals of equal weight. */
    void add(double weight, double residualX, double[] dx, double residualY, double[] dy) {
        int next = 0;
        for (int k = 0; k < dx.length; k++) {
            double byX = weight * dx[k];
            double byY = weight * dy[k];
            gradient[k] += byX * residualX + byY * residualY;
            for (int l = 0; l <= k; l++) {
                products[next++] += byX * dx[l] + byY * dy[l];
            }
        }
    }

    /**
     * Adds these equations to those of more parameters, of which only the lower triangle of the matrix is changed.
     *
     * @param place place of each of these parameters among those, in ascending order
     */
    void addTo(double[][] matrix, double[] right, int[] place) {
        int next = 0;
        for (int k = 0; k < place.length; k++) {
            right[place[k]] += gradient[k];
            for (int l = 0; l <= k; l++) {
                matrix[place[k]][place[l]] += products[next++];
            }
        }
    }
}
