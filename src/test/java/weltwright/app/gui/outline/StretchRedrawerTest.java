package weltwright.app.gui.outline;

import static org.assertj.core.api.Assertions.assertThatCode;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;
import weltwright.app.gui.testing.OutlinedJobs;
import weltwright.error.UserFacingException;
import weltwright.geometry.Point;
import weltwright.geometry.curve.Outline;
import weltwright.knife.Silhouette;

/** Spikes that are refused, and tips that are not. The tip of the knife lies at (118, 6). */
class StretchRedrawerTest {
    private static final Silhouette KNIFE = OutlinedJobs.KNIFE;

    /** The knife with straight sides from (80, 12) over the points to (85, -8). */
    private static Outline withTip(Point... points) {
        List<Point> corners = new ArrayList<>(List.of(new Point(85, -8)));
        corners.addAll(Arrays.asList(points));
        corners.addAll(List.of(
                new Point(80, 12),
                new Point(0, 12),
                new Point(-100, 12),
                new Point(-110, 0),
                new Point(-100, -12),
                new Point(0, -13)));
        return Outline.polygon(corners);
    }

    @Test
    void takesTheTipAsItWasAndAsItWasMoved() {
        assertThatCode(() -> StretchRedrawer.checkNoReversal(KNIFE, withTip(new Point(118, 6))))
                .doesNotThrowAnyException();
        assertThatCode(() -> StretchRedrawer.checkNoReversal(KNIFE, withTip(new Point(120.5, 6.5))))
                .doesNotThrowAnyException();
    }

    @Test
    void takesATipThatIsMadeSharp() {
        Silhouette blunt = KNIFE.withOutline(withTip(new Point(118, 4), new Point(118, 8)));
        assertThatCode(() -> StretchRedrawer.checkNoReversal(blunt, withTip(new Point(119, 6))))
                .doesNotThrowAnyException();
    }

    @Test
    void refusesASpikeBesideTheTip() {
        assertThatThrownBy(() -> StretchRedrawer.checkNoReversal(
                        KNIFE,
                        withTip(
                                new Point(118, 6),
                                new Point(116.4, 6.3),
                                new Point(116.2, 8.6),
                                new Point(115.8, 6.4))))
                .isInstanceOf(UserFacingException.class)
                .hasMessageContaining("turn back on itself");
    }

    @Test
    void refusesASpikeBesideABluntTip() {
        Silhouette blunt = KNIFE.withOutline(withTip(new Point(118, 5.4), new Point(118, 6.6)));
        assertThatThrownBy(() -> StretchRedrawer.checkNoReversal(
                        blunt,
                        withTip(
                                new Point(118, 5.4),
                                new Point(118, 6.6),
                                new Point(117.6, 6.6),
                                new Point(117.4, 8.7),
                                new Point(117.2, 6.6))))
                .isInstanceOf(UserFacingException.class)
                .hasMessageContaining("turn back on itself");
    }
}
