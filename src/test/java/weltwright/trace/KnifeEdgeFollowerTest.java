package weltwright.trace;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.opencv.core.CvType;
import org.opencv.core.Mat;
import org.opencv.core.Scalar;
import weltwright.camera.Plane;
import weltwright.camera.rectification.PlaneRaster;
import weltwright.geometry.Point;
import weltwright.geometry.Polyline;
import weltwright.image.DecodedPhoto;
import weltwright.trace.appearance.PrintPattern;
import weltwright.trace.edge.EdgePoint;
import weltwright.trace.ground.TraceableGround;
import weltwright.trace.visibility.PrintVisibility;
import weltwright.trace.visibility.PrintedLineEnds;

/** A dark ellipse drawn on paper, followed from a contour that is a millimetre too large. */
class KnifeEdgeFollowerTest {
    private static final double A_MM = 40;
    private static final double B_MM = 12;

    private static Polyline ellipse(double more) {
        return Polyline.closed(IntStream.range(0, 400)
                .mapToDouble(i -> 2 * Math.PI * i / 400)
                .mapToObj(t -> new Point((A_MM + more) * Math.cos(t), (B_MM + more) * Math.sin(t)))
                .toList());
    }

    /** Its value over the length of its gradient: near an ellipse, the distance from it. */
    private static double offMm(Point at) {
        double value = at.x() * at.x() / (A_MM * A_MM) + at.y() * at.y() / (B_MM * B_MM) - 1;
        Point gradient = new Point(2 * at.x() / (A_MM * A_MM), 2 * at.y() / (B_MM * B_MM));
        return value / gradient.norm();
    }

    private static TraceableGround.HiddenArea hidden() {
        PlaneRaster raster = new PlaneRaster(new Point(-50, 20), 1, 100, 40);
        PrintPattern plain = new PrintPattern(
                raster,
                new Mat(40, 100, CvType.CV_8U, Scalar.all(255)),
                new Mat(40, 100, CvType.CV_8U, Scalar.all(0)),
                new byte[4000]);
        return new TraceableGround.HiddenArea(
                ellipse(1),
                1,
                plain,
                new PrintVisibility(List.of(), List.of(), new double[3]),
                PrintedLineEnds.none(),
                false,
                1);
    }

    @Test
    void followsTheEdgeAllRound() {
        OverheadScene scene = new OverheadScene(7, 660, 240, 0.8);
        try (DecodedPhoto picture =
                scene.picture(at -> offMm(at) < 0 ? new double[] {70, 80, 90} : OverheadScene.grey(210))) {
            List<Point> edge = new KnifeEdgeFollower(picture, scene.view(), hidden())
                    .around().stream()
                            .map(EdgePoint::pixel)
                            .map(px -> scene.view().intersection(px, Plane.GROUND))
                            .toList();
            assertThat(edge).allMatch(at -> Math.abs(offMm(at)) < 0.25);
            assertThat(edge.stream()
                            .mapToDouble(KnifeEdgeFollowerTest::offMm)
                            .average()
                            .orElseThrow())
                    .isCloseTo(0, within(0.03));
            assertThat(Polyline.closed(edge).lengthMm())
                    .as("a point each %.2f mm", KnifeEdgeFollower.STEP_MM)
                    .isCloseTo(edge.size() * KnifeEdgeFollower.STEP_MM, within(5.0));
        }
    }

    /** Finer than 11 pixels to the mm a picture is halved. */
    @Test
    void takesNoFinerPictureThanTellsAnything() {
        OverheadScene fine = new OverheadScene(12, 200, 200, 0.8);
        assertThat(KnifeEdgeFollower.fine(fine.view()).pxPerMm()).isCloseTo(6, within(0.01));
        OverheadScene coarse = new OverheadScene(10, 200, 200, 0.8);
        assertThat(KnifeEdgeFollower.fine(coarse.view())).isEqualTo(coarse.view());
    }
}
