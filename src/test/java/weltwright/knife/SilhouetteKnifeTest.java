package weltwright.knife;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import weltwright.geometry.Point;
import weltwright.geometry.curve.Outline;

class SilhouetteKnifeTest {

    @Test
    void aKnifeWithItsSpineOnTheLeftStaysAsItLies() {
        Knife drop = TestKnives.dropPoint();
        Silhouette seen = new Silhouette(drop.outline(), drop.landmarks(), true);

        assertThat(seen.knife(3.5, 18, CrossSectionShape.usual(0.4), ThicknessProfile.NONE))
                .isEqualTo(drop);
    }

    @Test
    void aKnifeOnItsOtherFaceIsTurnedOverToHaveItsSpineUp() {
        Knife drop = TestKnives.dropPoint();
        Silhouette right =
                new Silhouette(mirrored(drop.outline()), drop.landmarks().map(SilhouetteKnifeTest::mirror), false);

        Knife knife = right.knife(3.5, 18, CrossSectionShape.usual(0.4), ThicknessProfile.NONE);

        assertThat(knife.landmarks()).isEqualTo(drop.landmarks());
        assertThat(knife.outline().sampled(0.5).signedAreaMm2()).isPositive();
        assertThat(knife.outline().nodes())
                .containsExactlyInAnyOrderElementsOf(drop.outline().nodes());
    }

    /** As a photo gives it: mirrored, and counter-clockwise again. */
    private static Outline mirrored(Outline outline) {
        var nodes = new java.util.ArrayList<>(
                outline.map(SilhouetteKnifeTest::mirror).nodes());
        java.util.Collections.reverse(nodes);
        return new Outline(nodes);
    }

    private static Point mirror(Point p) {
        return new Point(p.x(), -p.y());
    }
}
