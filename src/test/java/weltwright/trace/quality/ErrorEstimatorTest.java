package weltwright.trace.quality;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.assertj.core.api.Assertions.withinPercentage;

import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.opencv.core.CvType;
import org.opencv.core.Mat;
import org.opencv.core.MatOfByte;
import org.opencv.core.Scalar;
import org.opencv.imgcodecs.Imgcodecs;
import weltwright.camera.CameraView;
import weltwright.camera.PinholeCamera;
import weltwright.camera.Plane;
import weltwright.camera.Vector3;
import weltwright.camera.adjustment.ViewSolver;
import weltwright.geometry.Point;
import weltwright.geometry.Polyline;
import weltwright.geometry.RigidMotion;
import weltwright.geometry.curve.Outline;
import weltwright.ground.LocatedGround;
import weltwright.image.DecodedPhoto;
import weltwright.image.Photo;
import weltwright.image.opencv.OpenCvLibraries;
import weltwright.knife.Landmarks;
import weltwright.knife.Silhouette;
import weltwright.trace.ground.TraceableGround;
import weltwright.trace.outline.SilhouetteBuilder;
import weltwright.trace.report.ErrorBudget;
import weltwright.trace.report.ErrorSource;
import weltwright.trace.report.TraceNote;

/**
 * A disc in place of a knife, seen from straight above: what makes all of it larger by a part moves each of its points
 * outwards by that part of the radius, and 95 of 100 lie within 1.96 standard deviations.
 */
class ErrorEstimatorTest {
    private static final double RADIUS_MM = 90;
    private static final double DISTANCE_MM = 400;
    private static final double HEIGHT_MM = 10;
    private static final double FOCAL_PX = 2000;
    private static final double FOCAL_SIGMA = 0.01;
    private static final double SCALE_SIGMA = 0.002;

    private static ErrorBudget budget;

    @BeforeAll
    static void estimate() {
        OpenCvLibraries.load();
        List<Point> circle = IntStream.range(0, 720)
                .mapToDouble(i -> Math.toRadians(0.5 * i))
                .mapToObj(a -> new Point(RADIUS_MM * Math.cos(a), RADIUS_MM * Math.sin(a)))
                .toList();
        Silhouette silhouette = new Silhouette(
                Outline.polygon(circle),
                new Landmarks(circle.get(0), circle.get(180), circle.get(540), circle.get(360)),
                true);
        SilhouetteBuilder.Built built = new SilhouetteBuilder.Built(
                silhouette,
                new Plane(HEIGHT_MM, new Point(0, 0)),
                new RigidMotion(0, new Point(0, 0)),
                Polyline.closed(circle),
                new double[circle.size()],
                new double[circle.size()],
                new double[circle.size()],
                false,
                null,
                0);
        CameraView above = new CameraView(
                new PinholeCamera(FOCAL_PX, 999.5, 999.5, 0, 0),
                new Vector3(Math.PI, 0, 0),
                new Vector3(0, 0, DISTANCE_MM));
        double[][] covariance = new double[11][11];
        for (int k = 0; k < 11; k++) {
            covariance[k][k] = k == 0 ? FOCAL_SIGMA * FOCAL_SIGMA : 1e-24;
        }
        Mat plain = new Mat(100, 100, CvType.CV_8UC3, Scalar.all(120));
        MatOfByte png = new MatOfByte();
        Imgcodecs.imencode(".png", plain, png);
        budget = ErrorEstimator.estimate(
                new ViewSolver.Solution(above, covariance, 0.1, 50, 0, 1e-6),
                new Ground(),
                new TraceableGround.HiddenArea(Polyline.closed(circle), 0, null, null, null, false, 0),
                built,
                List.of(),
                DamagedImageArea.of(Photo.of("plain.png", png.toArray())));
    }

    private record Ground() implements TraceableGround {
        @Override
        public LocatedGround located() {
            return new LocatedGround(List.of(), 0.03, 0, SCALE_SIGMA, null, null);
        }

        @Override
        public List<TraceNote> notes(ViewSolver.Solution solution) {
            return List.of();
        }

        @Override
        public HiddenAreaSearch search(DecodedPhoto picture, CameraView view) {
            throw new UnsupportedOperationException();
        }
    }

    private static double part(ErrorSource source) {
        return budget.parts().stream()
                .filter(part -> part.source() == source)
                .mapToDouble(ErrorBudget.Part::error95Mm)
                .findFirst()
                .orElse(0);
    }

    @Test
    void aLongerFocalLengthMakesAllSmaller() {
        assertThat(part(ErrorSource.Known.FOCAL_LENGTH)).isCloseTo(1.96 * FOCAL_SIGMA * RADIUS_MM, withinPercentage(2));
    }

    /** Half the handle's thickness is known to 0.15 mm, and so is how far the mid-plane is from the camera. */
    @Test
    void aHigherMidPlaneMakesAllSmaller() {
        assertThat(part(ErrorSource.Known.HANDLE_THICKNESS))
                .isCloseTo(1.96 * 0.15 / (DISTANCE_MM - HEIGHT_MM) * RADIUS_MM, withinPercentage(1));
    }

    /**
     * Both of a ground's scales err by themselves: the squares of what a point moves outwards add to cos⁴ + sin⁴ of its
     * direction, of which the mean round the circle is 3/4.
     */
    @Test
    void aGroundThatIsLargerMakesAllLarger() {
        assertThat(part(ErrorSource.Known.GROUND_SCALE))
                .isCloseTo(1.96 * SCALE_SIGMA * RADIUS_MM * Math.sqrt(0.75), withinPercentage(0.5));
    }

    /** A quarter of a pixel, where the points lie on the outline. */
    @Test
    void anEdgeIsPlacedToAPartOfAPixel() {
        double mmPerPx = (DISTANCE_MM - HEIGHT_MM) / FOCAL_PX;
        assertThat(part(ErrorSource.Known.EDGE_LOCALIZATION)).isCloseTo(1.96 * 0.25 * mmPerPx, withinPercentage(5));
    }

    @Test
    void partsAddBySquaresLargestFirst() {
        double squares = 0;
        for (ErrorBudget.Part part : budget.parts()) {
            squares += part.error95Mm() * part.error95Mm();
        }
        assertThat(budget.error95Mm()).isCloseTo(Math.sqrt(squares), within(1e-12));
        assertThat(budget.parts().get(0).source()).isEqualTo(ErrorSource.Known.FOCAL_LENGTH);
    }

    @Test
    void ofTheEdgeAreTwoOfTheParts() {
        ErrorBudget some = new ErrorBudget(
                13,
                List.of(
                        new ErrorBudget.Part(ErrorSource.Known.SHADOW, 12),
                        new ErrorBudget.Part(ErrorSource.Known.WEAK_EDGE, 4),
                        new ErrorBudget.Part(ErrorSource.Known.EDGE_LOCALIZATION, 3)));
        assertThat(ErrorEstimator.ofEdge(some)).isEqualTo(5);
    }
}
