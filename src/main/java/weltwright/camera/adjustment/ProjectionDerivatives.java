package weltwright.camera.adjustment;

import weltwright.camera.Vector3;
import weltwright.geometry.Point;

/**
 * Projects points of the ground, with the derivatives of the pixel by the parameters: ln f, k1, k2, cx, cy, three of
 * rotation, three of translation, and the ground's stretch (project {@link BundleAdjustment}). An object is reused for
 * many points, to avoid allocation.
 */
final class ProjectionDerivatives {
    private static final int CENTRE = 3;
    private static final int ROTATION = 5;
    private static final int TRANSLATION = 8;
    private static final int STRETCH = 11;

    /**
     * Step of the central differences for the rotation, in radians; rounding and curvature both contribute less than
     * 1e-9.
     */
    private static final double ROTATION_STEP = 1e-5;

    /** The pixel of the last point. */
    double x;

    double y;

    /** Derivatives of the pixel by the parameters. */
    final double[] dx = new double[STRETCH + 1];

    final double[] dy = new double[STRETCH + 1];

    private final double focalPx;
    private final double k1;
    private final double k2;
    private final double centreX;
    private final double centreY;
    private final Vector3 origin;
    private final Vector3 right;
    private final Vector3 up;
    private final Vector3[] rightDerivatives = new Vector3[3];
    private final Vector3[] upDerivatives = new Vector3[3];

    /** @param p the parameters in the order above */
    ProjectionDerivatives(double[] p) {
        this.focalPx = Math.exp(p[0]);
        this.k1 = p[1];
        this.k2 = p[2];
        this.centreX = p[CENTRE];
        this.centreY = p[CENTRE + 1];
        dx[CENTRE] = 1;
        dy[CENTRE + 1] = 1;
        this.origin = new Vector3(p[TRANSLATION], p[TRANSLATION + 1], p[TRANSLATION + 2]);
        double stretch = Math.exp(p[STRETCH] / 2);
        double[] rotation = {p[ROTATION], p[ROTATION + 1], p[ROTATION + 2]};
        this.right = rotated(rotation, 0, 0, new Vector3(stretch, 0, 0));
        this.up = rotated(rotation, 0, 0, new Vector3(0, 1 / stretch, 0));
        for (int k = 0; k < 3; k++) {
            this.rightDerivatives[k] = rotationDerivative(rotation, k, new Vector3(stretch, 0, 0));
            this.upDerivatives[k] = rotationDerivative(rotation, k, new Vector3(0, 1 / stretch, 0));
        }
    }

    private static Vector3 rotationDerivative(double[] rotation, int k, Vector3 axis) {
        return rotated(rotation, k, ROTATION_STEP, axis)
                .minus(rotated(rotation, k, -ROTATION_STEP, axis))
                .times(0.5 / ROTATION_STEP);
    }

    private static Vector3 rotated(double[] rotation, int k, double more, Vector3 axis) {
        return axis.rotated(new Vector3(
                rotation[0] + (k == 0 ? more : 0),
                rotation[1] + (k == 1 ? more : 0),
                rotation[2] + (k == 2 ? more : 0)));
    }

    /** Projects a point of the ground, in mm. */
    void project(Point point) {
        double a = point.x();
        double b = point.y();
        double depth = origin.z() + a * right.z() + b * up.z();
        double inverseDepth = 1 / depth;
        double u = (origin.x() + a * right.x() + b * up.x()) * inverseDepth;
        double v = (origin.y() + a * right.y() + b * up.y()) * inverseDepth;
        double r2 = u * u + v * v;
        double distortion = 1 + r2 * (k1 + r2 * k2);
        x = focalPx * distortion * u + centreX;
        y = focalPx * distortion * v + centreY;
        dx[0] = focalPx * distortion * u;
        dy[0] = focalPx * distortion * v;
        dx[1] = focalPx * r2 * u;
        dy[1] = focalPx * r2 * v;
        dx[2] = r2 * dx[1];
        dy[2] = r2 * dy[1];
        double distortionSlope = 2 * (k1 + 2 * r2 * k2);
        double xByU = focalPx * (distortion + u * u * distortionSlope);
        double xByV = focalPx * u * v * distortionSlope;
        double yByV = focalPx * (distortion + v * v * distortionSlope);
        for (int k = 0; k < 3; k++) {
            Vector3 r = rightDerivatives[k];
            Vector3 t = upDerivatives[k];
            setDerivative(
                    ROTATION + k,
                    a * r.x() + b * t.x(),
                    a * r.y() + b * t.y(),
                    a * r.z() + b * t.z(),
                    inverseDepth,
                    u,
                    v,
                    xByU,
                    xByV,
                    yByV);
        }
        setDerivative(TRANSLATION, 1, 0, 0, inverseDepth, u, v, xByU, xByV, yByV);
        setDerivative(TRANSLATION + 1, 0, 1, 0, inverseDepth, u, v, xByU, xByV, yByV);
        setDerivative(TRANSLATION + 2, 0, 0, 1, inverseDepth, u, v, xByU, xByV, yByV);
        setDerivative(
                STRETCH,
                (a * right.x() - b * up.x()) / 2,
                (a * right.y() - b * up.y()) / 2,
                (a * right.z() - b * up.z()) / 2,
                inverseDepth,
                u,
                v,
                xByU,
                xByV,
                yByV);
    }

    /**
     * Applies the chain rule for a parameter that moves the point by (mx, my, mz) in the camera frame.
     *
     * @param inverseDepth 1 over the point's depth
     */
    private void setDerivative(
            int k,
            double mx,
            double my,
            double mz,
            double inverseDepth,
            double u,
            double v,
            double xByU,
            double xByV,
            double yByV) {
        double du = (mx - u * mz) * inverseDepth;
        double dv = (my - v * mz) * inverseDepth;
        dx[k] = xByU * du + xByV * dv;
        dy[k] = xByV * du + yByV * dv;
    }
}
