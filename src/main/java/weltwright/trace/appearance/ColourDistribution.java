package weltwright.trace.appearance;

import weltwright.geometry.fit.SymmetricSystem;

/**
 * A trivariate normal distribution of the colours of one material: blue, green and red, in grey levels.
 *
 * @param mean blue, green, red
 * @param information the inverse of the covariance
 * @param logRootDeterminant half the logarithm of the covariance's determinant
 */
public record ColourDistribution(double[] mean, double[][] information, double logRootDeterminant) {

    /** Returns the squared Mahalanobis distance of a colour from the mean (Mahalanobis 1936). */
    public double squaredDistance(double blue, double green, double red) {
        double[] off = {blue - mean[0], green - mean[1], red - mean[2]};
        double square = 0;
        for (int k = 0; k < 3; k++) {
            for (int l = 0; l < 3; l++) {
                square += off[k] * information[k][l] * off[l];
            }
        }
        return square;
    }

    /** Returns the logarithm of the density at a colour, without the constant that all distributions share. */
    public double logLikelihood(double blue, double green, double red) {
        return -squaredDistance(blue, green, red) / 2 - logRootDeterminant;
    }

    /** Accumulates sample colours. */
    public static final class Sums {
        private int count;
        private final double[] sum = new double[3];
        private final double[][] products = new double[3][3];

        public void add(double blue, double green, double red) {
            double[] colour = {blue, green, red};
            count++;
            for (int k = 0; k < 3; k++) {
                sum[k] += colour[k];
                for (int l = 0; l < 3; l++) {
                    products[k][l] += colour[k] * colour[l];
                }
            }
        }

        public int count() {
            return count;
        }

        /**
         * Returns the normal distribution with the mean and covariance of the colours added.
         *
         * @param noise variance added to each channel, in grey levels squared; keeps the covariance regular
         */
        public ColourDistribution normal(double noise) {
            double[] mean = new double[3];
            for (int k = 0; k < 3; k++) {
                mean[k] = sum[k] / count;
            }
            double[][] covariance = new double[3][3];
            for (int k = 0; k < 3; k++) {
                for (int l = 0; l < 3; l++) {
                    covariance[k][l] = products[k][l] / count - mean[k] * mean[l] + (k == l ? noise : 0);
                }
            }
            SymmetricSystem spread = new SymmetricSystem(covariance);
            double[][] factor = spread.lowerFactor();
            return new ColourDistribution(mean, spread.inverse(), Math.log(factor[0][0] * factor[1][1] * factor[2][2]));
        }
    }
}
