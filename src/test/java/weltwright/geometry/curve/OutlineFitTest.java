package weltwright.geometry.curve;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.locationtech.jts.algorithm.distance.DiscreteHausdorffDistance;
import weltwright.geometry.Point;
import weltwright.geometry.Polyline;
import weltwright.geometry.fit.SymmetricSystem;

/** Outlines fitted to points of shapes known in closed form, with noise put on. */
class OutlineFitTest {
    private static final double STEP_MM = 0.2;

    /** A lens: two arcs of radius 100 that meet in two corners 120 apart. */
    private static List<Point> lens(double noiseMm) {
        Random random = new Random(5);
        double half = Math.asin(0.6);
        List<Point> ring = new ArrayList<>();
        for (int side = 0; side < 2; side++) {
            int n = (int) (200 * half / STEP_MM);
            for (int i = 0; i < n; i++) {
                double a = -half + 2 * half * i / n;
                double r = 100 + noiseMm * random.nextGaussian();
                Point onLower = new Point(r * Math.sin(a), -r * Math.cos(a) + 80);
                ring.add(side == 0 ? onLower : onLower.times(-1));
            }
        }
        return ring;
    }

    @Test
    void findsTheCornersOfALens() {
        Polyline ring = Polyline.closed(lens(0.02));
        List<Integer> corners = new CornerFinder(ring).find();
        assertThat(corners).hasSize(2);
        for (int corner : corners) {
            assertThat(Math.abs(ring.points().get(corner).x())).isCloseTo(60, within(0.3));
        }
    }

    /** Source: closed form. Corners at (±60, 0); the arcs are 100 from (0, ±80). */
    @Test
    void keepsToTheLensWithFewNodes() {
        List<Point> ring = lens(0.05);
        double[] weight = new double[ring.size()];
        Arrays.fill(weight, 1);
        int[] corners = new CornerFinder(Polyline.closed(ring))
                .find().stream().mapToInt(i -> i).toArray();
        Outline outline = OutlineFit.fit(ring, weight, corners, 0.07);
        assertThat(outline.nodes()).hasSizeLessThan(30);
        double worst = 0;
        for (Point p : outline.sampled(0.5).points()) {
            Point centre = new Point(0, p.y() < 0 ? 80 : -80);
            worst = Math.max(worst, Math.abs(p.distance(centre) - 100));
        }
        assertThat(worst).isLessThan(0.08);
        for (OutlineNode node : outline.nodes()) {
            if (node.sharp()) {
                assertThat(Math.abs(node.at().x())).isCloseTo(60, within(0.15));
                assertThat(node.at().y()).isCloseTo(0, within(0.1));
            }
        }
    }

    /**
     * Source: closed form. Over 12 mm the arc of radius 100 is bridged from both sides; what is there counts for
     * nothing.
     */
    @Test
    void runsOnSmoothlyWherePointsCountForNothing() {
        List<Point> ring = lens(0.02);
        double[] weight = new double[ring.size()];
        Arrays.fill(weight, 1);
        for (int i = 0; i < ring.size(); i++) {
            Point p = ring.get(i);
            if (p.y() < 0 && Math.abs(p.x()) < 6) {
                ring.set(i, p.plus(new Point(0, -2)));
                weight[i] = 0;
            }
        }
        int[] corners = {0, ring.size() / 2};
        Outline outline = OutlineFit.fit(ring, weight, corners, 0.07);
        for (Point p : outline.sampled(0.5).points()) {
            if (p.y() < 0 && Math.abs(p.x()) < 6) {
                assertThat(p.distance(new Point(0, 80))).isCloseTo(100, within(0.15));
            }
        }
    }

    /** A circle has no corner, however tight it is, down to where a leatherworker would call it one. */
    @Test
    void seesNoCornerInACircle() {
        for (double radius : new double[] {3, 6, 20}) {
            List<Point> ring = new ArrayList<>();
            int n = (int) (2 * Math.PI * radius / STEP_MM);
            for (int i = 0; i < n; i++) {
                double a = 2 * Math.PI * i / n;
                ring.add(new Point(radius * Math.cos(a), radius * Math.sin(a)));
            }
            assertThat(new CornerFinder(Polyline.closed(ring)).find())
                    .as("radius " + radius)
                    .isEmpty();
        }
    }

    /** Source: the circumference of a circle, 2πr, and its area, πr²; JTS's discrete Hausdorff distance. */
    @Test
    void aSmoothOutlineThroughEightPointsOfACircleIsNearlyOne() {
        List<OutlineNode> nodes = new ArrayList<>();
        for (int i = 0; i < 16; i++) {
            double a = 2 * Math.PI * i / 16;
            nodes.add(new OutlineNode(new Point(50 * Math.cos(a), 50 * Math.sin(a)), i == 0));
        }
        Polyline curve = new Outline(nodes).sampled(0.25);
        List<Point> circle = new ArrayList<>();
        for (int i = 0; i < 720; i++) {
            circle.add(new Point(50 * Math.cos(Math.PI * i / 360), 50 * Math.sin(Math.PI * i / 360)));
        }
        assertThat(DiscreteHausdorffDistance.distance(
                        curve.lineString(), Polyline.closed(circle).lineString(), 0.5))
                .isLessThan(0.6);
        assertThat(curve.lengthMm()).isCloseTo(2 * Math.PI * 50, within(0.5));
        assertThat(curve.signedAreaMm2()).isCloseTo(Math.PI * 2500, within(25.0));
    }

    @Test
    void solvesWhatItFactored() {
        double[][] m = {{4, 1, 0.5}, {1, 9, -2}, {0.5, -2, 1e6}};
        double[] x = new SymmetricSystem(m).solve(new double[] {1, 2, 3});
        for (int i = 0; i < 3; i++) {
            double sum = 0;
            for (int j = 0; j < 3; j++) {
                sum += m[i][j] * x[j];
            }
            assertThat(sum).isCloseTo(i + 1, within(1e-9));
        }
    }

    /**
     * Source: geometry. Between two corners 2 mm apart the ring is level; beyond them it falls by 0.176 for each mm
     * from 0.22 mm lower. So the lines on either side meet the level one 1.25 mm inwards, past one another. The outline
     * must not cross itself there.
     */
    @Test
    void cornersCloseTogetherDoNotPassEachOther() {
        List<Point> ring = new ArrayList<>();
        List<Integer> corners = new ArrayList<>();
        addLine(ring, corners, new Point(-30, -20), new Point(32, -20));
        addLine(ring, corners, new Point(32, -20), new Point(32, -5.5));
        addLine(ring, corners, new Point(32, -5.5), new Point(2, -0.22));
        addLine(ring, corners, new Point(2, 0), new Point(0, 0));
        addLine(ring, corners, new Point(0, -0.22), new Point(-30, -5.5));
        addLine(ring, corners, new Point(-30, -5.5), new Point(-30, -20));
        // The end of the level stretch is a corner, and not the lower point that follows it.
        corners.set(4, corners.get(4) - 1);
        double[] weight = new double[ring.size()];
        Arrays.fill(weight, 1);
        Outline outline =
                OutlineFit.fit(ring, weight, corners.stream().mapToInt(i -> i).toArray(), 0.07);
        assertThat(outline.sampled(0.5).polygon().isValid()).isTrue();
    }

    /** Adds the points of a line without its end, the first of them as a corner. */
    private static void addLine(List<Point> ring, List<Integer> corners, Point from, Point to) {
        corners.add(ring.size());
        int steps = (int) Math.round(from.distance(to) / STEP_MM);
        for (int i = 0; i < steps; i++) {
            ring.add(from.towards(to, i / (double) steps));
        }
    }
}
