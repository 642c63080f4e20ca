package weltwright.trace.segment;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Optional;
import org.junit.jupiter.api.Test;
import weltwright.geometry.Point;
import weltwright.image.DecodedPhoto;
import weltwright.trace.OverheadScene;

/** A drawn slab on paper that is brighter on one side than on the other: where it lies is known. */
class DarkRegionTest {
    private static final double ROOM_MM = 20;

    /** A pixel of the raster that is looked at, and what its opening takes off a corner. */
    private static final double NEAR_MM = 1.7;

    private static final Point HALF = new Point(85, 85);

    private static final OverheadScene FROM_ABOVE = new OverheadScene(4);

    @Test
    void hasRoomRoundWhatIsDark() {
        Optional<DarkRegion> part = partWith(110);

        assertThat(part).isPresent();
        assertThat(part.get().low().distance(new Point(-30 - ROOM_MM, -10 - ROOM_MM)))
                .isLessThan(NEAR_MM);
        assertThat(part.get().high().distance(new Point(40 + ROOM_MM, 15 + ROOM_MM)))
                .isLessThan(NEAR_MM);
    }

    @Test
    void isNowhereOnABareSheet() {
        assertThat(partWith(200)).isEmpty();
    }

    /** @param level of the slab; the paper's is 200, and a tenth more or less at its sides */
    private static Optional<DarkRegion> partWith(double level) {
        try (DecodedPhoto picture = FROM_ABOVE.picture(at -> {
            boolean onSlab = at.x() > -30 && at.x() < 40 && at.y() > -10 && at.y() < 15;
            return OverheadScene.grey((1 + 0.1 * at.x() / HALF.x()) * (onSlab ? level : 200));
        })) {
            return DarkRegion.of(HALF, picture, FROM_ABOVE.view());
        }
    }
}
