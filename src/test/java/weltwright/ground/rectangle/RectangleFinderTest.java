package weltwright.ground.rectangle;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import weltwright.camera.CameraView;
import weltwright.camera.Plane;
import weltwright.camera.adjustment.ViewSolver;
import weltwright.camera.lens.LensPrior;
import weltwright.geometry.Point;
import weltwright.ground.RenderedGround;
import weltwright.image.DecodedPhoto;
import weltwright.image.Photo;

/** Four corners set by hand on rendered grounds, on which every corner's place is known. */
class RectangleFinderTest {
    private static final double WIDTH = 250;
    private static final double HEIGHT = 180;
    private static final RenderedGround SCENE = new RenderedGround(900, 0.02, 14, 12, 420, 0.7, 1.5);

    /** A walk round it from the upper left corner. */
    private static final List<Point> CORNERS = SCENE.pixels(List.of(
            new Point(-WIDTH / 2, HEIGHT / 2),
            new Point(WIDTH / 2, HEIGHT / 2),
            new Point(WIDTH / 2, -HEIGHT / 2),
            new Point(-WIDTH / 2, -HEIGHT / 2)));

    /** Lighter or darker than the table, and set a few pixels off: what counts is the edge that the picture shows. */
    @ParameterizedTest
    @CsvSource({"210, 70", "60, 190"})
    void followsTheEdgesBetweenCornersSetRoughly(double board, double table) {
        try (DecodedPhoto picture = DecodedPhoto.decode(board(board, table))) {
            RectangleFinder.Found found = found(picture, offBy(3, CORNERS));
            assertThat(found.byEdges()).isTrue();
            assertThat(worstMm(picture, found)).isLessThan(0.2);
        }
    }

    /** Only marks on a plain table: nothing to follow between them. */
    @Test
    void takesTheCornersAloneWhereNoEdgesRunBetweenThem() {
        Photo bare = SCENE.photo((at, footprint) -> 140, 1);
        try (DecodedPhoto picture = DecodedPhoto.decode(bare)) {
            RectangleFinder.Found found = found(picture, CORNERS);
            assertThat(found.byEdges()).isFalse();
            assertThat(found.references()).hasSize(4);
            assertThat(worstMm(picture, found)).isLessThan(0.3);
        }
    }

    /** Source: the definition of a standard deviation, over corners set anew by a hand that is off by two pixels. */
    @Test
    void saysHowFarCornersSetByHandMayBeOff() {
        Photo bare = SCENE.photo((at, footprint) -> 140, 1);
        try (DecodedPhoto picture = DecodedPhoto.decode(bare)) {
            double squares = 0;
            double claimed = 0;
            int hands = 60;
            for (int i = 0; i < hands; i++) {
                // Of the lens no more is known than is said, so what is known of it is off as well.
                LensPrior lens = LensPrior.ofFocal(900 * Math.exp(0.03 * new Random(-i).nextGaussian()), 0.03);
                RectangleFinder.Found found = found(picture, shaken(CORNERS, i));
                ViewSolver.Solution solution = solve(picture, found, lens);
                double off = solution.view().translation().z() - 420;
                squares += off * off / hands;
                claimed += solution.covariance()[10][10] / hands;
            }
            assertThat(Math.sqrt(claimed / squares)).isBetween(0.7, 1.5);
        }
    }

    /** A walk the other way round, or from another corner, is the same rectangle. */
    @Test
    void takesTheCornersInEitherSense() {
        List<Point> backwards = new ArrayList<>(CORNERS);
        Collections.reverse(backwards); // from the lower left one, along the width first
        List<Point> onwards = List.of(CORNERS.get(1), CORNERS.get(2), CORNERS.get(3), CORNERS.get(0));
        try (DecodedPhoto picture = DecodedPhoto.decode(board(210, 70))) {
            assertThat(worstMm(picture, found(picture, backwards))).isLessThan(0.2);
            assertThat(solve(picture, RectangleFinder.find(picture, onwards, HEIGHT, WIDTH))
                            .view()
                            .eye()
                            .norm())
                    .isCloseTo(420, within(2.0));
        }
    }

    private static Photo board(double board, double table) {
        return SCENE.photo(
                (at, footprint) -> {
                    double inside = Math.min(WIDTH / 2 - Math.abs(at.x()), HEIGHT / 2 - Math.abs(at.y()));
                    double part = RenderedGround.cover(-inside, 0, footprint);
                    boolean knife = Math.abs(at.y() - 10) < 12 && Math.abs(at.x() - 60) < 90;
                    return knife ? 130 : board * part + table * (1 - part);
                },
                2.2);
    }

    private static RectangleFinder.Found found(DecodedPhoto picture, List<Point> corners) {
        return RectangleFinder.find(picture, corners, WIDTH, HEIGHT);
    }

    private static LensPrior lens() {
        return LensPrior.ofFocal(900, 0.03);
    }

    private static ViewSolver.Solution solve(DecodedPhoto picture, RectangleFinder.Found found) {
        return solve(picture, found, lens());
    }

    private static ViewSolver.Solution solve(DecodedPhoto picture, RectangleFinder.Found found, LensPrior lens) {
        return found.located().solve(picture, lens);
    }

    /** How far the sides between the true corners, and the diagonals, come out wrong. */
    private static double worstMm(DecodedPhoto picture, RectangleFinder.Found found) {
        CameraView view = solve(picture, found).view();
        List<Point> seen =
                CORNERS.stream().map(px -> view.intersection(px, Plane.GROUND)).toList();
        double worst = 0;
        for (int k = 0; k < 4; k++) {
            double side = k % 2 == 0 ? WIDTH : HEIGHT;
            worst = Math.max(worst, Math.abs(seen.get(k).distance(seen.get((k + 1) % 4)) - side));
        }
        return Math.max(worst, Math.abs(seen.get(0).distance(seen.get(2)) - Math.hypot(WIDTH, HEIGHT)));
    }

    private static List<Point> offBy(double px, List<Point> corners) {
        List<Point> off = new ArrayList<>();
        for (int k = 0; k < 4; k++) {
            off.add(corners.get(k).plus(new Point(k % 2 == 0 ? px : -px, k < 2 ? px : -px)));
        }
        return off;
    }

    private static List<Point> shaken(List<Point> corners, long seed) {
        Random hand = new Random(seed);
        return corners.stream()
                .map(p -> p.plus(new Point(2 * hand.nextGaussian(), 2 * hand.nextGaussian())))
                .toList();
    }
}
