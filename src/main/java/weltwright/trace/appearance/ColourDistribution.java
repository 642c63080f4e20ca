package weltwright.trace.appearance;

import weltwright.geometry.fit.SymmetricSystem;

/**
 * What colours a thing has, as a normal distribution of blue, green and red in grey levels.
 *
 * @param information the inverse of the covariance
 * @param logRootDeterminant half the logarithm of the covariance's determinant
 */
public record ColourDistribution(double[] mean, double[][] information, double logRootDeterminant) {

    /** The square of how far a colour is from the mean, in standard deviations that way (Mahalanobis 1936). */
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

    /** Logarithm of the likelihood of a colour, but for a term that all distributions share. */
    public double logLikelihood(double blue, double green, double red) {
        return -squaredDistance(blue, green, red) / 2 - logRootDeterminant;
    }

    /** Sums of the colours that were seen. */
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
         * Gives the normal distribution of the colours that were added.
         *
         * @param noise variance of a channel that is always there, besides what was seen
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
