package weltwright.ground.paper;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import weltwright.camera.CameraView;
import weltwright.camera.GroundTruthCamera;
import weltwright.camera.Plane;
import weltwright.camera.adjustment.ViewSolver;
import weltwright.camera.lens.LensPrior;
import weltwright.error.UserFacingException;
import weltwright.geometry.Point;
import weltwright.ground.RenderedGround;
import weltwright.image.DecodedPhoto;

/** Sheets of paper in pictures that were rendered, so that every corner's place is known. */
class PaperSheetFinderTest {
    /** ISO 216. */
    private static final Sheet A4 = new Sheet(210, 297, 60, false, 1);

    /** ANSI/ASME Y14.1, size A. */
    private static final Sheet LETTER = new Sheet(215.9, 279.4, 90, true, 0.6);

    /**
     * A sheet on a table; a knife lies on it.
     *
     * @param knifeOver whether the knife sticks out over an edge, its bright blade outside and its dark handle inside
     * @param shadow how much of the light reaches the lower left part, where a shadow's edge crosses the sheet
     */
    private record Sheet(double widthMm, double heightMm, double table, boolean knifeOver, double shadow)
            implements RenderedGround.Paint {
        @Override
        public double light(Point at, double footprint) {
            double lit = at.x() + at.y() < -90 ? shadow : 1;
            double knife = at.y() - (knifeOver ? heightMm / 2 : 0);
            if (Math.abs(at.x() - 20) < 14 && Math.abs(knife) < 80) {
                return lit * (knife > 0 ? 215 : 30);
            }
            double inside = Math.min(widthMm / 2 - Math.abs(at.x()), heightMm / 2 - Math.abs(at.y()));
            // One corner is bent under.
            inside = Math.min(inside, (widthMm / 2 + heightMm / 2 - 7 - at.x() + at.y()) / Math.sqrt(2));
            double paper = RenderedGround.cover(-inside, 0, footprint);
            double wood = table + 10 * Math.sin(at.x() / 3 + Math.sin(at.y() / 50));
            return lit * (220 * paper + wood * (1 - paper));
        }

        List<Point> corners() {
            return List.of(
                    new Point(-widthMm / 2, -heightMm / 2),
                    new Point(widthMm / 2, -heightMm / 2),
                    new Point(widthMm / 2, heightMm / 2),
                    new Point(-widthMm / 2, heightMm / 2));
        }
    }

    static Stream<Arguments> scenes() {
        return Stream.of(
                Arguments.of(A4, new RenderedGround(900, 0.06, 14, 86, 420, 0.6, 2)),
                Arguments.of(A4, new RenderedGround(900, -0.06, 20, 7, 460, 0.8, 2)),
                Arguments.of(LETTER, new RenderedGround(950, 0, 18, 100, 460, 0.5, 2)),
                Arguments.of(LETTER, new RenderedGround(900, 0.03, 12, -28, 480, 0.7, 3)));
    }

    @ParameterizedTest
    @MethodSource("scenes")
    void findsWhereTheSheetLies(Sheet sheet, RenderedGround ground) {
        // The tone curve of pictures: about the square root of light (IEC 61966-2-1: 1/2.2 on the whole).
        try (DecodedPhoto picture = DecodedPhoto.decode(ground.photo(sheet, 2.2))) {
            PaperSheetFinder.Found found = PaperSheetFinder.find(picture, sheet.widthMm(), sheet.heightMm());
            CameraView view = ViewSolver.solve(
                            found.edges(),
                            picture.widthPx(),
                            picture.heightPx(),
                            LensPrior.ofFocal(ground.focalPx(), 0.03),
                            PaperSheetFinder.STRETCH_SIGMA)
                    .view();

            assertThat(view.camera().focalPx()).isCloseTo(ground.focalPx(), within(0.02 * ground.focalPx()));
            // The sheet's own corners, by the view: to a tenth of a mm, though one of them is bent.
            double x = found.sizeXMm() / 2;
            double y = found.sizeYMm() / 2;
            List<Point> corners = List.of(new Point(-x, -y), new Point(x, -y), new Point(x, y), new Point(-x, y));
            for (Point seen : ground.pixels(sheet.corners())) {
                double off = corners.stream()
                        .mapToDouble(c -> view.intersection(seen, Plane.GROUND).distance(c))
                        .min()
                        .orElseThrow();
                assertThat(off).as("corner's error, mm").isLessThan(0.15);
            }
            assertThat(view.eye().z()).isPositive();
        }
    }

    @Test
    void itTellsPortraitFromLandscape() {
        Sheet sheet = new Sheet(210, 297, 60, false, 1);
        try (DecodedPhoto upright =
                        DecodedPhoto.decode(new RenderedGround(800, 0, 10, 3, 480, 0.5, 2).photo(sheet, 2.2));
                DecodedPhoto across =
                        DecodedPhoto.decode(new RenderedGround(800, 0, 10, 95, 480, 0.5, 2).photo(sheet, 2.2))) {
            assertThat(PaperSheetFinder.find(upright, 297, 210).sizeYMm()).isEqualTo(297);
            assertThat(PaperSheetFinder.find(across, 210, 297).sizeYMm()).isEqualTo(210);
        }
    }

    /** A4 and Letter differ by a tenth in their proportions: no lens of a phone makes one look like the other. */
    @Test
    void itDoesNotTakeOneSizeForAnother() {
        try (DecodedPhoto picture =
                DecodedPhoto.decode(new RenderedGround(900, 0.02, 16, 80, 440, 0.5, 2).photo(A4, 2.2))) {
            assertThatThrownBy(() -> PaperSheetFinder.find(picture, 215.9, 279.4))
                    .isInstanceOf(UserFacingException.class)
                    .hasMessageContaining("size");
        }
    }

    @Test
    void withoutPaperItSaysSo() {
        RenderedGround.Paint wood = (at, footprint) -> 120 + 20 * Math.sin(at.x() / 3 + Math.sin(at.y() / 50));
        try (DecodedPhoto picture =
                DecodedPhoto.decode(new RenderedGround(900, 0, 10, 5, 420, 0.5, 2).photo(wood, 2.2))) {
            assertThatThrownBy(() -> PaperSheetFinder.find(picture, 210, 297))
                    .isInstanceOf(UserFacingException.class)
                    .hasMessageContaining("No sheet of paper");
        }
    }

    @Test
    void findsTheCameraOfTheSharedPhoto() throws IOException {
        GroundTruthCamera camera = GroundTruthCamera.of("utility-paper-ceiling");
        try (DecodedPhoto picture = camera.picture()) {
            PaperSheetFinder.Found found = PaperSheetFinder.find(picture, 210, 297);
            camera.foundFrom(found.edges(), picture, PaperSheetFinder.STRETCH_SIGMA);
        }
    }
}
