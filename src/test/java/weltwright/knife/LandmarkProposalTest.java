package weltwright.knife;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;
import weltwright.geometry.Point;
import weltwright.geometry.Polyline;

/** Landmarks proposed on the true outlines of the rendered scenes; source: their truth files. */
class LandmarkProposalTest {
    private static final double STEP_MM = 0.16;

    @ParameterizedTest
    @MethodSource("weltwright.knife.SceneOutline#singleEdged")
    void tellsTheEdgeFromTheSpineWhicheverWayTheKnifeLies(String scene) throws IOException {
        assertThat(proposed(scene, 1).spineOnLeft()).isTrue();
        assertThat(proposed(scene, -1).spineOnLeft()).isFalse();
    }

    /** Whoever made a dagger did not tell its sides by their shape; a clip point tells them. */
    @Test
    void saysHowSureItIsOfASide() throws IOException {
        assertThat(proposed("dagger-sheet-a3", 1).edgeSide().probability(0.1)).isLessThan(0.6);
        double clip = proposed("clip-sheet-a4", 1).edgeSide().probability(0.1);
        assertThat(clip).isBetween(0.9, 0.999);
        assertThat(proposed("clip-sheet-a4", -1).edgeSide().probability(0.1)).isCloseTo(clip, within(0.005));
    }

    /** These have a step where the handle ends, at x = 0 or half a millimetre from it. */
    @ParameterizedTest
    @ValueSource(strings = {"clip-sheet-a4", "hunter-sheet-letter", "recurve-sheet-a4", "skinner-sheet-a4"})
    void findsTheHeelAtTheStep(String scene) throws IOException {
        Polyline ring = ring(scene, 1);
        LandmarkProposal proposal =
                LandmarkProposal.of(ring, new HandleEndLine(0.5, 0, 0.1, 0.5, HandleEndLine.Rim.NONE));
        Point heel = ring.points().get(proposal.heel());
        assertThat(heel.x()).isCloseTo(0, within(0.5));
        assertThat(heel.y()).isNegative();
        assertThat(proposal.steps()).isNotEmpty();
        for (HandleFrontStep step : proposal.steps()) {
            int n = ring.points().size();
            assertThat(step.has(step.onBlade(), n)).isTrue();
            assertThat(step.has(step.onHandle(), n)).isTrue();
            assertThat(step.has(proposal.tip(), n)).isFalse();
            assertThat(step.has(proposal.butt(), n)).isFalse();
        }
    }

    private static LandmarkProposal proposed(String scene, double up) throws IOException {
        Polyline ring = ring(scene, up);
        return LandmarkProposal.of(ring, new HandleEndLine(0, 0, 0.1, 0.5, HandleEndLine.Rim.NONE));
    }

    private static Polyline ring(String scene, double up) throws IOException {
        Polyline outline = SceneOutline.of(scene, up);
        return (outline.signedAreaMm2() > 0 ? outline : outline.reversed()).resampled(STEP_MM);
    }
}
