package weltwright.camera.adjustment;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import weltwright.camera.ControlPoint;
import weltwright.camera.lens.LensPrior;
import weltwright.geometry.Point;
import weltwright.ground.RenderedGround;
import weltwright.image.opencv.OpenCvLibraries;

/** References that say less than where a point is: edges, and a ground that is not quite of the proportions given. */
class InexactControlPointsTest {
    private static final RenderedGround GROUND = new RenderedGround(900, 0.03, 15, 20, 420, 0, 0);
    private static final double X = 148.5;
    private static final double Y = 105;

    @BeforeAll
    static void load() {
        OpenCvLibraries.load();
    }

    /** What lies along an edge is left open, so points that are given the wrong place along it do no harm. */
    @Test
    void pointsOfEdgesCountAcrossOnly() {
        List<ControlPoint> edges = new ArrayList<>();
        for (int k = 1; k < 40; k++) {
            double t = k / 20.0 - 1;
            double slip = 2 * Math.sin(k);
            edges.add(edge(new Point(t * X, -Y), new Point(1, 0), slip));
            edges.add(edge(new Point(t * X, Y), new Point(-1, 0), slip));
            edges.add(edge(new Point(-X, t * Y), new Point(0, -1), slip));
            edges.add(edge(new Point(X, t * Y), new Point(0, 1), slip));
        }
        ViewSolver.Solution solution = ViewSolver.solve(
                edges, RenderedGround.WIDTH_PX, RenderedGround.HEIGHT_PX, GROUND.looseKnowledgeOfFocalLength());

        assertThat(solution.view().camera().focalPx()).isCloseTo(900, within(2.0));
        assertThat(solution.view().camera().k1()).isCloseTo(0.03, within(0.003));
        assertThat(solution.view().eye().norm()).isCloseTo(420, within(1.0));
    }

    private static ControlPoint edge(Point at, Point along, double slipMm) {
        return new ControlPoint(
                at.plus(along.times(slipMm)), GROUND.pixels(List.of(at)).get(0), Optional.of(along));
    }

    /** Cut 0.2 % too narrow: the lens is found no worse than it is said to be, though the fit is as good as perfect. */
    @Test
    void aGroundOfDoubtfulProportionsLeavesTheLensInDoubt() {
        List<Point> cut = new ArrayList<>();
        List<Point> nominal = new ArrayList<>();
        for (int i = -7; i <= 7; i++) {
            for (int j = -5; j <= 5; j++) {
                nominal.add(new Point(20 * i, 20 * j));
                cut.add(new Point(20 * i * 0.998, 20 * j));
            }
        }
        List<Point> pixels = GROUND.pixels(cut);
        List<ControlPoint> references = new ArrayList<>();
        for (int i = 0; i < pixels.size(); i++) {
            references.add(new ControlPoint(nominal.get(i), pixels.get(i)));
        }
        LensPrior exif = LensPrior.ofFocal(900, 0.02);
        ViewSolver.Solution trusting =
                ViewSolver.solve(references, RenderedGround.WIDTH_PX, RenderedGround.HEIGHT_PX, exif);
        ViewSolver.Solution doubting =
                ViewSolver.solve(references, RenderedGround.WIDTH_PX, RenderedGround.HEIGHT_PX, exif, 0.002);

        double off = Math.abs(Math.log(doubting.view().camera().focalPx() / 900));
        assertThat(off).isLessThan(2 * doubting.focalRelativeSigma());
        assertThat(off)
                .isLessThan(0.3 * Math.abs(Math.log(trusting.view().camera().focalPx() / 900)));
    }
}
