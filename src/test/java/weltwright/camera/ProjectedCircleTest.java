package weltwright.camera;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import weltwright.geometry.Point;

/** Circles on the ground, whose pictures are known in closed form. */
class ProjectedCircleTest {
    private static final double FOCAL_PX = 2300;
    private static final PinholeCamera CAMERA = new PinholeCamera(FOCAL_PX, 2015.5, 1511.5, 0, 0);

    /** A camera whose axis meets the ground's origin at a distance, tilted about the ground's x axis. */
    private static CameraView tilted(double distanceMm, double tiltRad) {
        // Half a turn about x has the camera look straight down, x to the right.
        return new CameraView(CAMERA, new Vector3(Math.PI - tiltRad, 0, 0), new Vector3(0, 0, distanceMm));
    }

    /**
     * A pinhole sees a point at f·(lateral offset)/(depth). Along the tilt the ends of a circle of radius r about the
     * axis lie r·cos(tilt) beside it at depth d ± r·sin(tilt); across it they lie r beside it at depth d.
     */
    @ParameterizedTest
    @CsvSource({"380, 0, 100", "380, 12, 100", "420, 25, 140", "640, 40, 60"})
    void endsOfACircleAreWhereSimilarTrianglesPutThem(double distanceMm, double tiltDeg, double radiusMm) {
        double tilt = Math.toRadians(tiltDeg);
        CameraView view = tilted(distanceMm, tilt);
        double far = FOCAL_PX * radiusMm * Math.cos(tilt) / (distanceMm + radiusMm * Math.sin(tilt));
        double near = FOCAL_PX * radiusMm * Math.cos(tilt) / (distanceMm - radiusMm * Math.sin(tilt));
        double up = 1511.5 - view.pixel(new Vector3(0, radiusMm, 0)).y();
        double down = view.pixel(new Vector3(0, -radiusMm, 0)).y() - 1511.5;
        assertThat(Math.min(up, down)).isCloseTo(far, within(1e-9));
        assertThat(Math.max(up, down)).isCloseTo(near, within(1e-9));
        Point right = view.pixel(new Vector3(radiusMm, 0, 0));
        assertThat(right.x()).isCloseTo(2015.5 + FOCAL_PX * radiusMm / distanceMm, within(1e-9));
        assertThat(right.y()).isCloseTo(1511.5, within(1e-9));
    }

    /**
     * In focal lengths from the middle of the picture, with s and c the sine and cosine of the tilt, the ground's point
     * seen at (u, v) is (d·u·c, d·v)/(c ∓ s·v); so the circle is seen as the conic d²·(u²·c² + v²) = r²·(c ∓ s·v)².
     */
    @ParameterizedTest
    @CsvSource({"380, 12, 100", "420, 25, 140", "640, 40, 60"})
    void everyPointOfACircleIsSeenOnItsConic(double distanceMm, double tiltDeg, double radiusMm) {
        double tilt = Math.toRadians(tiltDeg);
        double s = Math.sin(tilt);
        double c = Math.cos(tilt);
        CameraView view = tilted(distanceMm, tilt);
        boolean upIsFar = 1511.5 - view.pixel(new Vector3(0, radiusMm, 0)).y()
                < view.pixel(new Vector3(0, -radiusMm, 0)).y() - 1511.5;
        for (int degrees = 0; degrees < 360; degrees += 10) {
            double angle = Math.toRadians(degrees);
            Point seen = view.pixel(new Vector3(radiusMm * Math.cos(angle), radiusMm * Math.sin(angle), 0));
            double u = (seen.x() - 2015.5) / FOCAL_PX;
            double towardsFar = (upIsFar ? -1 : 1) * (seen.y() - 1511.5) / FOCAL_PX;
            double onGround = c - s * towardsFar;
            assertThat(distanceMm * distanceMm * (u * u * c * c + towardsFar * towardsFar))
                    .isCloseTo(radiusMm * radiusMm * onGround * onGround, within(1e-8 * radiusMm * radiusMm));
        }
    }
}
