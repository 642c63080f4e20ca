package weltwright.knife;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

/**
 * Handles of straight sides on a flat ground, a blade of 100 mm before a handle of 110. Source of the figures: similar
 * triangles.
 */
class LyingPoseTest {

    @Test
    void anEvenHandleLiesLevelAtHalfItsThickness() {
        LyingPose pose = LyingPose.of(100, 210, fromTip -> 18);

        assertThat(pose.heelHeightMm()).isCloseTo(9, within(1e-9));
        assertThat(pose.tipDropMm()).isCloseTo(0, within(1e-9));
    }

    /**
     * From 14 mm at the front to 20 mm at the butt: half of that over 110 mm is the slope, wherever the knife balances.
     */
    @Test
    void aHandleThatThickensToItsButtLetsTheTipDown() {
        LyingPose pose = LyingPose.of(100, 210, fromTip -> 14 + 6 * (fromTip - 100) / 110);

        assertThat(pose.heelHeightMm()).isCloseTo(7, within(1e-6));
        assertThat(pose.tipDropMm()).isCloseTo(100 * 3.0 / 110, within(1e-6));
    }

    @Test
    void aHandleThatThickensToItsFrontLiftsTheTip() {
        LyingPose pose = LyingPose.of(100, 210, fromTip -> 20 - 6 * (fromTip - 100) / 110);

        assertThat(pose.tipDropMm()).isCloseTo(-100 * 3.0 / 110, within(1e-6));
    }

    /** A front that thins over its last 15 mm leaves open whether the knife tips: the level pose is taken. */
    @Test
    void aHandleThinnedOnlyAtItsFrontIsTakenToLieLevel() {
        LyingPose pose = LyingPose.of(100, 210, fromTip -> Math.min(20, 16 + 4 * (fromTip - 100) / 15));

        assertThat(pose.heelHeightMm()).isCloseTo(10, within(1e-9));
        assertThat(pose.tipDropMm()).isCloseTo(0, within(1e-9));
    }
}
