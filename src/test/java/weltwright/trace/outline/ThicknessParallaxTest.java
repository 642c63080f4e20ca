package weltwright.trace.outline;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import weltwright.geometry.Point;
import weltwright.knife.HandleSection;
import weltwright.knife.ThicknessProfile;

/**
 * What thickness adds to a silhouette, against points of solid shapes that are laid on the plane along the line of
 * sight.
 */
class ThicknessParallaxTest {
    /** Handles thin towards their front: common practice. */
    private static final double FRONT_PART = 0.8;

    /** Source: geometry. Each point (0, y, z) of the front's elliptic rim is seen at (0, y) less z times the lean. */
    @ParameterizedTest
    @CsvSource({"0.1, 0", "-0.2, 0", "0.15, 0.12", "-0.15, 0.12", "0.05, -0.3"})
    void seesTheRimOfAFrontWhereItsPointsAreSeen(double leanX, double leanY) {
        double halfWidth = 11;
        double thickness = 20;
        ThicknessParallax knife =
                new ThicknessParallax(4, 0.4, thickness, ThicknessProfile.NONE, HandleSection.ROUND, false);
        double seenHalf = Math.hypot(halfWidth, FRONT_PART * thickness / 2 * leanY);
        for (double beside = -9; beside <= 9; beside += 3) {
            double farthest = Double.NEGATIVE_INFINITY;
            for (int i = 0; i < 100_000; i++) {
                double angle = 2 * Math.PI * i / 100_000;
                double z = FRONT_PART * thickness / 2 * Math.sin(angle);
                double seenY = halfWidth * Math.cos(angle) - z * leanY;
                if (Math.abs(seenY - beside) < 0.002) {
                    farthest = Math.max(farthest, -z * leanX);
                }
            }
            assertThat(knife.frontMm(beside, seenHalf, new Point(leanX, leanY)))
                    .as("%.0f mm beside the middle", beside)
                    .isCloseTo(farthest, within(0.01));
        }
    }
}
