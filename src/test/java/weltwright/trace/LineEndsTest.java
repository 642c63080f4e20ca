package weltwright.trace;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import org.bytedeco.javacpp.Loader;
import org.bytedeco.opencv.opencv_java;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.opencv.core.Core;
import org.opencv.core.CvType;
import org.opencv.core.Mat;
import org.opencv.core.MatOfByte;
import org.opencv.core.Size;
import org.opencv.imgcodecs.Imgcodecs;
import org.opencv.imgproc.Imgproc;
import weltwright.geometry.Point;
import weltwright.geometry.Polyline;
import weltwright.ground.Camera;
import weltwright.ground.Picture;
import weltwright.ground.Plane;
import weltwright.ground.Vector3;
import weltwright.ground.View;
import weltwright.photo.Photo;

/**
 * A drawn disc on squared paper, of the very colour of the paper: nothing but the lines that end at it shows where it is.
 * Its radius is known.
 */
class LineEndsTest {
    private static final double RADIUS_MM = 40;
    private static final double PITCH_MM = 5;
    private static final double LINE_HALF_MM = 0.2;
    private static final double ZONE_MM = 0.35;
    private static final double PX_PER_MM = 6;
    private static final int SIZE_PX = 720;
    private static final double DISTANCE_MM = 400;

    /** Straight from above. */
    private static final View VIEW = new View(
            new Camera(PX_PER_MM * DISTANCE_MM, (SIZE_PX - 1) / 2.0, (SIZE_PX - 1) / 2.0, 0, 0),
            new Vector3(Math.PI, 0, 0),
            new Vector3(0, 0, DISTANCE_MM));

    private static final GroundRaster RASTER = GroundRaster.covering(new Point(-55, -55), new Point(55, 55), 0.2);

    private static Picture picture;

    @BeforeAll
    static void draw() {
        Loader.load(opencv_java.class);
        float[] bgr = new float[3 * SIZE_PX * SIZE_PX];
        for (int i = 0; i < SIZE_PX * SIZE_PX; i++) {
            Point at = VIEW.meets(new Point(i % SIZE_PX, i / SIZE_PX), Plane.GROUND);
            boolean onLine = offLine(at.x()) < LINE_HALF_MM || offLine(at.y()) < LINE_HALF_MM;
            boolean hidden = at.norm() < RADIUS_MM;
            for (int k = 0; k < 3; k++) {
                bgr[3 * i + k] = onLine && !hidden ? 100 + 20 * k : 170;
            }
        }
        Mat drawn = new Mat(SIZE_PX, SIZE_PX, CvType.CV_32FC3);
        drawn.put(0, 0, bgr);
        Imgproc.GaussianBlur(drawn, drawn, new Size(0, 0), 0.8);
        Mat noise = new Mat(SIZE_PX, SIZE_PX, CvType.CV_32FC3);
        Core.setRNGSeed(3);
        Core.randn(noise, 0, 3);
        Core.add(drawn, noise, drawn);
        drawn.convertTo(drawn, CvType.CV_8U);
        MatOfByte file = new MatOfByte();
        Imgcodecs.imencode(".png", drawn, file);
        picture = Picture.decode(Photo.of("squares.png", file.toArray()));
    }

    @AfterAll
    static void release() {
        picture.close();
    }

    @Test
    void linesAreSeenUpToTheDiscAndHiddenInIt() {
        LineEnds ends = ends(1.5);
        for (int line = -7; line <= 7; line++) {
            double x = line * PITCH_MM;
            double end = Math.sqrt(RADIUS_MM * RADIUS_MM - x * x);
            for (double y = end - 1.2; y < end + 1.2; y += 0.05) {
                double shown = ends.shownAt(new Point(x, y));
                // Half of what is looked at together, and what a look is rounded to.
                if (Math.abs(y - end) > 0.4) {
                    assertThat(shown * Math.signum(y - end)).as("%.0f, %.2f", x, y).isGreaterThanOrEqualTo(0);
                }
            }
        }
    }

    @Test
    void theEdgeIsFoundByThemAlone() {
        Polyline rough = circle(RADIUS_MM + 1.5, 360).map(p -> VIEW.pixel(Plane.GROUND.over(p)));
        List<Double> off = new ArrayList<>();
        for (EdgePoint point : new EdgePath(picture, ground(ends(1.5)), 1, 13, 2, 6).near(rough)) {
            Point at = VIEW.meets(point.pixel(), Plane.GROUND);
            if (offLine(at.x()) < LINE_HALF_MM != offLine(at.y()) < LINE_HALF_MM) {
                off.add(at.norm() - RADIUS_MM);
            }
        }
        assertThat(off).hasSizeGreaterThan(100);
        assertThat(off.stream().mapToDouble(d -> d).average().orElseThrow()).isCloseTo(0, within(0.1));
        assertThat(off.stream().filter(d -> Math.abs(d) < 0.5).count()).isGreaterThan(off.size() * 9 / 10);
    }

    /** Looked for from a circle that is too large. */
    private static LineEnds ends(double tooLargeMm) {
        List<Polyline> lines = new ArrayList<>();
        for (double at = -50; at <= 50; at += PITCH_MM) {
            lines.add(Polyline.open(List.of(new Point(at, -55), new Point(at, 55))));
            lines.add(Polyline.open(List.of(new Point(-55, at), new Point(55, at))));
        }
        return LineEnds.near(circle(RADIUS_MM + tooLargeMm, 360), lines, ZONE_MM, RASTER, picture, VIEW);
    }

    private static Polyline circle(double radiusMm, int points) {
        return Polyline.closed(IntStream.range(0, points)
                .mapToDouble(i -> 2 * Math.PI * i / points)
                .mapToObj(a -> new Point(radiusMm * Math.cos(a), radiusMm * Math.sin(a)))
                .toList());
    }

    private static double offLine(double coordinate) {
        return Math.abs(coordinate - PITCH_MM * Math.round(coordinate / PITCH_MM));
    }

    private static EdgePath.Ground ground(LineEnds ends) {
        return new EdgePath.Ground() {
            @Override
            public Point place(Point pixel) {
                return VIEW.meets(pixel, Plane.GROUND);
            }

            @Override
            public EdgePath.Print printAt(Point place) {
                return Math.min(offLine(place.x()), offLine(place.y())) < ZONE_MM
                        ? EdgePath.Print.LINE
                        : EdgePath.Print.NONE;
            }

            @Override
            public double shownAt(Point place) {
                return ends.shownAt(place);
            }

            @Override
            public double[] lineColour() {
                return new double[] {70, 50, 30};
            }

            @Override
            public boolean isSteelGrey() {
                return true;
            }
        };
    }
}
