package weltwright.trace;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.function.ToDoubleFunction;
import org.bytedeco.javacpp.Loader;
import org.bytedeco.opencv.opencv_java;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.opencv.core.Core;
import org.opencv.core.CvType;
import org.opencv.core.Mat;
import org.opencv.core.MatOfByte;
import org.opencv.core.Size;
import org.opencv.imgcodecs.Imgcodecs;
import org.opencv.imgproc.Imgproc;
import weltwright.geometry.Placement;
import weltwright.geometry.Point;
import weltwright.geometry.Polyline;
import weltwright.ground.Camera;
import weltwright.ground.Picture;
import weltwright.ground.Plane;
import weltwright.ground.Vector3;
import weltwright.ground.View;
import weltwright.photo.Photo;

/** Drawn blades on drawn lines, seen straight from above: what each of them shows is as it was drawn. */
class MirroredGroundTest {
    private static final double PITCH_MM = 10;
    private static final double LINE_HALF_MM = 0.15;
    private static final double PX_PER_MM = 6;
    private static final int SIZE_PX = 720;
    private static final double DISTANCE_MM = 400;
    private static final double PAPER = 190;
    private static final double LINE = 130;
    private static final double STEEL = 150;

    private static final View VIEW = new View(
            new Camera(PX_PER_MM * DISTANCE_MM, (SIZE_PX - 1) / 2.0, (SIZE_PX - 1) / 2.0, 0, 0),
            new Vector3(Math.PI, 0, 0),
            new Vector3(0, 0, DISTANCE_MM));

    /** 90 mm long and 24 mm wide. */
    private static final Polyline BLADE = Polyline.closed(
            List.of(new Point(-45, -12), new Point(15, -12), new Point(45, 12), new Point(-45, 12)));

    @BeforeAll
    static void load() {
        Loader.load(opencv_java.class);
    }

    /** A flat mirror shows a lattice as another one, turned: the law of reflection, seen from far off. */
    @Test
    void aBladeThatShowsTheLinesTurnedIsAMirror() {
        Placement turned = new Placement(Math.toRadians(31), new Point(3, 4));
        assertThat(mirrors(at -> 0.85 * ground(turned.apply(at)))).isTrue();
    }

    /** As long as the print is seen at all: steel that throws back half of what falls on it. */
    @Test
    void aDullMirrorIsOneToo() {
        Placement turned = new Placement(Math.toRadians(70), new Point(1, 2));
        assertThat(mirrors(at -> 0.5 * ground(turned.apply(at)) + 40)).isTrue();
    }

    @Test
    void plainSteelIsNone() {
        assertThat(mirrors(at -> STEEL)).isFalse();
    }

    /** Three grooves along a blade are ground into many. Common practice. */
    @Test
    void groovesAlongTheBladeAreNone() {
        assertThat(mirrors(at -> {
                    double across = Math.abs(at.y() - 2 * Math.round(at.y() / 2));
                    return across < LINE_HALF_MM ? STEEL - 60 : STEEL;
                }))
                .isFalse();
    }

    /** The bars of a sash of four panes: two lines that cross, all through the blade. Common practice. */
    @Test
    void aWindowThatIsMirroredIsNone() {
        assertThat(mirrors(at -> {
                    double fromBar = Math.min(Math.abs(at.x() + at.y() / 2 + 20), Math.abs(at.y() - at.x() / 2 - 10));
                    return fromBar < 2 * LINE_HALF_MM ? STEEL - 60 : STEEL;
                }))
                .isFalse();
    }

    private static boolean mirrors(ToDoubleFunction<Point> onBlade) {
        try (Picture picture = drawn(onBlade)) {
            double[] lineColour = {PAPER - LINE, PAPER - LINE, PAPER - LINE};
            return MirroredGround.isIn(picture, VIEW, BLADE, lines(), lineColour);
        }
    }

    private static Picture drawn(ToDoubleFunction<Point> onBlade) {
        float[] grey = new float[SIZE_PX * SIZE_PX];
        for (int i = 0; i < grey.length; i++) {
            Point at = VIEW.meets(new Point(i % SIZE_PX, i / SIZE_PX), Plane.GROUND);
            boolean hidden = Math.abs(at.y()) < 12 && at.x() > -45 && at.x() < 15 + 30 * (at.y() + 12) / 24;
            grey[i] = (float) (hidden ? onBlade.applyAsDouble(at) : ground(at));
        }
        Mat drawn = new Mat(SIZE_PX, SIZE_PX, CvType.CV_32F);
        drawn.put(0, 0, grey);
        Imgproc.GaussianBlur(drawn, drawn, new Size(0, 0), 0.8);
        Mat noise = new Mat(SIZE_PX, SIZE_PX, CvType.CV_32F);
        Core.setRNGSeed(3);
        Core.randn(noise, 0, 3);
        Core.add(drawn, noise, drawn);
        drawn.convertTo(drawn, CvType.CV_8U);
        Imgproc.cvtColor(drawn, drawn, Imgproc.COLOR_GRAY2BGR);
        MatOfByte file = new MatOfByte();
        Imgcodecs.imencode(".png", drawn, file);
        return Picture.decode(Photo.of("blade.png", file.toArray()));
    }

    private static double ground(Point at) {
        return Math.min(offLine(at.x()), offLine(at.y())) < LINE_HALF_MM ? LINE : PAPER;
    }

    private static double offLine(double coordinate) {
        return Math.abs(coordinate - PITCH_MM * Math.round(coordinate / PITCH_MM));
    }

    private static List<Polyline> lines() {
        List<Polyline> lines = new ArrayList<>();
        for (double at = -50; at <= 50; at += PITCH_MM) {
            lines.add(Polyline.open(List.of(new Point(at, -55), new Point(at, 55))));
            lines.add(Polyline.open(List.of(new Point(-55, at), new Point(55, at))));
        }
        return lines;
    }
}
