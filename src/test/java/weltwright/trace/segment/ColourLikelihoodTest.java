package weltwright.trace.segment;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.function.Predicate;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.opencv.core.CvType;
import org.opencv.core.Mat;
import org.opencv.core.Scalar;
import weltwright.camera.rectification.PlaneRaster;
import weltwright.geometry.Point;
import weltwright.image.opencv.OpenCvLibraries;
import weltwright.trace.appearance.PrintPattern;
import weltwright.trace.visibility.PrintVisibility;
import weltwright.trace.visibility.PrintVisibility.Observation;

/**
 * Drawn materials whose colours overlap by construction or not at all: where only one of two densities is above zero,
 * Bayes' rule gives it a probability near one.
 */
class ColourLikelihoodTest {
    private static final PlaneRaster RASTER = PlaneRaster.covering(new Point(-60, -40), new Point(60, 40), 0.5);
    private static final double GAP_MM = 0.3;

    @BeforeAll
    static void load() {
        OpenCvLibraries.load();
    }

    private static boolean isKnife(Point at) {
        return Math.abs(at.y()) < 10;
    }

    private static boolean isPencil(Point at) {
        return Math.abs(at.x() - 30) < 5 && Math.abs(at.y()) >= 10;
    }

    private static ColourLikelihood.Estimate estimate(double[] knife, List<Observation> told) {
        Random random = new Random(5);
        float[] bgr = new float[3 * RASTER.columns() * RASTER.rows()];
        for (int i = 0; i < bgr.length; i++) {
            Point at = RASTER.pointAt(i / 3 % RASTER.columns(), i / 3 / RASTER.columns());
            double level = isKnife(at) ? knife[i % 3] : isPencil(at) ? new double[] {20, 70, 90}[i % 3] : 110;
            bgr[i] = (float) (level + 0.5 * random.nextGaussian());
        }
        List<Observation> observations = new ArrayList<>();
        for (double x = -55; x <= 55; x += 1) {
            for (double y = -35; y <= 35; y += 5) {
                Point at = new Point(x, y);
                observations.add(new Observation(at, !isKnife(at) && !isPencil(at)));
            }
        }
        try (PrintPattern plain = new PrintPattern(
                RASTER,
                new Mat(RASTER.rows(), RASTER.columns(), CvType.CV_8U, Scalar.all(255)),
                new Mat(RASTER.rows(), RASTER.columns(), CvType.CV_8U, Scalar.all(0)),
                new byte[RASTER.rows() * RASTER.columns()])) {
            return new ColourLikelihood(plain, bgr, GAP_MM)
                    .estimate(new PrintVisibility(observations, List.of(), new double[3]).withTold(told));
        }
    }

    private static double mean(ColourLikelihood.Estimate estimate, Predicate<Point> where) {
        double sum = 0;
        int count = 0;
        for (int i = 0; i < estimate.probability().length; i++) {
            if (where.test(RASTER.pointAt(i % RASTER.columns(), i / RASTER.columns()))) {
                sum += estimate.probability()[i];
                count++;
            }
        }
        return sum / count;
    }

    @Test
    void tellsColoursThatOnlyOneOfThemHas() {
        ColourLikelihood.Estimate brown = estimate(new double[] {30, 50, 70}, List.of());
        assertThat(mean(brown, ColourLikelihoodTest::isKnife)).isGreaterThan(0.9);
        assertThat(mean(brown, at -> at.y() > 15 && at.x() < 20)).isLessThan(0.05);
    }

    /**
     * A knife of the ground's own colour: both densities are the same but for the ground's shades and chance, so
     * neither is sure.
     */
    @Test
    void doesNotTellTheSameColour() {
        ColourLikelihood.Estimate white = estimate(new double[] {110, 110, 110}, List.of());
        assertThat(mean(white, ColourLikelihoodTest::isKnife)).isBetween(0.25, 0.75);
        assertThat(mean(white, at -> at.y() > 15 && at.x() < 20)).isBetween(0.25, 0.75);
    }

    /** What hides print is taken for the knife until one mark says otherwise. */
    @Test
    void leavesOutWhatAMarkTellsOf() {
        double[] brown = {30, 50, 70};
        assertThat(mean(estimate(brown, List.of()), ColourLikelihoodTest::isPencil))
                .isGreaterThan(0.8);
        ColourLikelihood.Estimate marked = estimate(brown, List.of(new Observation(new Point(30, 20), true)));
        assertThat(mean(marked, ColourLikelihoodTest::isPencil)).isLessThan(0.1);
        assertThat(mean(marked, ColourLikelihoodTest::isKnife)).isGreaterThan(0.9);
        assertThat(marked.observations())
                .as("print hidden by the pencil")
                .noneMatch(o -> !o.visible() && Math.abs(o.at().x() - 30) < 3 && Math.abs(o.at().y()) > 12);
    }
}
