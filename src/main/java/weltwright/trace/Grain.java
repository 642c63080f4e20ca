package weltwright.trace;

/**
 * How colours scatter by grain and noise alone: their covariance, as a measure of how much a change of colour tells.
 * Grain and noise are mostly of brightness, above all in a JPEG, so that a faint change of hue may tell more than a
 * larger one of brightness (Mahalanobis 1936).
 *
 * <p>Assumes that most of what is given is grain alone. What is not is left out by Rousseeuw and Van Driessen's
 * concentration steps (1999): the nearer part is kept, by the covariance of what was kept before.
 */
final class Grain {
    /** This part is kept: along a band, or on a sheet with a knife and its shadow, more than that is plain. */
    private static final double KEPT = 0.75;

    private static final int ROUNDS = 4;

    /** Every so many vectors are enough to judge by. */
    private static final int JUDGED = 20_000;

    /** The inverse of the covariance's Cholesky factor, a lower triangle. */
    private final double[][] whitening;

    private Grain(double[][] whitening) {
        this.whitening = whitening;
    }

    /**
     * @param changes of colour, three numbers each
     * @param least standard deviation that each of the three has at least, by rounding and compression
     */
    static Grain of(float[] changes, double least) {
        int n = changes.length / 3;
        int every = Math.max(1, n / JUDGED);
        int count = n / every;
        Grain grain = new Grain(new double[][] {{1, 0, 0}, {0, 1, 0}, {0, 0, 1}});
        double[] norms = new double[count];
        for (int round = 0; round < ROUNDS; round++) {
            for (int i = 0; i < count; i++) {
                int at = 3 * i * every;
                norms[i] = grain.square(changes[at], changes[at + 1], changes[at + 2]);
            }
            double[] sorted = norms.clone();
            java.util.Arrays.sort(sorted);
            double limit = sorted[(int) (KEPT * (count - 1))];
            double[][] sum = new double[3][3];
            int kept = 0;
            for (int i = 0; i < count; i++) {
                if (norms[i] <= limit) {
                    kept++;
                    int at = 3 * i * every;
                    for (int r = 0; r < 3; r++) {
                        for (int c = 0; c <= r; c++) {
                            sum[r][c] += changes[at + r] * changes[at + c];
                        }
                    }
                }
            }
            for (int r = 0; r < 3; r++) {
                for (int c = 0; c <= r; c++) {
                    sum[r][c] = sum[r][c] / kept + (r == c ? least * least : 0);
                }
            }
            grain = new Grain(inverseFactor(sum));
        }
        return grain;
    }

    private static double[][] inverseFactor(double[][] m) {
        double a = Math.sqrt(m[0][0]);
        double b = m[1][0] / a;
        double c = Math.sqrt(m[1][1] - b * b);
        double d = m[2][0] / a;
        double e = (m[2][1] - d * b) / c;
        double f = Math.sqrt(m[2][2] - d * d - e * e);
        return new double[][] {
            {1 / a, 0, 0}, {-b / (a * c), 1 / c, 0}, {(b * e - c * d) / (a * c * f), -e / (c * f), 1 / f}
        };
    }

    /** A matrix that turns a change of colour into one whose grain is alike in all three numbers and of variance 1. */
    double[][] whitening() {
        return whitening;
    }

    /** The square of a change of colour, in variances of the grain. */
    double square(double b, double g, double r) {
        double u = whitening[0][0] * b;
        double v = whitening[1][0] * b + whitening[1][1] * g;
        double w = whitening[2][0] * b + whitening[2][1] * g + whitening[2][2] * r;
        return u * u + v * v + w * w;
    }
}
