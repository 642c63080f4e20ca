package weltwright.camera;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.opencv.core.MatOfPoint2f;
import org.opencv.imgproc.Imgproc;
import weltwright.geometry.Point;
import weltwright.image.opencv.OpenCvLibraries;

/** A square seen in perspective: straight lines stay straight, so its centre is where the diagonals meet. */
class HomographyTest {
    private static final Point[] SQUARE = {new Point(0, 0), new Point(100, 0), new Point(100, 100), new Point(0, 100)};
    private static final Point[] SEEN = {
        new Point(120, 410), new Point(530, 380), new Point(440, 150), new Point(190, 170)
    };

    @BeforeAll
    static void load() {
        OpenCvLibraries.load();
    }

    @Test
    void takesCornersToCornersAndTheCentreToWhereTheDiagonalsMeet() {
        Homography seen = Homography.of(Imgproc.getPerspectiveTransform(cv(SQUARE), cv(SEEN)));
        for (int k = 0; k < 4; k++) {
            assertThat(seen.apply(SQUARE[k]).distance(SEEN[k])).isCloseTo(0, within(1e-6));
        }
        Point diagonal = SEEN[2].minus(SEEN[0]);
        Point other = SEEN[3].minus(SEEN[1]);
        Point meet = SEEN[0].plus(diagonal.times(SEEN[1].minus(SEEN[0]).cross(other) / diagonal.cross(other)));
        assertThat(seen.apply(new Point(50, 50)).distance(meet)).isCloseTo(0, within(1e-6));
    }

    private static MatOfPoint2f cv(Point[] points) {
        org.opencv.core.Point[] cv = new org.opencv.core.Point[points.length];
        for (int k = 0; k < cv.length; k++) {
            cv[k] = new org.opencv.core.Point(points[k].x(), points[k].y());
        }
        return new MatOfPoint2f(cv);
    }
}
