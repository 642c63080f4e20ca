package weltwright.trace.edge;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.opencv.core.CvType;
import org.opencv.core.Mat;
import org.opencv.core.MatOfByte;
import org.opencv.core.MatOfPoint;
import org.opencv.core.Scalar;
import org.opencv.imgcodecs.Imgcodecs;
import org.opencv.imgproc.Imgproc;
import weltwright.geometry.Point;
import weltwright.geometry.Polyline;
import weltwright.image.DecodedPhoto;
import weltwright.image.Photo;
import weltwright.image.opencv.OpenCvLibraries;

/** A drawn blade whose corners are known, on paper with a camera's noise, and contours that end before it does. */
class TipRecoveryTest {
    private static final double PX_PER_MM = 6;
    private static final int WIDTH = 500;
    private static final int HEIGHT = 300;
    private static final Scalar PAPER = new Scalar(210, 220, 225);
    private static final Scalar STEEL = new Scalar(135, 133, 130);
    private static final Point OTHER = new Point(30, 150);
    private static final Point TIP = new Point(400, 150);

    /** Where the contour is cut off, 4 mm before the tip. */
    private static final double CUT = 376;

    private static final double HALF_CUT = 24 * (400 - CUT) / 60;

    @BeforeAll
    static void loadNatives() {
        OpenCvLibraries.load();
    }

    @Test
    void aPointOfTheKnifesColourIsGivenBack() {
        Polyline contour = cutOff();

        Polyline recovered = recovered(picture(PAPER, STEEL), contour);

        Point farthest = farthest(recovered);
        assertThat(farthest.x()).isCloseTo(TIP.x(), within(0.5 * PX_PER_MM));
        assertThat(farthest.y()).isCloseTo(TIP.y(), within(0.5 * PX_PER_MM));
        // What was cut off is a triangle: half of base times height.
        double cutOff = HALF_CUT * (TIP.x() - CUT);
        assertThat(recovered.signedAreaMm2() - contour.signedAreaMm2()).isCloseTo(cutOff, within(0.3 * cutOff));
    }

    /** What goes on in the knife's colour without growing narrower is something else: a shadow, a strap. */
    @Test
    void aStripeOfTheKnifesColourIsNot() {
        Mat drawn = drawn(PAPER, STEEL);
        Imgproc.rectangle(
                drawn,
                new org.opencv.core.Point(CUT, 141),
                new org.opencv.core.Point(WIDTH, 159),
                STEEL,
                Imgproc.FILLED);
        Polyline contour = cutOff();

        assertThat(recovered(encoded(drawn), contour)).isEqualTo(contour);
    }

    @Test
    void aContourThatEndsWithTheKnifeStaysAsItIs() {
        Mat drawn = new Mat(HEIGHT, WIDTH, CvType.CV_8UC3, PAPER);
        fill(drawn, cutOff(), STEEL);

        assertThat(recovered(encoded(drawn), cutOff())).isEqualTo(cutOff());
    }

    /** Nothing tells a blade as grey as paper from it. */
    @Test
    void whatHasTheGroundsColourIsLeft() {
        assertThat(recovered(picture(PAPER, PAPER), cutOff())).isEqualTo(cutOff());
    }

    private static Polyline recovered(byte[] png, Polyline contour) {
        try (DecodedPhoto picture = DecodedPhoto.decode(Photo.of("blade.png", png))) {
            return TipRecovery.recover(picture, PX_PER_MM, contour, new Point(CUT, 150), OTHER);
        }
    }

    /** The blade: 24 pixels to each side of its middle line, and for its last 60 pixels narrowing to the tip. */
    private static Polyline blade() {
        return Polyline.closed(List.of(
                new Point(OTHER.x(), 126), new Point(340, 126), TIP, new Point(340, 174), new Point(OTHER.x(), 174)));
    }

    /** The same without its tip: the contour passes straight from one side to the other. */
    private static Polyline cutOff() {
        return Polyline.closed(List.of(
                        new Point(OTHER.x(), 126),
                        new Point(340, 126),
                        new Point(CUT, 150 - HALF_CUT),
                        new Point(CUT, 150 + HALF_CUT),
                        new Point(340, 174),
                        new Point(OTHER.x(), 174)))
                .resampled(0.3 * PX_PER_MM);
    }

    private static Point farthest(Polyline contour) {
        return contour.points().stream().reduce((a, b) -> a.x() > b.x() ? a : b).orElseThrow();
    }

    private static byte[] picture(Scalar paper, Scalar steel) {
        return encoded(drawn(paper, steel));
    }

    private static Mat drawn(Scalar paper, Scalar steel) {
        Mat drawn = new Mat(HEIGHT, WIDTH, CvType.CV_8UC3, paper);
        fill(drawn, blade(), steel);
        return drawn;
    }

    private static void fill(Mat drawn, Polyline area, Scalar colour) {
        MatOfPoint rim = new MatOfPoint(area.points().stream()
                .map(p -> new org.opencv.core.Point(Math.round(p.x()), Math.round(p.y())))
                .toArray(org.opencv.core.Point[]::new));
        Imgproc.fillPoly(drawn, List.of(rim), colour);
        rim.release();
    }

    private static byte[] encoded(Mat drawn) {
        byte[] pixels = new byte[3 * WIDTH * HEIGHT];
        drawn.get(0, 0, pixels);
        Random noise = new Random(4);
        for (int i = 0; i < pixels.length; i++) {
            pixels[i] = (byte) Math.max(0, Math.min(255, (pixels[i] & 255) + Math.round(4 * noise.nextGaussian())));
        }
        drawn.put(0, 0, pixels);
        MatOfByte file = new MatOfByte();
        Imgcodecs.imencode(".png", drawn, file);
        return file.toArray();
    }
}
