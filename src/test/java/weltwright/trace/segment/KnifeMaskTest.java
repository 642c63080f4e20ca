package weltwright.trace.segment;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.withinPercentage;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.opencv.core.CvType;
import org.opencv.core.Mat;
import weltwright.camera.rectification.PlaneRaster;
import weltwright.error.UserFacingException;
import weltwright.geometry.Point;
import weltwright.geometry.Polyline;
import weltwright.geometry.Region;
import weltwright.image.opencv.OpenCvLibraries;
import weltwright.trace.appearance.PrintPattern;
import weltwright.trace.appearance.RelativeReflectance;
import weltwright.trace.appearance.RulingPattern;
import weltwright.trace.visibility.PrintVisibility;
import weltwright.trace.visibility.PrintVisibility.Observation;

/** A drawn knife of 140 by 20 mm on lines each 10 mm: its handle brown, its blade grey as the shadow beside it. */
class KnifeMaskTest {
    private static final double PITCH_MM = 10;
    private static final Polyline EXTENT = Polyline.closed(
            List.of(new Point(-100, -40), new Point(100, -40), new Point(100, 40), new Point(-100, 40)));
    private static final RulingPattern RULING = new RulingPattern(PITCH_MM, Region.of(EXTENT), 0.15);
    private static final PlaneRaster RASTER = PlaneRaster.covering(new Point(-100, -40), new Point(100, 40), 0.4);

    @BeforeAll
    static void load() {
        OpenCvLibraries.load();
    }

    private static boolean isKnife(Point at) {
        return Math.abs(at.x()) < 70 && Math.abs(at.y()) < 10;
    }

    private static boolean isShadow(Point at) {
        return !isKnife(at) && Math.abs(at.x()) < 70 && at.y() <= -10 && at.y() > -16;
    }

    /** As parts of what the lit ground gives back: blue, green, red. */
    private static double[] share(Point at) {
        if (isKnife(at)) {
            return at.x() < 0 ? new double[] {0.25, 0.4, 0.6} : new double[] {0.62, 0.62, 0.62};
        }
        return isShadow(at) ? new double[] {0.7, 0.7, 0.7} : new double[] {1, 1, 1};
    }

    private static Mat ratio(boolean withKnife) {
        Random random = new Random(6);
        float[] ratio = new float[3 * RASTER.columns() * RASTER.rows()];
        for (int i = 0; i < ratio.length; i++) {
            Point at = RASTER.pointAt(i / 3 % RASTER.columns(), i / 3 / RASTER.columns());
            double share = withKnife ? share(at)[i % 3] : 1;
            ratio[i] = (float) (RelativeReflectance.LIT * share + random.nextGaussian());
        }
        Mat mat = new Mat(RASTER.rows(), RASTER.columns(), CvType.CV_32FC3);
        mat.put(0, 0, ratio);
        return mat;
    }

    /** Each 0.8 mm along the lines, but for what is near an edge. */
    private static List<Observation> observations() {
        List<Observation> observations = new ArrayList<>();
        for (double line = -90; line <= 90; line += PITCH_MM) {
            for (double along = -95; along <= 95; along += 0.8) {
                for (Point at : List.of(new Point(line, along), new Point(along, line))) {
                    boolean isNearEdge =
                            isKnife(at) != isKnife(at.times(1.05)) || isKnife(at) != isKnife(at.times(0.95));
                    if (Math.abs(at.y()) < 39 && !isNearEdge) {
                        observations.add(new Observation(at, !isKnife(at)));
                    }
                }
            }
        }
        return observations;
    }

    @Test
    void findsTheKnifeAndNotItsShadow() {
        try (PrintPattern pattern = RULING.on(RASTER)) {
            Polyline contour = new KnifeMask(ratio(true), pattern, RULING.zoneMm())
                    .find(new PrintVisibility(observations(), List.of(), new double[3]))
                    .contour();
            assertThat(contour.signedAreaMm2()).isCloseTo(140 * 20, withinPercentage(6));
            for (Point at : contour.resampled(2).points()) {
                assertThat(Math.max(Math.abs(at.x()) - 70, Math.abs(at.y()) - 10))
                        .as("beyond the knife at %s", at)
                        .isLessThan(1.5);
            }
        }
    }

    @Test
    void saysThatThereIsNone() {
        try (PrintPattern pattern = RULING.on(RASTER)) {
            KnifeMask mask = new KnifeMask(ratio(false), pattern, RULING.zoneMm());
            List<Observation> bare = observations().stream()
                    .map(o -> new Observation(o.at(), true))
                    .toList();
            assertThatThrownBy(() -> mask.find(new PrintVisibility(bare, List.of(), new double[3])))
                    .isInstanceOf(UserFacingException.class)
                    .hasMessageStartingWith("No knife is to be seen");
            assertThatThrownBy(() -> KnifeMask.around(bare, new Point(-100, -40), new Point(100, 40), PITCH_MM))
                    .isInstanceOf(UserFacingException.class);
        }
    }

    @Test
    void looksAroundWhatIsHiddenAndNotBeyondTheGround() {
        PlaneRaster around = KnifeMask.around(observations(), new Point(-75, -40), new Point(100, 40), PITCH_MM);
        assertThat(around.covers(around.pixel(new Point(-72, 0)))).isTrue();
        assertThat(around.covers(around.pixel(new Point(-80, 0))))
                .as("beyond the ground")
                .isFalse();
        assertThat(around.covers(around.pixel(new Point(79, 12)))).isTrue();
        assertThat(around.covers(around.pixel(new Point(97, 0))))
                .as("far from the knife")
                .isFalse();
    }
}
