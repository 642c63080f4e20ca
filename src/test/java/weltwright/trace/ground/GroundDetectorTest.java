package weltwright.trace.ground;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.file.Path;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import weltwright.camera.lens.LensPrior;
import weltwright.error.UserFacingException;
import weltwright.geometry.Point;
import weltwright.ground.RenderedGround;
import weltwright.image.DecodedPhoto;
import weltwright.image.Photo;
import weltwright.units.PrintScale;

/** What a knife lies on, told by the picture alone: on rendered scenes, whose truth files name the ground. */
class GroundDetectorTest {
    private static final Path SCENES = Path.of("src/test/resources/scenes");

    @ParameterizedTest
    @ValueSource(strings = {"clip-sheet-a4", "dagger-sheet-a3", "hunter-sheet-letter", "skinner-sheet-letter"})
    void knowsTheSheetByItsMarkers(String scene) {
        assertThat(seen(scene)).isInstanceOf(GroundDetector.Sheet.class);
    }

    /** The pitch is left open: a small ground seen from near looks as a large one from afar. */
    @ParameterizedTest
    @ValueSource(strings = {"clip-mat-black", "dagger-mat-blue", "paring-graph", "recurve-mat-inch", "tanto-graph"})
    void knowsARuling(String scene) {
        assertThat(seen(scene)).isInstanceOf(GroundDetector.Ruling.class);
    }

    @ParameterizedTest
    @CsvSource({"paring-paper-a4, A4", "tanto-paper-a4, A4", "drop-paper-letter, LETTER"})
    void tellsThePaperBySize(String scene, GroundChoice.Paper size) {
        assertThat(seen(scene)).isInstanceOfSatisfying(GroundDetector.Paper.class, paper -> {
            assertThat(paper.size()).isEqualTo(size);
            assertThat(Math.max(paper.found().sizeXMm(), paper.found().sizeYMm()))
                    .isEqualTo(size.heightMm());
        });
    }

    /** ISO 216 and ANSI/ASME Y14.1 differ by 9 % in their proportions, which a tilt of 20 degrees does not hide. */
    @ParameterizedTest
    @CsvSource({"210, 297, 20, 15", "215.9, 279.4, 20, -40", "297, 210, 5, 0", "279.4, 215.9, 12, 70"})
    void tellsProportionsFromTilt(double widthMm, double heightMm, double tilt, double turn) {
        GroundChoice.Paper size = widthMm * heightMm == 210 * 297.0 ? GroundChoice.Paper.A4 : GroundChoice.Paper.LETTER;
        assertThat(seen(paper(widthMm, heightMm, tilt, turn)))
                .isInstanceOfSatisfying(
                        GroundDetector.Paper.class,
                        paper -> assertThat(paper.size()).isEqualTo(size));
    }

    @ParameterizedTest
    @CsvSource({"230, 230", "200, 270"})
    void asksForASizeThatIsNeither(double widthMm, double heightMm) {
        assertThat(seen(paper(widthMm, heightMm, 10, 20))).isInstanceOf(GroundDetector.UnsizedPaper.class);
    }

    /** A dark board in the proportions of A4, on a darker table in the light of a lamp: it may be of any size. */
    @Test
    void aBoardIsNotTakenForPaper() {
        Photo board = scene(8, 15)
                .photo(
                        (at, footprint) -> {
                            double inside = Math.min(148.5 - Math.abs(at.x()), 105 - Math.abs(at.y()));
                            boolean lamp = at.distance(new Point(210, 0)) < 55;
                            return inside > 0 ? 80 : lamp ? 230 : 30;
                        },
                        1);
        assertThat(seen(board)).isInstanceOf(GroundDetector.None.class);
    }

    @Test
    void findsNothingOnABareTable() {
        assertThat(seen(scene().photo((at, footprint) -> 120 + 10 * Math.sin(at.x() / 3 + Math.sin(at.y() / 50)), 1)))
                .isInstanceOf(GroundDetector.None.class);
    }

    /** Its blue lines are a ruling too, and its page is white paper; but it is none of these. */
    @Test
    void aSheetOfWhichTooLittleShowsIsNotTakenForAnotherGround() throws IOException {
        BufferedImage photo = ImageIO.read(SCENES.resolve("clip-sheet-a4.jpg").toFile());
        Graphics2D g = photo.createGraphics();
        g.setColor(Color.GRAY);
        g.fillRect(photo.getWidth() / 4, 0, photo.getWidth(), photo.getHeight());
        g.dispose();
        ByteArrayOutputStream png = new ByteArrayOutputStream();
        ImageIO.write(photo, "png", png);
        assertThatThrownBy(() -> seen(Photo.of("covered.png", png.toByteArray())))
                .isInstanceOf(UserFacingException.class)
                .hasMessageContaining("Too little of the reference sheet's frame");
    }

    private static RenderedGround scene() {
        return scene(8, 0);
    }

    private static RenderedGround scene(double tilt, double turn) {
        return new RenderedGround(900, 0.02, tilt, turn, 420, 0.7, 1.5);
    }

    private static Photo paper(double widthMm, double heightMm, double tilt, double turn) {
        return scene(tilt, turn)
                .photo(
                        (at, footprint) -> {
                            double inside = Math.min(widthMm / 2 - Math.abs(at.x()), heightMm / 2 - Math.abs(at.y()));
                            double paper = RenderedGround.cover(-inside, 0, footprint);
                            boolean knife = Math.abs(at.x() - 10) < 12 && Math.abs(at.y()) < 70;
                            return knife ? 40 : 215 * paper + 70 * (1 - paper);
                        },
                        2.2);
    }

    private static GroundDetector.Detection seen(String scene) {
        return seen(Photo.read(SCENES.resolve(scene + ".jpg")));
    }

    private static GroundDetector.Detection seen(Photo photo) {
        try (DecodedPhoto picture = DecodedPhoto.decode(photo)) {
            // No more is known of the lens than what holds for all phones.
            LensPrior lens = LensPrior.ofFocal(27 / Math.hypot(36, 24) * picture.diagonalPx(), 0.5);
            return GroundDetector.find(picture, PrintScale.TRUE, lens);
        }
    }
}
