package weltwright.knife;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;
import weltwright.geometry.Point;
import weltwright.geometry.curve.Outline;

/** How knives of straight sides stand. Source of the figures: a right triangle. */
class StandingPoseTest {
    /** A rectangle, 200 mm long and 20 mm high, the heel in its middle. */
    private static final Knife WEDGE = TestKnives.wedge(4, 0.4);

    @Test
    void onItsSpineABladeIsThickestOnTheGroundAndAHandleHalfWayUp() {
        StandingPose pose = new StandingPose(WEDGE, StandingPose.Foot.SPINE);

        StandingPose.Place blade = pose.at(40);
        assertThat(blade.heightMm()).isCloseTo(0, within(1e-9));
        assertThat(blade.fromTipMm()).isCloseTo(60, within(0.5));
        assertThat(blade.part()).isEqualTo(CrossSection.Part.BLADE);
        StandingPose.Place handle = pose.at(-40);
        assertThat(handle.heightMm()).isCloseTo(10, within(1e-9));
        assertThat(handle.halfWidthMm()).isCloseTo(10, within(1e-9));
        assertThat(handle.part()).isEqualTo(CrossSection.Part.HANDLE);
    }

    @Test
    void onItsEdgeABladeIsThickestAtTheTop() {
        StandingPose pose = new StandingPose(WEDGE, StandingPose.Foot.EDGE);

        assertThat(pose.at(40).heightMm()).isCloseTo(20, within(1e-9));
        assertThat(pose.at(-40).heightMm()).isCloseTo(10, within(1e-9));
    }

    /**
     * The handle is 10 mm lower at its butt, so the knife stands on butt and blade, turned by the slope between them.
     */
    @Test
    void aKnifeStandsOnTheHullOfItsSide() {
        Outline outline = Outline.polygon(List.of(
                new Point(-100, -10),
                new Point(100, -10),
                new Point(100, 10),
                new Point(0, 10),
                new Point(0, 0),
                new Point(-100, 0)));
        Knife knife = new Knife(
                outline,
                new Landmarks(new Point(100, 10), new Point(0, -10), new Point(0, 10), new Point(-100, -10)),
                4,
                16,
                CrossSectionShape.usual(0.4));
        StandingPose pose = new StandingPose(knife, StandingPose.Foot.SPINE);

        double turn = Math.atan(10.0 / 100);
        assertThat(pose.tip().heightMm()).isCloseTo(100 * Math.sin(turn), within(0.01));
        // The middle of the butt's end, 5 mm below the corner that touches the ground.
        assertThat(pose.butt().heightMm()).isCloseTo(5 * Math.cos(turn), within(0.1));
        assertThat(pose.tip().alongMm() - pose.at(0).alongMm()).isCloseTo(100 * Math.cos(turn), within(2.5));
    }
}
