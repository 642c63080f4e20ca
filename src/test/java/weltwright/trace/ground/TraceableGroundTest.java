package weltwright.trace.ground;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import weltwright.camera.rectification.PlaneRaster;
import weltwright.error.UserFacingException;
import weltwright.geometry.Point;
import weltwright.geometry.Polyline;

/**
 * A part of a ground of 200 by 100 mm, and things that lie in the part, across its rim, or across that of the ground.
 */
class TraceableGroundTest {
    private static final PlaneRaster WHOLE = PlaneRaster.covering(new Point(-100, -50), new Point(100, 50), 0.5);
    private static final PlaneRaster PART = PlaneRaster.covering(new Point(-40, -30), new Point(40, 30), 0.5);

    private final List<PlaneRaster> searched = new ArrayList<>();

    private TraceableGround.HiddenArea hidden(double toX) {
        Polyline contour = Polyline.closed(
                List.of(new Point(-20, -10), new Point(toX, -10), new Point(toX, 10), new Point(-20, 10)));
        return TraceableGround.hiddenArea(PART, WHOLE, raster -> {
            searched.add(raster);
            return Optional.of(new TraceableGround.HiddenArea(contour, 1, null, null, null, false, 0));
        });
    }

    @Test
    void whatLiesInThePartIsNotLookedForElsewhere() {
        assertThat(hidden(30).contour().points()).contains(new Point(30, 10));
        assertThat(searched).containsExactly(PART);
    }

    @Test
    void whatGoesOnBeyondThePartIsLookedForOnTheWholeGround() {
        assertThat(hidden(60).contour().points()).contains(new Point(60, 10));
        assertThat(searched).containsExactly(PART, WHOLE);
    }

    /** Two pixels from the rim. */
    @Test
    void whatGoesOnBeyondTheGroundIsRefused() {
        assertThatThrownBy(() -> hidden(99))
                .isInstanceOf(UserFacingException.class)
                .hasMessageStartingWith("Something reaches beyond the edge of the ground");
    }

    @Test
    void onBlankGroundAShadowMayPassForTheKnife() {
        TraceableGround.HiddenArea printed = hidden(30);
        assertThat(printed.isBlank()).isFalse();
        assertThat(new TraceableGround.HiddenArea(printed.contour(), 1, null, null, null, false, 2).isBlank())
                .isTrue();
    }
}
