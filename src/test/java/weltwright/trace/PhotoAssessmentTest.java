package weltwright.trace;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.File;
import java.io.IOException;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.UnaryOperator;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.opencv.core.Mat;
import org.opencv.core.MatOfByte;
import org.opencv.core.MatOfPoint2f;
import org.opencv.core.Rect;
import org.opencv.core.Scalar;
import org.opencv.core.Size;
import org.opencv.imgcodecs.Imgcodecs;
import org.opencv.imgproc.Imgproc;
import weltwright.camera.CameraView;
import weltwright.camera.Plane;
import weltwright.camera.Vector3;
import weltwright.geometry.Point;
import weltwright.image.DecodedPhoto;
import weltwright.image.Photo;
import weltwright.trace.capture.KnifeMark;
import weltwright.trace.capture.LensEvidence;
import weltwright.trace.capture.TraceSettings;
import weltwright.trace.ground.GroundChoice;
import weltwright.trace.report.PhotoAdvice;
import weltwright.trace.report.TraceNote;
import weltwright.units.MeasureUnit;
import weltwright.units.PrintScale;
import weltwright.wording.TraceWording;

/** Rendered photos that are good, and the same with one thing spoilt: that thing is named, and nothing else. */
class PhotoAssessmentTest {
    private static final Path SCENES = Path.of("src/test/resources/scenes");
    private static final String SHEET = "skinner-sheet-a4";

    @ParameterizedTest
    @CsvSource({
        "skinner-sheet-a4, find, A4 sheet: each square is 12.0 mm",
        "hunter-sheet-letter, find, Letter sheet: each square is 12.0 mm",
        "paring-graph, ruled:5mm, each square is 5 mm (13/64 in)",
        "tanto-paper-a4, find, 297.0 mm by 210.0 mm"
    })
    void hasNothingToSayOfAGoodPhoto(String scene, String ground, String words) {
        PhotoAssessment look = look(photo(scene), ground);
        assertThat(look.advice()).isEmpty();
        assertThat(look.question()).isEmpty();
        assertThat(TraceWording.label(look.ground().orElseThrow().label(), MeasureUnit.MILLIMETRE))
                .isEqualTo(words);
    }

    /** ISO 216: A3, A4 and A5 have the same proportions. */
    @Test
    void saysThatTheSizeOfPaperWasToldByItsProportions() {
        TraceNote told = new TraceNote.PaperSizeFromProportions();
        assertThat(look(photo("tanto-paper-a4"), "find").notes()).contains(told);
        assertThat(look(photo("tanto-paper-a4"), "paper:a4").notes()).doesNotContain(told);
    }

    /** What is asked for is drawn, so that the user can see which lines are meant. */
    @Test
    void asksHowFarApartTheLinesAre() {
        PhotoAssessment look = look(photo("paring-graph"), "find");
        assertThat(look.pitchAsked()).isTrue();
        assertThat(look.question()).hasValueSatisfying(q -> assertThat(q).contains("how far apart its lines are"));
        assertThat(look.ground().orElseThrow().lines()).hasSizeGreaterThan(50);
    }

    /** The photo is smeared by a bell curve of known width; the sentence says what that makes of an edge. */
    @ParameterizedTest
    @CsvSource({"skinner-sheet-a4, find, 3.5", "clip-mat-black, ruled:10mm, 3", "tanto-paper-a4, find, 3"})
    void seesBlur(String scene, String ground, double sigmaPx) {
        PhotoAssessment look = look(
                spoilt(scene, picture -> {
                    Mat blurred = new Mat();
                    Imgproc.GaussianBlur(picture, blurred, new Size(), sigmaPx);
                    return blurred;
                }),
                ground);
        assertThat(kinds(look)).contains(PhotoAdvice.Blurred.class);
        PhotoAdvice advice = look.advice().stream()
                .filter(PhotoAdvice.Blurred.class::isInstance)
                .findFirst()
                .orElseThrow();
        double said = ((PhotoAdvice.Blurred) advice).smearPx();
        // From a tenth to nine tenths a bell curve's integral rises over 2.563 standard deviations.
        double own = 0.9; // of the picture before, as rendered
        assertThat(said / (2.563 * Math.hypot(sigmaPx, own))).isBetween(0.75, 1.25);
    }

    @ParameterizedTest
    @CsvSource({"skinner-sheet-a4, find", "clip-mat-black, ruled:10mm", "paring-graph, ruled:5mm"})
    void seesDarkness(String scene, String ground) {
        assertThat(kinds(look(brightened(scene, 0.35, 0), ground)))
                .contains(PhotoAdvice.TooDark.class)
                .doesNotContain(PhotoAdvice.Blurred.class);
    }

    @ParameterizedTest
    @CsvSource({"skinner-sheet-a4, find", "tanto-paper-a4, find", "paring-graph, ruled:5mm"})
    void seesThatPaperIsBurntOut(String scene, String ground) {
        assertThat(kinds(look(brightened(scene, 1.5, 30), ground))).contains(PhotoAdvice.Overexposed.class);
    }

    /** Even where the frame can no longer be read for it. */
    @ParameterizedTest
    @CsvSource({"skinner-sheet-a4, find", "paring-graph, ruled:5mm"})
    void seesHaze(String scene, String ground) {
        assertThat(kinds(look(brightened(scene, 0.25, 150), ground))).contains(PhotoAdvice.Hazy.class);
    }

    @Test
    void seesThatMuchOfTheFrameIsHidden() {
        PhotoAssessment look = look(
                spoilt(SHEET, picture -> {
                    Mat hidden = picture.clone();
                    Imgproc.rectangle(
                            hidden, new Rect(0, 0, picture.cols() / 2, picture.rows()), new Scalar(90, 90, 90), -1);
                    return hidden;
                }),
                "find");
        assertThat(kinds(look)).contains(PhotoAdvice.GroundHidden.class);
        assertThat(look.question()).isPresent(); // what hides it reaches beyond the sheet
    }

    @Test
    void seesTooFewPixels() {
        PhotoAssessment look = look(
                spoilt(SHEET, picture -> {
                    Mat small = new Mat();
                    Imgproc.resize(picture, small, new Size(), 0.7, 0.7, Imgproc.INTER_AREA);
                    return small;
                }),
                "find");
        assertThat(kinds(look)).containsExactly(PhotoAdvice.TooCoarse.class);
    }

    /** The flat sheet as it would be seen from 28 degrees aside: a plane's picture follows from four of its points. */
    @Test
    void seesThatTheCameraLookedFromAside() {
        CameraView before = viewOf(photo(SHEET));
        double tilt = Math.toRadians(180 - 28);
        CameraView aside = new CameraView(before.camera(), new Vector3(tilt, 0, 0), new Vector3(0, 0, 460));
        MatOfPoint2f from = new MatOfPoint2f();
        MatOfPoint2f to = new MatOfPoint2f();
        List<Point> places =
                List.of(new Point(-90, -130), new Point(90, -130), new Point(90, 130), new Point(-90, 130));
        from.fromList(places.stream()
                .map(p -> cv(before.pixel(Plane.GROUND.pointAbove(p))))
                .toList());
        to.fromList(places.stream()
                .map(p -> cv(aside.pixel(Plane.GROUND.pointAbove(p))))
                .toList());
        PhotoAssessment look = look(
                spoilt(SHEET, picture -> {
                    Mat turned = new Mat();
                    Imgproc.warpPerspective(picture, turned, Imgproc.getPerspectiveTransform(from, to), picture.size());
                    return turned;
                }),
                "find");
        assertThat(kinds(look))
                .contains(PhotoAdvice.TooSlanted.class)
                .doesNotContain(PhotoAdvice.TooNear.class, PhotoAdvice.Blurred.class);
        assertThat(look.advice())
                .filteredOn(PhotoAdvice.TooSlanted.class::isInstance)
                .singleElement()
                .satisfies(advice ->
                        assertThat(((PhotoAdvice.TooSlanted) advice).degrees()).isCloseTo(28, within(0.5)));
    }

    /** The knife's outline touches the rim where this photo ends; it is also a part of a larger one. */
    @Test
    void seesThatTheKnifeRunsOutOfThePicture() throws IOException {
        BufferedImage whole = ImageIO.read(new File("sample-images/drop-point.jpg"));
        ByteArrayOutputStream png = new ByteArrayOutputStream();
        ImageIO.write(whole.getSubimage(0, 0, 1990, whole.getHeight()), "png", png);
        PhotoAssessment look = look(Photo.of("cut.png", png.toByteArray()), "find");
        assertThat(kinds(look)).contains(PhotoAdvice.CutOut.class, PhotoAdvice.KnifeReachesOver.class);
    }

    /** To the last bit. Marks are the maker's, and no part of an assessment. */
    @ParameterizedTest
    @CsvSource({
        "clip-sheet-a4, find, false",
        "clip-sheet-a4, find, true",
        "tanto-paper-a4, find, false",
        "tanto-graph, ruled:5mm, false",
        "tanto-graph, ruled:5mm, true"
    })
    void leavesATraceTheSameWhichNeedNotFindTheKnifeAgain(String scene, String ground, boolean isMarked) {
        Photo photo = photo(scene);
        TraceSettings settings =
                told(ground).withMarks(isMarked ? List.of(new KnifeMark(new Point(0, 0), false)) : List.of());
        Optional<LocatedKnife> located = look(photo, ground).knife();
        assertThat(located).isPresent();
        assertThat(Tracer.trace(photo, settings, located, ProgressListener.NONE))
                .usingRecursiveComparison()
                .isEqualTo(Tracer.trace(photo, settings, ProgressListener.NONE));
    }

    /** The truth file says how far away the camera was: 301 mm along its axis, 293 mm above the sheet. */
    @Test
    void seesThatTheCameraWasNear() {
        assertThat(kinds(look(photo("skinner-sheet-letter"), "find"))).containsExactly(PhotoAdvice.TooNear.class);
    }

    /** Rendered with a lens of 36 mm in 35 mm terms, which 8 degrees of tilt tell well enough to contradict 26 mm. */
    @Test
    void seesThatTheLensIsNotTheOneThatWasTold() {
        TraceSettings told =
                new TraceSettings(19, 3.5, 0, OptionalDouble.of(26), PrintScale.TRUE, new GroundChoice.Any());
        assertThat(kinds(PhotoAssessment.at(photo(SHEET), told, ProgressListener.NONE)))
                .containsExactly(PhotoAdvice.LensContradicted.class);
        TraceSettings right =
                new TraceSettings(19, 3.5, 0, OptionalDouble.of(35.5), PrintScale.TRUE, new GroundChoice.Any());
        assertThat(PhotoAssessment.at(photo(SHEET), right, ProgressListener.NONE)
                        .advice())
                .isEmpty();
    }

    @Test
    void saysWhatIsWrongWithAPhotoThatIsNone() {
        byte[] cut = Arrays.copyOf(photo(SHEET).bytes(), 3000);
        PhotoAssessment look = look(Photo.of("cut.jpg", cut), "find");
        assertThat(look.question()).isPresent();
        assertThat(look.ground()).isEmpty();
    }

    private static List<Class<? extends PhotoAdvice>> kinds(PhotoAssessment look) {
        return look.advice().stream()
                .<Class<? extends PhotoAdvice>>map(PhotoAdvice::getClass)
                .toList();
    }

    private static PhotoAssessment look(Photo photo, String ground) {
        return PhotoAssessment.at(photo, told(ground), ProgressListener.NONE);
    }

    private static TraceSettings told(String ground) {
        return new TraceSettings(19, 3.5, 0, OptionalDouble.empty(), PrintScale.TRUE, GroundChoice.parse(ground));
    }

    private static CameraView viewOf(Photo photo) {
        try (DecodedPhoto picture = DecodedPhoto.decode(photo)) {
            LensEvidence lens = LensEvidence.of(photo, told("find"));
            return lens.over(
                            new GroundChoice.Any()
                                    .find(picture, PrintScale.TRUE, lens.prior())
                                    .known(),
                            picture)
                    .view();
        }
    }

    private static org.opencv.core.Point cv(Point p) {
        return new org.opencv.core.Point(p.x(), p.y());
    }

    private static Photo photo(String scene) {
        return Photo.read(SCENES.resolve(scene + ".jpg"));
    }

    private static Photo brightened(String scene, double factor, double more) {
        return spoilt(scene, picture -> {
            Mat other = new Mat();
            picture.convertTo(other, -1, factor, more);
            return other;
        });
    }

    private static Photo spoilt(String scene, UnaryOperator<Mat> how) {
        try (DecodedPhoto picture = DecodedPhoto.decode(photo(scene))) {
            Mat other = how.apply(picture.bgr());
            MatOfByte png = new MatOfByte();
            Imgcodecs.imencode(".png", other, png);
            other.release();
            return Photo.of("spoilt.png", png.toArray());
        }
    }
}
