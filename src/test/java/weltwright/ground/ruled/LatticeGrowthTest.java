package weltwright.ground.ruled;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.opencv.core.CvType;
import org.opencv.core.Mat;
import org.opencv.core.Rect;
import org.opencv.core.Scalar;
import weltwright.geometry.Point;
import weltwright.image.InterpolatedChannel;
import weltwright.image.opencv.OpenCvLibraries;

/** Seed, autocorrelation and growth on drawn dark lines, slanted and a little skew, whose crossings are known. */
class LatticeGrowthTest {
    private static final DrawnRuling RULING =
            new DrawnRuling(new Point(200.3, 190.7), new Point(24, -3), new Point(2, -23));

    @BeforeAll
    static void load() {
        OpenCvLibraries.load();
    }

    @Test
    void theAutocorrelationPeaksAtTheSteps() {
        Mat patch = new Mat();
        RULING.picture().submat(new Rect(100, 100, 192, 192)).convertTo(patch, CvType.CV_32F);
        PatchAutocorrelation autocorrelation = new PatchAutocorrelation(patch);
        // Only downward displacements are stored.
        Point down = RULING.up().times(-1);
        assertThat(autocorrelation.firstPeak(down.unit()).orElseThrow().distance(down))
                .isLessThan(1);
        Point left = RULING.right().times(-1);
        assertThat(autocorrelation.firstPeak(left.unit()).orElseThrow().distance(left))
                .isLessThan(1);
        assertThat(autocorrelation.meanAlong(down.unit()))
                .as("along lines against aslant")
                .isGreaterThan(
                        2 * autocorrelation.meanAlong(down.plus(left.times(0.4)).unit()));
    }

    @Test
    void aSeedKnowsACrossingItsStepsAndThatLinesAreDark() {
        try (Stream<LatticeSeed> seeds = LatticeSeed.in(RULING.picture())) {
            LatticeSeed seed = seeds.findFirst().orElseThrow();
            assertThat(seed.sign()).isEqualTo(-1);
            assertThat(seed.right().distance(RULING.right())).isLessThan(1.5);
            assertThat(seed.up().distance(RULING.up())).isLessThan(1.5);
            assertThat(offCrossing(seed.crossing())).isLessThan(2.5);
        }
    }

    @Test
    void growsOverAllThatIsSeenAndRoundWhatHidesIt() {
        Mat picture = RULING.picture();
        // As a knife would: across the middle, but not all the way.
        picture.submat(new Rect(0, 240, 330, 40)).setTo(Scalar.all(110));
        LatticeSeed seed = new LatticeSeed(RULING.crossing().plus(new Point(1, 1)), RULING.right(), RULING.up(), -1);
        LatticeGrowth growth = LatticeGrowth.from(seed, new InterpolatedChannel(picture));
        growth.lattice()
                .inOrder()
                .forEach(entry -> assertThat(entry.getValue()
                                .pixel()
                                .distance(RULING.at(
                                        entry.getKey().column(), entry.getKey().row())))
                        .as("%s", entry.getKey())
                        .isLessThan(0.6));
        assertThat(growth.sign()).isEqualTo(-1);
        assertThat(growth.lattice().rows()).as("beyond what hides it, too").isGreaterThanOrEqualTo(14);
        assertThat(growth.lattice().columns()).isGreaterThanOrEqualTo(14);
        assertThat(growth.lineWidthPx()).isCloseTo(2.26, within(0.4));
    }

    private static double offCrossing(Point px) {
        double det = RULING.right().cross(RULING.up());
        Point from = px.minus(RULING.crossing());
        double a = from.cross(RULING.up()) / det;
        double b = RULING.right().cross(from) / det;
        return RULING.at((int) Math.round(a), (int) Math.round(b)).distance(px);
    }
}
