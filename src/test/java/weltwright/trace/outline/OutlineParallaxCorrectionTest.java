package weltwright.trace.outline;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import weltwright.camera.CameraView;
import weltwright.camera.PinholeCamera;
import weltwright.camera.Plane;
import weltwright.camera.Vector3;
import weltwright.geometry.Point;
import weltwright.geometry.Polyline;
import weltwright.geometry.RigidMotion;
import weltwright.geometry.curve.Outline;
import weltwright.geometry.curve.OutlineNode;
import weltwright.knife.HandleFrontStep;
import weltwright.knife.HandleSection;
import weltwright.knife.Landmarks;
import weltwright.knife.Silhouette;
import weltwright.knife.ThicknessProfile;

/**
 * A knife of 200 by 24 mm, turned by a quarter and moved on the ground, seen from straight above a place beside it: by
 * similar triangles each mm of height is seen moved by the distance from that place over the camera's height.
 */
class OutlineParallaxCorrectionTest {
    private static final double DISTANCE_MM = 400;
    private static final double HEIGHT_MM = 8;
    private static final double SPINE_MM = 4;
    private static final double HANDLE_MM = 18;
    private static final double HALF_MM = 12;
    private static final double FRONT_PART = 0.8;
    private static final RigidMotion ON_GROUND = new RigidMotion(Math.PI / 2, new Point(60, 30));
    private static final OutlineParallaxCorrection CORRECTION = correction(1);

    private static OutlineParallaxCorrection correction(double spineOnLeft) {
        return new OutlineParallaxCorrection(
                new ThicknessParallax(SPINE_MM, 0.4, HANDLE_MM, ThicknessProfile.NONE, HandleSection.ROUND, false),
                new CameraView(
                        new PinholeCamera(2000, 1000, 1000, 0, 0),
                        new Vector3(Math.PI, 0, 0),
                        new Vector3(0, 0, DISTANCE_MM)),
                new Plane(HEIGHT_MM, new Point(0, 0)),
                ON_GROUND,
                Polyline.closed(List.of(
                        new Point(-100, -HALF_MM),
                        new Point(100, -HALF_MM),
                        new Point(100, HALF_MM),
                        new Point(-100, HALF_MM))),
                0,
                100,
                -100,
                spineOnLeft,
                FRONT_PART);
    }

    /** In the knife's frame: from a place towards the camera's foot, over how far the camera is above it. */
    private static Point lean(Point at) {
        return ON_GROUND.inverse().apply(new Point(0, 0)).minus(at).times(1 / (DISTANCE_MM - HEIGHT_MM));
    }

    @Test
    void linesOfSightLeanTowardsTheCamera() {
        for (Point at : List.of(new Point(-80, 12), new Point(0, -12), new Point(70, 3))) {
            assertThat(CORRECTION.lean(at).distance(lean(at))).isLessThan(1e-9);
        }
    }

    /** A square rim shows half of its thickness times the lean. */
    @Test
    void aSpineShowsItsFarOrNearCorner() {
        Point at = new Point(10, HALF_MM);
        double across = lean(at).y();
        assertThat(CORRECTION.shift(at, new Point(0, 1)).outMm())
                .isCloseTo(SPINE_MM / 2 * Math.abs(across) * ThicknessParallax.taper(0.1), within(1e-9));
    }

    /**
     * Whatever the doubt of the side was, the outline becomes the one from which a sure correction was taken off, but
     * for the turn of its normals at the tip, which is cut square here.
     */
    @ParameterizedTest
    @CsvSource({"0.5, true", "0.5, false", "0.3, true", "1, false"})
    void aSpineThatIsToldGivesTheOutlineOfASureTrace(double probability, boolean onLeft) {
        Silhouette sure = withoutThickness(correction(onLeft ? 1 : 0), onLeft);
        Silhouette doubtful = withoutThickness(correction(probability), onLeft);
        Silhouette told = correction(probability).withSpineTold(doubtful);
        for (int i = 0; i < told.outline().nodes().size(); i++) {
            Point at = told.outline().nodes().get(i).at();
            assertThat(at.distance(sure.outline().nodes().get(i).at()))
                    .as("at %.0f, %.0f", at.x(), at.y())
                    .isLessThan(0.02);
        }
    }

    /** The knife with its displacement taken off at places along both sides, and with a pointed tip. */
    private static Silhouette withoutThickness(OutlineParallaxCorrection correction, boolean spineOnLeft) {
        List<OutlineNode> nodes = new ArrayList<>(List.of(new OutlineNode(new Point(100, 0), true)));
        for (int side : new int[] {1, -1}) {
            for (int x : side > 0 ? new int[] {99, 80, 50, 10, -40, -90} : new int[] {-90, -40, 10, 50, 80, 99}) {
                Point p = new Point(x, side * HALF_MM);
                Point outward = new Point(0, side);
                nodes.add(new OutlineNode(
                        p.minus(outward.times(correction.shift(p, outward).outMm())), true));
            }
        }
        Point heel = new Point(0, -HALF_MM);
        return new Silhouette(
                new Outline(nodes), new Landmarks(new Point(100, 0), heel, heel.times(-1), heel), spineOnLeft);
    }

    /** An ellipse appears as wide as its support function across the line of sight, and is this much narrower. */
    @Test
    void aHandleShowsTheSupportOfItsSection() {
        Point at = new Point(-50, -HALF_MM);
        double across = -lean(at).y();
        double out = CORRECTION.shift(at, new Point(0, -1)).outMm();
        assertThat(Math.hypot(HALF_MM - out, HANDLE_MM / 2 * across)).isCloseTo(HALF_MM, within(1e-9));
    }

    /** At the butt's end, whose normal runs along the knife, a handle's side says nothing. */
    @Test
    void aHandlesEndIsLeftToTheButt() {
        assertThat(CORRECTION.shift(new Point(-100, 0), new Point(-1, 0)).outMm())
                .isZero();
    }

    /**
     * The end of a square plate shows half of its thickness times the lean along the knife, whatever the lean across.
     */
    @Test
    void aBladesEndThatStandsProudShowsItsOwnThickness() {
        Point onSpine = new Point(0, HALF_MM);
        assertThat(CORRECTION.bladeEndMm(onSpine, 1))
                .isCloseTo(SPINE_MM / 2 * Math.abs(lean(onSpine).x()), within(1e-9));
        Point onEdge = new Point(0, -HALF_MM);
        assertThat(CORRECTION.bladeEndMm(onEdge, -1))
                .isCloseTo(0.4 / 2 * Math.abs(lean(onEdge).x()), within(1e-9));
    }

    /**
     * Source: the definition of an ellipse. The rim of a round handle's front is seen beyond the front, at x = 0, by
     * its height times the lean along the knife. The step was found a little way down the rim; it begins at the side.
     */
    @Test
    void theRimOfAFrontBelongsToItsStep() {
        double c = FRONT_PART * HANDLE_MM / 2;
        double lean = Math.abs(lean(new Point(0, -HALF_MM)).x());
        List<Point> points = new ArrayList<>();
        for (double x = -20; x < 0; x += 0.2) {
            points.add(new Point(x, -HALF_MM));
        }
        int side = points.size() - 1;
        for (double z = 0; z <= c; z += 0.1) {
            points.add(new Point(z * lean, -HALF_MM * Math.sqrt(1 - z * z / (c * c))));
        }
        int found = side + 25;
        points.add(new Point(100, -1));
        points.add(new Point(-20, HALF_MM));
        HandleFrontStep step =
                CORRECTION.withRim(Polyline.closed(points), new HandleFrontStep(found, points.size() - 3));
        assertThat(points.get(step.onHandle()).x()).isCloseTo(0, within(0.1));
        assertThat(points.get(step.onHandle()).y()).isCloseTo(-HALF_MM, within(0.1));
        assertThat(step.onBlade()).isEqualTo(points.size() - 3);
    }

    /**
     * Source: the definition of an ellipse, of which a round guard is four fifths as thick as the handle. Of the points
     * of its back that appear at a place, the one farthest towards the butt is visible.
     */
    @Test
    void aGuardsBackShowsTheRimOfItsSection() {
        double c = FRONT_PART * HANDLE_MM / 2;
        for (double beside : new double[] {-9, -3, 0, 6}) {
            Point at = new Point(-6, beside);
            Point lean = lean(at);
            double w = Math.sqrt(HALF_MM * HALF_MM - Math.pow(c * lean.y(), 2));
            double farthest = Double.NEGATIVE_INFINITY;
            for (int i = 0; i < 100_000; i++) {
                double angle = 2 * Math.PI * i / 100_000;
                double z = c * Math.sin(angle);
                if (Math.abs(w * Math.cos(angle) - z * lean.y() - beside) < 0.002) {
                    farthest = Math.max(farthest, z * lean.x());
                }
            }
            assertThat(CORRECTION.guardBackMm(at))
                    .as("%.0f mm beside the middle", beside)
                    .isCloseTo(farthest, within(0.01));
        }
    }
}
