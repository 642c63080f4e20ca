package weltwright.layout.search;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

class AllowedTurnsTest {
    @Test
    void theNearestTurnIsTakenAcrossWholeTurns() {
        assertThat(AllowedTurns.HALF_TURNS.nearest(Math.toRadians(100))).isEqualTo(Math.PI);
        assertThat(AllowedTurns.HALF_TURNS.nearest(Math.toRadians(350))).isEqualTo(0);
        assertThat(AllowedTurns.ANY.nearest(1.25)).isEqualTo(1.25);
    }

    @Test
    void aRangeReachesToBothSidesOfEachDirection() {
        AllowedTurns turns = AllowedTurns.halfTurnsWithin(Math.toRadians(15));

        assertThat(Math.toDegrees(turns.nearest(Math.toRadians(40)))).isEqualTo(15, within(1e-9));
        assertThat(Math.toDegrees(turns.nearest(Math.toRadians(-10)))).isEqualTo(-10, within(1e-9));
        assertThat(Math.toDegrees(turns.nearest(Math.toRadians(200)))).isEqualTo(195, within(1e-9));
    }

    @Test
    void drawnTurnsAreAllowedAndOfEveryDirection() {
        AllowedTurns turns = AllowedTurns.halfTurnsWithin(0.2);
        SplittableRandom random = new SplittableRandom(1);
        int turned = 0;
        for (int i = 0; i < 1000; i++) {
            double turn = turns.random(random);
            assertThat(Math.abs(Math.IEEEremainder(turn, Math.PI))).isLessThanOrEqualTo(0.2);
            turned += turn > 1 ? 1 : 0;
        }
        assertThat(turned).isBetween(400, 600);
    }
}
