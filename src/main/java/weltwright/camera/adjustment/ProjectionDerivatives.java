package weltwright.camera.adjustment;

import weltwright.camera.Vector3;
import weltwright.geometry.Point;

/**
 * Where a place of the ground is seen by a camera whose parameters are to be found, and how that pixel moves with each
 * of them: ln f, k1, k2, cx, cy, three of rotation, three of translation, and the ground's stretch. One object is used
 * for place after place, since a descent asks for a hundred thousand of them.
 */
final class ProjectionDerivatives {
    private static final int CENTRE = 3;
    private static final int ROTATION = 5;
    private static final int TRANSLATION = 8;
    private static final int STRETCH = 11;

    /** Of a radian, for the derivatives of a rotation: rounding and curvature both stay below 1e-9. */
    private static final double TURN = 1e-5;

    /** The pixel. */
    double x;

    double y;

    /** Its derivatives. */
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
    private final Vector3[] rightTurned = new Vector3[3];
    private final Vector3[] upTurned = new Vector3[3];

    /** @param p the parameters, in the order given above */
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
            this.rightTurned[k] = turning(rotation, k, new Vector3(stretch, 0, 0));
            this.upTurned[k] = turning(rotation, k, new Vector3(0, 1 / stretch, 0));
        }
    }

    private static Vector3 turning(double[] rotation, int k, Vector3 axis) {
        return rotated(rotation, k, TURN, axis)
                .minus(rotated(rotation, k, -TURN, axis))
                .times(0.5 / TURN);
    }

    private static Vector3 rotated(double[] rotation, int k, double more, Vector3 axis) {
        return axis.rotated(new Vector3(
                rotation[0] + (k == 0 ? more : 0),
                rotation[1] + (k == 1 ? more : 0),
                rotation[2] + (k == 2 ? more : 0)));
    }

    void see(Point place) {
        double a = place.x();
        double b = place.y();
        double depth = origin.z() + a * right.z() + b * up.z();
        double near = 1 / depth;
        double u = (origin.x() + a * right.x() + b * up.x()) * near;
        double v = (origin.y() + a * right.y() + b * up.y()) * near;
        double r2 = u * u + v * v;
        double swell = 1 + r2 * (k1 + r2 * k2);
        x = focalPx * swell * u + centreX;
        y = focalPx * swell * v + centreY;
        dx[0] = focalPx * swell * u;
        dy[0] = focalPx * swell * v;
        dx[1] = focalPx * r2 * u;
        dy[1] = focalPx * r2 * v;
        dx[2] = r2 * dx[1];
        dy[2] = r2 * dy[1];
        double swelling = 2 * (k1 + 2 * r2 * k2);
        double xByU = focalPx * (swell + u * u * swelling);
        double xByV = focalPx * u * v * swelling;
        double yByV = focalPx * (swell + v * v * swelling);
        for (int k = 0; k < 3; k++) {
            Vector3 r = rightTurned[k];
            Vector3 t = upTurned[k];
            moved(
                    ROTATION + k,
                    a * r.x() + b * t.x(),
                    a * r.y() + b * t.y(),
                    a * r.z() + b * t.z(),
                    near,
                    u,
                    v,
                    xByU,
                    xByV,
                    yByV);
        }
        moved(TRANSLATION, 1, 0, 0, near, u, v, xByU, xByV, yByV);
        moved(TRANSLATION + 1, 0, 1, 0, near, u, v, xByU, xByV, yByV);
        moved(TRANSLATION + 2, 0, 0, 1, near, u, v, xByU, xByV, yByV);
        moved(
                STRETCH,
                (a * right.x() - b * up.x()) / 2,
                (a * right.y() - b * up.y()) / 2,
                (a * right.z() - b * up.z()) / 2,
                near,
                u,
                v,
                xByU,
                xByV,
                yByV);
    }

    /**
     * The chain rule for a parameter that moves the place by (mx, my, mz) in the camera's frame.
     *
     * @param near one over the place's depth
     */
    private void moved(
            int k,
            double mx,
            double my,
            double mz,
            double near,
            double u,
            double v,
            double xByU,
            double xByV,
            double yByV) {
        double du = (mx - u * mz) * near;
        double dv = (my - v * mz) * near;
        dx[k] = xByU * du + xByV * dv;
        dy[k] = xByV * du + yByV * dv;
    }
}
