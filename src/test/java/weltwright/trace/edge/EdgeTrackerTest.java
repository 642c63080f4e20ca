package weltwright.trace.edge;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Random;
import java.util.function.DoubleUnaryOperator;
import java.util.stream.IntStream;
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
import weltwright.image.DecodedPhoto;
import weltwright.image.Photo;
import weltwright.image.opencv.OpenCvLibraries;
import weltwright.trace.appearance.GroundAppearance;
import weltwright.trace.appearance.GroundPrint;

/** The edge of drawn discs, whose radius is known, blurred as by a lens and with a camera's noise. */
class EdgeTrackerTest {
    private static final double RADIUS_PX = 150;
    private static final int SIZE = 400;
    private static final Point MIDDLE = new Point(199.3, 200.6);

    @BeforeAll
    static void loadNatives() {
        OpenCvLibraries.load();
    }

    @Test
    void findsADarkDiscOnPaper() {
        List<EdgePoint> edge = edge(r -> r < RADIUS_PX ? 60 : 180, false);
        assertThat(meanRadius(edge)).isCloseTo(RADIUS_PX, within(0.1));
        assertThat(edge).allMatch(p -> Math.abs(radius(p) - RADIUS_PX) < 0.7);
    }

    /**
     * Steel of level 160 in the shadow that it throws on paper of level 180: darker than it far off, brighter beside
     * it.
     */
    @Test
    void findsSteelThatIsBrighterThanItsShadowAndDarkerThanThePaper() {
        List<EdgePoint> edge = edge(r -> r < RADIUS_PX ? 160 : 180 - 35 * Math.exp(-(r - RADIUS_PX) / 6), true);
        assertThat(meanRadius(edge)).isCloseTo(RADIUS_PX, within(0.4));
        assertThat(edge.stream()
                        .filter(p -> Math.abs(radius(p) - RADIUS_PX) < 1.5)
                        .count())
                .isGreaterThan(edge.size() * 95 / 100);
    }

    /** Steel of a bluer grey than paper, as bright as the shadow beside it, both with more grain than hue. */
    @Test
    void findsSteelAsBrightAsItsShadowByItsHue() {
        DoubleUnaryOperator level = r -> r < RADIUS_PX ? 150 : 150 + 20 * (1 - Math.exp(-(r - RADIUS_PX) / 30));
        List<EdgePoint> edge = edge(level, r -> r < RADIUS_PX ? 2 : -2, 16, true);
        assertThat(meanRadius(edge)).isCloseTo(RADIUS_PX, within(0.5));
        assertThat(edge.stream()
                        .filter(p -> Math.abs(radius(p) - RADIUS_PX) < 2)
                        .count())
                .isGreaterThan(edge.size() * 95 / 100);
    }

    private static List<EdgePoint> edge(DoubleUnaryOperator level, boolean steelGrey) {
        return edge(level, r -> 0, 0, steelGrey);
    }

    /**
     * Looked for from a circle that is two pixels too large and lies one too far to the right.
     *
     * @param blue by how much blue is more, and red less, than the level
     */
    private static List<EdgePoint> edge(
            DoubleUnaryOperator level, DoubleUnaryOperator blue, double grain, boolean steelGrey) {
        Random random = new Random(5);
        float[] bgr = new float[3 * SIZE * SIZE];
        double grainHere = 0;
        for (int i = 0; i < bgr.length; i++) {
            double r = new Point(i / 3 % SIZE, i / 3 / SIZE).distance(MIDDLE);
            grainHere = i % 3 == 0 ? grain * random.nextGaussian() : grainHere;
            bgr[i] = (float) (grainHere + level.applyAsDouble(r) + blue.applyAsDouble(r) * (1 - i % 3));
        }
        Mat seen = new Mat(SIZE, SIZE, CvType.CV_32FC3);
        seen.put(0, 0, bgr);
        Imgproc.GaussianBlur(seen, seen, new Size(0, 0), 1);
        Mat noise = new Mat(SIZE, SIZE, CvType.CV_32FC3);
        Core.setRNGSeed(5);
        Core.randn(noise, 0, 2);
        Core.add(seen, noise, seen);
        seen.convertTo(seen, CvType.CV_8U);
        Polyline rough = Polyline.closed(IntStream.range(0, 360)
                .mapToObj(Math::toRadians)
                .map(a -> MIDDLE.plus(new Point(1 + (RADIUS_PX + 2) * Math.cos(a), (RADIUS_PX + 2) * Math.sin(a))))
                .toList());
        MatOfByte file = new MatOfByte();
        Imgcodecs.imencode(".png", seen, file);
        try (DecodedPhoto picture = DecodedPhoto.decode(Photo.of("disc.png", file.toArray()))) {
            return new EdgeTracker(picture, plain(steelGrey), 2, 2, 12, 2).locate(rough);
        } finally {
            seen.release();
            noise.release();
            file.release();
        }
    }

    private static GroundAppearance plain(boolean steelGrey) {
        return new GroundAppearance() {
            @Override
            public Point groundPoint(Point pixel) {
                return pixel;
            }

            @Override
            public GroundPrint printAt(Point place) {
                return GroundPrint.NONE;
            }

            @Override
            public double lineVisibilityAt(Point place) {
                return 0;
            }

            @Override
            public double[] lineColour() {
                return new double[3];
            }

            @Override
            public boolean isSteelGrey() {
                return steelGrey;
            }
        };
    }

    private static double radius(EdgePoint point) {
        return point.pixel().distance(MIDDLE);
    }

    private static double meanRadius(List<EdgePoint> edge) {
        return edge.stream().mapToDouble(EdgeTrackerTest::radius).average().orElseThrow();
    }
}
