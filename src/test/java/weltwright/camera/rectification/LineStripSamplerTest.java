package weltwright.camera.rectification;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.opencv.core.CvType;
import org.opencv.core.Mat;
import org.opencv.core.MatOfByte;
import org.opencv.imgcodecs.Imgcodecs;
import weltwright.camera.CameraView;
import weltwright.camera.PinholeCamera;
import weltwright.camera.Plane;
import weltwright.camera.Vector3;
import weltwright.geometry.Point;
import weltwright.image.DecodedPhoto;
import weltwright.image.Photo;
import weltwright.image.opencv.OpenCvLibraries;
import weltwright.trace.OverheadScene;

/**
 * A drawn picture whose blue is a ramp of one level a column, whose green is one of one level a row, and whose red is a
 * step from black to white. What a strip must show of it follows from where it lies: of a ramp what its middle shows,
 * of the step the part of it that lies beyond.
 */
class LineStripSamplerTest {
    private static final int COLUMNS = 240;
    private static final int ROWS = 180;
    private static final double PX_PER_MM = 4;
    private static final double FIRST_LEVEL = 10;

    /** The first white column. */
    private static final int STEP_COLUMN = 120;

    private static final int WHITE = 250;
    private static final double REACH_MM = 2;

    /** Levels are whole, and OpenCV looks between pixels at each 32nd: half of both. */
    private static final double ROUNDED = 0.5 + 0.5 / 32;

    /** Straight above; the middle of the picture shows the ground's origin. */
    private static final CameraView ABOVE = new OverheadScene(PX_PER_MM, COLUMNS, ROWS, 1).view();

    private static DecodedPhoto picture;

    @BeforeAll
    static void draw() {
        OpenCvLibraries.load();
        byte[] bgr = new byte[3 * COLUMNS * ROWS];
        for (int i = 0; i < COLUMNS * ROWS; i++) {
            bgr[3 * i] = (byte) (FIRST_LEVEL + i % COLUMNS);
            bgr[3 * i + 1] = (byte) (FIRST_LEVEL + i / COLUMNS);
            bgr[3 * i + 2] = (byte) (i % COLUMNS < STEP_COLUMN ? 0 : WHITE);
        }
        Mat drawn = new Mat(ROWS, COLUMNS, CvType.CV_8UC3);
        drawn.put(0, 0, bgr);
        MatOfByte file = new MatOfByte();
        Imgcodecs.imencode(".png", drawn, file);
        picture = DecodedPhoto.decode(Photo.of("ramps.png", file.toArray()));
        drawn.release();
        file.release();
    }

    @AfterAll
    static void release() {
        picture.close();
    }

    /** The mean of a ramp along a line is what the ramp is in the line's middle, however the line lies. */
    @Test
    void aRampShowsWhatItIsInTheMiddleOfEachStrip() {
        for (double degrees = 0; degrees < 360; degrees += 30) {
            LineStripSampler.Lane lane = new LineStripSampler.Lane(new Point(1, -2), direction(degrees), 0.5, 30);

            float[] seen = seen(ABOVE, lane);

            assertThat(seen).hasSize(3 * 30);
            for (int i = 0; i < 30; i++) {
                double x = 1 + 0.5 * i * Math.cos(Math.toRadians(degrees));
                double y = -2 + 0.5 * i * Math.sin(Math.toRadians(degrees));
                assertThat(lane.middle(i).distance(new Point(x, y))).isLessThan(1e-9);
                assertThat((double) seen[3 * i]).as("blue of %d", i).isCloseTo(blue(x), within(ROUNDED));
                assertThat((double) seen[3 * i + 1]).as("green of %d", i).isCloseTo(green(y), within(ROUNDED));
            }
        }
    }

    /**
     * Across a step the mean grows from black to white over just the length of the strip: by as much as lies beyond.
     */
    @Test
    void aStepShowsHowMuchOfAStripLiesBeyondIt() {
        double stepXMm = (STEP_COLUMN - 0.5 - (COLUMNS - 1) / 2.0) / PX_PER_MM;
        LineStripSampler.Lane lane = new LineStripSampler.Lane(new Point(-5, 0), new Point(1, 0), 0.3, 34);

        float[] seen = seen(ABOVE, lane);

        for (int i = 0; i < 34; i++) {
            double beyondMm =
                    Math.max(0, Math.min(2 * REACH_MM, REACH_MM + lane.middle(i).x() - stepXMm));
            // One sample more or less, of those that a strip has.
            assertThat((double) seen[3 * i + 2])
                    .as("%.1f mm", lane.middle(i).x())
                    .isCloseTo(WHITE * beyondMm / (2 * REACH_MM), within(WHITE * 0.1 / (2 * REACH_MM)));
        }
    }

    /**
     * Aslant and through a lens that bends lines, the ramp's mean is that of the places where the strip's points are
     * seen.
     */
    @Test
    void aLensAndASlantBendNothingThatTells() {
        CameraView aslant = new CameraView(
                new PinholeCamera(500, (COLUMNS - 1) / 2.0, (ROWS - 1) / 2.0, -0.1, 0.02),
                new Vector3(Math.PI - 0.4, 0.1, 0.05),
                new Vector3(0, 0, 130));
        LineStripSampler.Lane lane = new LineStripSampler.Lane(new Point(-14, -10), direction(25), 0.4, 60);

        float[] seen = seen(aslant, lane);

        for (int i = 0; i < lane.count(); i++) {
            Point middle = lane.middle(i);
            double[] columns = IntStream.rangeClosed(-100, 100)
                    .mapToObj(k -> middle.plus(lane.along().times(REACH_MM * k / 100)))
                    .mapToDouble(at -> aslant.pixel(Plane.GROUND.pointAbove(at)).x())
                    .toArray();
            double mean = IntStream.range(0, columns.length)
                    .mapToDouble(k -> columns[k])
                    .average()
                    .orElseThrow();
            assertThat(mean).as("in the picture").isBetween(10.0, COLUMNS - 10.0);
            assertThat((double) seen[3 * i]).as("strip %d", i).isCloseTo(FIRST_LEVEL + mean, within(ROUNDED));
        }
    }

    /**
     * Beyond its rim a picture goes on as it is there. Of a strip whose middle is on the rim, ten samples of 21 lie in
     * the picture, 0.8 pixels from one to the next; by their mean it is lighter than the rim.
     */
    @Test
    void beyondTheRimThePictureGoesOnAsItIsThere() {
        double rimXMm = -(COLUMNS - 1) / 2.0 / PX_PER_MM;
        LineStripSampler.Lane on = new LineStripSampler.Lane(new Point(rimXMm, 0), new Point(1, 0), 0.6, 1);
        LineStripSampler.Lane beyond = new LineStripSampler.Lane(new Point(rimXMm - 20, 0), new Point(1, 0), 0.6, 10);

        assertThat((double) seen(ABOVE, on)[0]).isCloseTo(FIRST_LEVEL + 0.8 * (10 * 11 / 2) / 21, within(ROUNDED));
        float[] outside = seen(ABOVE, beyond);
        for (int i = 0; i < 10; i++) {
            assertThat((double) outside[3 * i]).isEqualTo(FIRST_LEVEL);
        }
    }

    /** Whoever divides by it need not look. */
    @Test
    void blackIsOneLevelBright() {
        LineStripSampler.Lane black = new LineStripSampler.Lane(new Point(-20, 0), new Point(0, 1), 0.5, 5);
        assertThat(seen(ABOVE, black)[2]).isEqualTo(1);
    }

    /** Many of different length, more samples than a row of them holds: each shows what it shows by itself. */
    @Test
    void eachLaneIsSeenAsIfItWereAlone() {
        List<LineStripSampler.Lane> lanes = IntStream.range(0, 40)
                .mapToObj(k -> new LineStripSampler.Lane(
                        new Point(-20 + k, -15 + 0.5 * k), direction(37 * k), 0.3 + 0.02 * k, 1 + k))
                .toList();

        float[][] together = new LineStripSampler(picture, ABOVE, REACH_MM).sample(lanes);

        for (int k = 0; k < lanes.size(); k++) {
            assertThat(together[k]).containsExactly(seen(ABOVE, lanes.get(k)));
        }
    }

    /** By 3 mm up and to the left: twelve levels less of blue, twelve less of green, whose rows count downwards. */
    @Test
    void aMovedLaneLiesBesideTheFirst() {
        LineStripSampler.Lane lane = new LineStripSampler.Lane(new Point(2, 2), new Point(1, 0), 0.5, 4);
        LineStripSampler.Lane moved = lane.moved(new Point(-3, 3));

        float[] seen = seen(ABOVE, lane);
        float[] beside = seen(ABOVE, moved);

        for (int i = 0; i < 4; i++) {
            assertThat((double) seen[3 * i] - beside[3 * i]).isCloseTo(12, within(ROUNDED));
            assertThat((double) seen[3 * i + 1] - beside[3 * i + 1]).isCloseTo(12, within(ROUNDED));
        }
    }

    @Test
    void ofNoLanesNothingIsSeen() {
        assertThat(new LineStripSampler(picture, ABOVE, REACH_MM).sample(List.of()))
                .isEmpty();
    }

    private static float[] seen(CameraView view, LineStripSampler.Lane lane) {
        return new LineStripSampler(picture, view, REACH_MM).sample(List.of(lane))[0];
    }

    private static Point direction(double degrees) {
        return new Point(Math.cos(Math.toRadians(degrees)), Math.sin(Math.toRadians(degrees)));
    }

    private static double blue(double xMm) {
        return FIRST_LEVEL + (COLUMNS - 1) / 2.0 + PX_PER_MM * xMm;
    }

    private static double green(double yMm) {
        return FIRST_LEVEL + (ROWS - 1) / 2.0 - PX_PER_MM * yMm;
    }
}
