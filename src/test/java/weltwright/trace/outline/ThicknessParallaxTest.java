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
    /** Thickness of the front as a part of the handle's. */
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
        for (double beside : new double[] {-0.999 * seenHalf, -9, -6, -3, 0, 3, 6, 9, 0.999 * seenHalf}) {
            double farthest = Double.NEGATIVE_INFINITY;
            for (int i = 0; i < 100_000; i++) {
                double angle = 2 * Math.PI * i / 100_000;
                double z = FRONT_PART * thickness / 2 * Math.sin(angle);
                double seenY = halfWidth * Math.cos(angle) - z * leanY;
                if (Math.abs(seenY - beside) < 0.002) {
                    farthest = Math.max(farthest, -z * leanX);
                }
            }
            assertThat(knife.frontMm(beside, seenHalf, new Point(leanX, leanY), FRONT_PART))
                    .as("%.0f mm beside the middle", beside)
                    .isCloseTo(farthest, within(0.01));
        }
    }

    /** Source: geometry. The side of a handle ends where the point of the rim is seen that is seen farthest out. */
    @ParameterizedTest
    @CsvSource({"ROUND, 0.2, 0.15", "OVAL, -0.3, 0.1", "SLAB, -0.2, -0.25", "SLAB, 0.2, 0"})
    void seesTheEndOfAHandlesSideAboveOrBelowTheMidPlane(HandleSection section, double leanX, double leanY) {
        double halfWidth = 11;
        double thickness = 20;
        double n = section.exponent();
        ThicknessParallax knife = new ThicknessParallax(4, 0.4, thickness, ThicknessProfile.NONE, section, false);
        for (int side : new int[] {1, -1}) {
            double out = 0;
            double along = 0;
            for (int i = -100_000; i <= 100_000; i++) {
                double z = FRONT_PART * thickness / 2 * i / 100_000;
                double y = halfWidth * Math.pow(1 - Math.pow(Math.abs(i / 100_000.0), n), 1 / n) - side * z * leanY;
                along = y > out ? -z * leanX : along;
                out = Math.max(out, y);
            }
            assertThat(knife.frontCorner(out, new Point(leanX, leanY), FRONT_PART, side)
                            .outMm())
                    .isCloseTo(along, within(0.01));
        }
    }

    /**
     * Source: the definition of a superellipse. The point (y, z) of the section appears at y plus z times the lean; the
     * handle appears as wide as the farthest of them.
     */
    @ParameterizedTest
    @CsvSource({"ROUND, 0.2", "OVAL, 0.1", "OVAL, -0.3", "SLAB, 0.05", "SLAB, 0.25"})
    void takesOffWhatASectionShows(HandleSection section, double lean) {
        double halfWidth = 13;
        double thickness = 20;
        double farthest = 0;
        for (int i = 0; i <= 200_000; i++) {
            double y = halfWidth * i / 200_000;
            double n = section.exponent();
            double z = thickness / 2 * Math.pow(1 - Math.pow(y / halfWidth, n), 1 / n);
            farthest = Math.max(farthest, y + z * Math.abs(lean));
        }
        ThicknessParallax knife = new ThicknessParallax(4, 0.4, thickness, ThicknessProfile.NONE, section, false);
        assertThat(knife.handleSide(thickness, farthest, lean).outMm()).isCloseTo(farthest - halfWidth, within(1e-6));
    }
}
