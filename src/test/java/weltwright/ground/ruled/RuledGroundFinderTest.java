package weltwright.ground.ruled;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.opencv.core.Core;
import org.opencv.core.Mat;
import org.opencv.core.MatOfByte;
import org.opencv.imgcodecs.Imgcodecs;
import weltwright.camera.CameraView;
import weltwright.camera.ControlPoint;
import weltwright.camera.GroundTruthCamera;
import weltwright.camera.PinholeCamera;
import weltwright.camera.adjustment.ViewSolver;
import weltwright.camera.lens.LensPrior;
import weltwright.error.UserFacingException;
import weltwright.geometry.Point;
import weltwright.ground.RenderedGround;
import weltwright.image.DecodedPhoto;
import weltwright.image.Photo;

/** Ruled grounds in pictures that were rendered, so that every crossing's place is known. */
class RuledGroundFinderTest {
    /**
     * A ruled rectangle on a table.
     *
     * @param boldEvery so many lines; 0 for none
     * @param hidden the upright strip that a knife hides, from left to right, from -lengthMm to lengthMm along y
     */
    private record Ruling(
            String name,
            double pitchMm,
            double halfWidthMm,
            double halfHeightMm,
            double ground,
            double line,
            double lineWidthMm,
            int boldEvery,
            double table,
            double[] hidden,
            double hiddenLengthMm)
            implements RenderedGround.Paint {

        @Override
        public double light(Point at, double footprint) {
            if (at.x() > hidden[0] && at.x() < hidden[1] && Math.abs(at.y()) < hiddenLengthMm) {
                // A handle with grain, a blade that mirrors a window.
                return at.y() < 0 ? 70 + 20 * Math.sin(at.x()) : 120 + 90 * Math.sin(at.y() / 17);
            }
            double margin = 0.6 * pitchMm;
            if (Math.abs(at.x()) > halfWidthMm + margin || Math.abs(at.y()) > halfHeightMm + margin) {
                return table + 8 * Math.sin(at.y() / 3 + Math.sin(at.x() / 40));
            }
            double ink = Math.max(
                    line(at.x(), at.y(), halfWidthMm, halfHeightMm, footprint),
                    line(at.y(), at.x(), halfHeightMm, halfWidthMm, footprint));
            // A scar across the mat, and light that falls off to one side.
            double scar = 0.4 * RenderedGround.cover(Math.abs(at.x() - 0.3 * at.y() - 41.3), 0.2, footprint);
            double shade = 1 + 0.3 * at.x() / 200;
            return Math.min(255, shade * (ground + (line - ground) * Math.max(ink, scar)));
        }

        private double line(double across, double along, double end, double far, double footprint) {
            long number = Math.round(across / pitchMm);
            if (Math.abs(number * pitchMm) > end + 1e-9 || Math.abs(along) > far + lineWidthMm / 2) {
                return 0;
            }
            boolean bold = boldEvery > 0 && Math.floorMod(number, boldEvery) == 0;
            double half = lineWidthMm / 2 * (bold ? 2 : 1);
            return RenderedGround.cover(Math.abs(across - number * pitchMm), half, footprint);
        }

        /** Crossings with all four arms in the open. */
        List<Point> openCrossings() {
            List<Point> open = new ArrayList<>();
            for (double x = pitchMm - halfWidthMm; x < halfWidthMm - pitchMm / 2; x += pitchMm) {
                for (double y = pitchMm - halfHeightMm; y < halfHeightMm - pitchMm / 2; y += pitchMm) {
                    if (x < hidden[0] - pitchMm || x > hidden[1] + pitchMm || Math.abs(y) > hiddenLengthMm + pitchMm) {
                        open.add(new Point(x, y));
                    }
                }
            }
            return open;
        }

        @Override
        public String toString() {
            return name;
        }
    }

    private static final Ruling GREEN_MAT =
            new Ruling("mat in cm", 10, 150, 200, 60, 170, 0.7, 5, 40, new double[] {-17, 14}, 110);
    private static final Ruling SQUARED_PAPER =
            new Ruling("squared paper", 5, 100, 140, 200, 130, 0.5, 0, 110, new double[] {-13, 9}, 60);
    private static final Ruling INCH_MAT =
            new Ruling("mat in inches", 25.4, 152.4, 101.6, 150, 40, 0.8, 4, 170, new double[] {-16, 15}, 75);
    private static final Ruling PALE_MAT =
            new Ruling("pale lines", 10, 120, 160, 90, 104, 0.8, 0, 60, new double[] {0, 24}, 100);

    /** From rim to rim: no line leads from one side to the other. */
    private static final Ruling CUT_IN_TWO =
            new Ruling("cut in two", 10, 150, 200, 60, 170, 0.7, 5, 40, new double[] {-16, 23}, 500);

    static Stream<Arguments> scenes() {
        return Stream.of(
                scene(GREEN_MAT, new RenderedGround(900, 0.06, 12, 31, 400, 0.6, 2)),
                scene(GREEN_MAT, new RenderedGround(900, -0.06, 22, -8, 380, 0, 4)),
                scene(SQUARED_PAPER, new RenderedGround(900, 0.03, 8, 93, 260, 0.5, 2)),
                scene(INCH_MAT, new RenderedGround(850, -0.04, 15, 47, 350, 0.8, 2)),
                scene(PALE_MAT, new RenderedGround(950, 0, 18, 12, 390, 0.5, 2)),
                scene(CUT_IN_TWO, new RenderedGround(900, 0.04, 14, 10, 420, 0.5, 2)));
    }

    private static Arguments scene(Ruling ruling, RenderedGround ground) {
        return Arguments.of(ruling, ground);
    }

    @ParameterizedTest
    @MethodSource("scenes")
    void findsTheCrossingsAndCountsThemRight(Ruling ruling, RenderedGround ground) {
        try (DecodedPhoto picture = DecodedPhoto.decode(ground.photo(ruling, 1))) {
            RuledGroundFinder.Found found = RuledGroundFinder.find(picture, ruling.pitchMm(), ruling.pitchMm());

            assertThat(found.linesLighter()).isEqualTo(ruling.line() > ruling.ground());
            List<ControlPoint> crossings = found.crossings();
            List<Point> truth = trueFrame(crossings, ruling, ground);
            List<Point> seen = ground.pixels(truth);
            List<Double> off = new ArrayList<>();
            for (int i = 0; i < seen.size(); i++) {
                off.add(seen.get(i).distance(crossings.get(i).pixel()));
            }
            off.sort(null);
            // Half of a pitch would be 5 to 40 pixels: one line miscounted would show.
            assertThat(off.get(off.size() - 1)).as("greatest error, px").isLessThan(1.0);
            assertThat(off.get(off.size() / 2)).as("median error, px").isLessThan(0.1);
            assertThat(off.get(off.size() * 95 / 100)).as("95th percentile, px").isLessThan(0.3);

            long open = ground.pixels(ruling.openCrossings()).stream()
                    .filter(p -> ground.shows(p, 0.6 * ruling.pitchMm() * ground.focalPx() / ground.distanceMm()))
                    .count();
            assertThat((double) crossings.size()).as("found, of " + open).isGreaterThan(0.93 * open);

            ViewSolver.Solution solution = ViewSolver.solve(
                    crossings,
                    picture.widthPx(),
                    picture.heightPx(),
                    ground.looseKnowledgeOfFocalLength(),
                    RuledGroundFinder.STRETCH_SIGMA);
            PinholeCamera camera = solution.view().camera();
            assertThat(camera.focalPx()).isCloseTo(ground.focalPx(), within(0.006 * ground.focalPx()));
            assertThat(solution.view().eye().z()).isPositive();
        }
    }

    /**
     * The crossings' places in the frame of the rendering, which may be shifted by whole lines and turned by quarters,
     * but not mirrored.
     */
    private static List<Point> trueFrame(List<ControlPoint> crossings, Ruling ruling, RenderedGround ground) {
        List<Point> best = null;
        double least = Double.MAX_VALUE;
        for (int quarter = 0; quarter < 4; quarter++) {
            int turns = quarter;
            List<Point> turned =
                    crossings.stream().map(c -> turned(c.onGround(), turns)).toList();
            int lines = (int) (Math.max(ruling.halfWidthMm(), ruling.halfHeightMm()) / ruling.pitchMm());
            for (int i = -lines; i <= lines; i++) {
                for (int j = -lines; j <= lines; j++) {
                    Point shift = new Point(i * ruling.pitchMm(), j * ruling.pitchMm());
                    List<Point> probe = Stream.of(0, turned.size() / 2, turned.size() - 1)
                            .map(k -> turned.get(k).plus(shift))
                            .toList();
                    List<Point> seen = ground.pixels(probe);
                    double off = seen.get(0).distance(crossings.get(0).pixel())
                            + seen.get(1)
                                    .distance(crossings.get(turned.size() / 2).pixel())
                            + seen.get(2)
                                    .distance(crossings.get(turned.size() - 1).pixel());
                    if (off < least) {
                        least = off;
                        best = turned.stream().map(p -> p.plus(shift)).toList();
                    }
                }
            }
        }
        return best;
    }

    private static Point turned(Point p, int quarters) {
        Point turned = p;
        for (int k = 0; k < quarters; k++) {
            turned = turned.left();
        }
        return turned;
    }

    /** Lines that blur into each other must not be counted by threes: right, or refused, but never wrong. */
    @ParameterizedTest
    @ValueSource(doubles = {2, 3, 4, 5})
    void aBlurredRulingIsNotTakenForAWiderOne(double blurPx) {
        RenderedGround ground = new RenderedGround(900, 0.03, 14, 93, 260, blurPx, 1);
        try (DecodedPhoto picture = DecodedPhoto.decode(ground.photo(SQUARED_PAPER, 1))) {
            List<ControlPoint> crossings = RuledGroundFinder.find(picture, 5, 5).crossings();
            CameraView view = ViewSolver.solve(
                            crossings, picture.widthPx(), picture.heightPx(), LensPrior.ofFocal(900, 0.03))
                    .view();
            assertThat(view.eye().norm()).isCloseTo(260, within(13.0));
        } catch (UserFacingException refused) {
            assertThat(blurPx).as("refused: " + refused.getMessage()).isGreaterThan(2.5);
        }
    }

    /** Red lines on a green mat that are just as light, by the weights of grey (ITU-R BT.601: 0.299 and 0.587). */
    @Test
    void linesMayShowInOneColourOnly() {
        Photo grey = new RenderedGround(900, 0.02, 12, 31, 400, 0.6, 2).photo(GREEN_MAT, 1);
        Mat green = Imgcodecs.imdecode(new MatOfByte(grey.bytes()), Imgcodecs.IMREAD_GRAYSCALE);
        Mat red = new Mat();
        Core.convertScaleAbs(green, red, -0.587 / 0.299 / 3, 160);
        Core.convertScaleAbs(green, green, 1.0 / 3, 60);
        Mat coloured = new Mat();
        Core.merge(List.of(Mat.zeros(green.size(), green.type()), green, red), coloured);
        MatOfByte png = new MatOfByte();
        Imgcodecs.imencode(".png", coloured, png);
        try (DecodedPhoto picture = DecodedPhoto.decode(Photo.of("coloured.png", png.toArray()))) {
            assertThat(RuledGroundFinder.find(picture, 10, 10).crossings()).hasSizeGreaterThan(900);
        }
    }

    @Test
    void aTableOfPlanksIsNoRuledGround() {
        RenderedGround.Paint planks = (at, footprint) -> 140
                - 60 * RenderedGround.cover(Math.abs(at.x() - 20 * Math.rint(at.x() / 20)), 0.5, footprint)
                + 10 * Math.sin(at.y() / 7 + at.x());
        assertThatNoneIsFoundIn(new RenderedGround(900, 0, 12, 10, 400, 0.5, 2).photo(planks, 1));
    }

    @Test
    void noiseIsNoRuledGround() {
        Random random = new Random(7);
        assertThatNoneIsFoundIn(
                new RenderedGround(900, 0, 12, 10, 400, 1.2, 2).photo((at, footprint) -> 255 * random.nextDouble(), 1));
    }

    @Test
    void aBlankGroundIsNoRuledGround() {
        assertThatNoneIsFoundIn(new RenderedGround(900, 0, 12, 10, 400, 0, 0).photo((at, footprint) -> 128, 1));
    }

    private static void assertThatNoneIsFoundIn(Photo photo) {
        try (DecodedPhoto picture = DecodedPhoto.decode(photo)) {
            assertThatThrownBy(() -> RuledGroundFinder.find(picture, 10, 10))
                    .isInstanceOf(UserFacingException.class)
                    .hasMessageContaining("ruled ground");
        }
    }

    @ParameterizedTest
    @CsvSource({"droppoint-mat-cm, 10, true", "wharncliffe-graph, 5, false"})
    void findsTheCameraOfThePhotos(String name, double pitchMm, boolean lighter) throws IOException {
        GroundTruthCamera camera = GroundTruthCamera.of(name);
        try (DecodedPhoto picture = camera.picture()) {
            RuledGroundFinder.Found found = RuledGroundFinder.find(picture, pitchMm, pitchMm);
            ViewSolver.Solution solution =
                    camera.foundFrom(found.crossings(), picture, RuledGroundFinder.STRETCH_SIGMA);

            assertThat(found.linesLighter()).isEqualTo(lighter);
            assertThat(solution.pixelSigma()).isLessThan(0.15);
            assertThat(solution.inliers())
                    .isGreaterThan((int) (0.95 * found.crossings().size()));
        }
    }
}
