package weltwright.trace.segment;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.locationtech.jts.algorithm.distance.DiscreteHausdorffDistance;
import org.opencv.core.Core;
import org.opencv.core.CvType;
import org.opencv.core.Mat;
import org.opencv.core.MatOfPoint;
import org.opencv.core.Scalar;
import org.opencv.core.Size;
import org.opencv.imgproc.Imgproc;
import weltwright.camera.rectification.PlaneRaster;
import weltwright.error.UserFacingException;
import weltwright.geometry.Point;
import weltwright.geometry.Polyline;
import weltwright.image.opencv.OpenCvLibraries;

/** Drawn pictures of a slab on grey paper, at the trace's five pixels to the millimetre; distances by JTS. */
class SharpContourFinderTest {
    private static final double MM_PER_PX = 0.2;

    /** So far to both sides the edge is looked for afterwards; only a point may be cut by as much. */
    private static final double NEAR_MM = 2;

    private static final PlaneRaster RASTER = PlaneRaster.covering(new Point(-90, -50), new Point(90, 50), MM_PER_PX);

    /** A rectangle with a point at one end, turned: all of its corners, and two slanted sides. */
    private static final List<Point> SLAB = List.of(
                    new Point(-60, -10), new Point(30, -10), new Point(60, 4), new Point(30, 10), new Point(-60, 10))
            .stream()
            .map(p -> new Point(p.x() * 0.966 - p.y() * 0.259, p.x() * 0.259 + p.y() * 0.966))
            .toList();

    @BeforeAll
    static void load() {
        OpenCvLibraries.load();
    }

    @Test
    void findsAThingOnPaper() {
        Mat picture = paper();
        fill(picture, SLAB, 120);
        SharpContourFinder.Found found = find(picture);
        assertThat(offMm(found, SLAB)).isLessThan(NEAR_MM);
        assertThat(found.hasSecondLine()).isFalse();
    }

    /** A reflection makes one long side as bright as the paper beside it for about a centimetre, and fades beyond. */
    @Test
    void goesStraightOnWhereNothingIsToBeSeen() {
        Mat picture = paper();
        fill(picture, SLAB, 120);
        Point middle = RASTER.pixel(SLAB.get(0).towards(SLAB.get(1), 0.5));
        byte[] bgr = new byte[3 * RASTER.columns() * RASTER.rows()];
        picture.get(0, 0, bgr);
        for (int i = 0; i < bgr.length; i++) {
            Point at = new Point(i / 3 % RASTER.columns(), i / 3 / RASTER.columns());
            double fading = Math.exp(-Math.pow(at.distance(middle) * MM_PER_PX / 8, 4));
            bgr[i] = (byte) (bgr[i] & 255) == (byte) 120 ? (byte) (120 + 60 * fading) : bgr[i];
        }
        picture.put(0, 0, bgr);
        assertThat(offMm(find(picture), SLAB)).isLessThan(NEAR_MM);
    }

    /** A soft shadow fades over a centimetre to each side. */
    @Test
    void doesNotTakeASoftShadowForTheThing() {
        Mat picture = paper();
        List<Point> fallen = SLAB.stream().map(p -> p.plus(new Point(4, -5))).toList();
        fill(picture, fallen, 120);
        Imgproc.GaussianBlur(picture, picture, new Size(0, 0), 5 / MM_PER_PX);
        fill(picture, SLAB, 90);
        SharpContourFinder.Found found = find(picture);
        assertThat(offMm(found, SLAB)).isLessThan(NEAR_MM);
        assertThat(found.hasSecondLine()).isFalse();
    }

    @Test
    void saysThatAHardShadowMightBeTheThing() {
        Mat picture = paper();
        fill(picture, SLAB.stream().map(p -> p.plus(new Point(3, -6))).toList(), 110);
        fill(picture, SLAB, 60);
        assertThat(find(picture).hasSecondLine()).isTrue();
    }

    /** Grey steel on paper little brighter, in the noise of a phone's picture by candlelight. */
    @Test
    void findsAFaintThingInMuchNoise() {
        Mat picture = paper();
        fill(picture, SLAB, 140);
        SharpContourFinder.Found found = find(picture, 12);
        // The blur that tames the noise, three pixels, may cut the point by as much again.
        assertThat(offMm(found, SLAB)).isLessThan(NEAR_MM + 3 * MM_PER_PX);
    }

    @Test
    void hasNoOutlineOfAThingThatReachesOverTheRim() {
        Mat picture = paper();
        fill(picture, SLAB.stream().map(p -> p.plus(new Point(60, 0))).toList(), 120);
        assertThat(look(picture, 2)).isEmpty();
    }

    @Test
    void refusesAnEmptySheet() {
        assertThatThrownBy(() -> find(paper()))
                .isInstanceOf(UserFacingException.class)
                .hasMessageContaining("No knife");
    }

    private static double offMm(SharpContourFinder.Found found, List<Point> truth) {
        return DiscreteHausdorffDistance.distance(
                found.contour().lineString(),
                Polyline.closed(truth).resampled(0.2).lineString());
    }

    private static SharpContourFinder.Found find(Mat picture) {
        return find(picture, 2);
    }

    private static SharpContourFinder.Found find(Mat picture, double noise) {
        return look(picture, noise).orElseThrow();
    }

    private static Optional<SharpContourFinder.Found> look(Mat picture, double noise) {
        Imgproc.GaussianBlur(picture, picture, new Size(0, 0), 1.2);
        Mat grain = new Mat(picture.size(), CvType.CV_16SC3);
        Core.setRNGSeed(7);
        Core.randn(grain, 0, noise);
        Core.add(picture, grain, picture, new Mat(), CvType.CV_8UC3);
        Mat plain = new Mat(picture.size(), CvType.CV_8U, new Scalar(255));
        try {
            return new SharpContourFinder(SharpnessMap.of(picture, plain, RASTER)).find();
        } finally {
            plain.release();
            grain.release();
            picture.release();
        }
    }

    private static Mat paper() {
        return new Mat(RASTER.rows(), RASTER.columns(), CvType.CV_8UC3, Scalar.all(180));
    }

    private static void fill(Mat picture, List<Point> shape, int level) {
        Imgproc.fillConvexPoly(picture, cv(shape), Scalar.all(level));
    }

    private static MatOfPoint cv(List<Point> shape) {
        return new MatOfPoint(shape.stream()
                .map(RASTER::pixel)
                .map(p -> new org.opencv.core.Point(Math.round(p.x()), Math.round(p.y())))
                .toArray(org.opencv.core.Point[]::new));
    }
}
