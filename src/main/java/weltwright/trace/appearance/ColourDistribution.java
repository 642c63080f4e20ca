package weltwright.trace.appearance;

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
}
