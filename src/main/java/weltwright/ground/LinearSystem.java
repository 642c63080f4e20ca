package weltwright.ground;

import org.opencv.core.Core;
import org.opencv.core.CvType;
import org.opencv.core.Mat;

/** Small symmetric positive definite systems, by OpenCV's Cholesky decomposition (eigenvalues where that fails). */
final class LinearSystem {
    private LinearSystem() {}

    static double[] solve(double[][] matrix, double[] right) {
        int n = right.length;
        Mat a = mat(matrix);
        Mat b = new Mat(n, 1, CvType.CV_64F);
        b.put(0, 0, right);
        Mat x = new Mat();
        if (!Core.solve(a, b, x, Core.DECOMP_CHOLESKY)) {
            Core.solve(a, b, x, Core.DECOMP_SVD);
        }
        double[] solution = new double[n];
        x.get(0, 0, solution);
        a.release();
        b.release();
        x.release();
        return solution;
    }

    static double[][] inverse(double[][] matrix) {
        int n = matrix.length;
        // Rotation, lens and mm differ by many orders; scaled to a unit diagonal they invert without loss.
        double[] scale = new double[n];
        double[][] scaled = new double[n][n];
        for (int i = 0; i < n; i++) {
            scale[i] = 1 / Math.sqrt(matrix[i][i]);
        }
        for (int i = 0; i < n; i++) {
            for (int j = 0; j < n; j++) {
                scaled[i][j] = matrix[i][j] * scale[i] * scale[j];
            }
        }
        Mat a = mat(scaled);
        Mat inverse = new Mat();
        Core.invert(a, inverse, Core.DECOMP_SVD);
        double[][] out = new double[n][n];
        for (int i = 0; i < n; i++) {
            for (int j = 0; j < n; j++) {
                out[i][j] = inverse.get(i, j)[0] * scale[i] * scale[j];
            }
        }
        a.release();
        inverse.release();
        return out;
    }

    private static Mat mat(double[][] rows) {
        Mat m = new Mat(rows.length, rows.length, CvType.CV_64F);
        for (int i = 0; i < rows.length; i++) {
            m.put(i, 0, rows[i]);
        }
        return m;
    }
}
