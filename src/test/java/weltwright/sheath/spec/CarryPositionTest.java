package weltwright.sheath.spec;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** A sheath on the hip, seen in the wearer's frame: x forward, y to the wearer's left, z up. */
class CarryPositionTest {

    /**
     * Whoever looks at the face of a sheath on the right hip looks to the wearer's left, along +y; on the left hip
     * along -y. The viewer's right is the direction of view times up, as a vector product: (0, y, 0) × (0, 0, 1) = (y,
     * 0, 0).
     */
    @ParameterizedTest
    @CsvSource({"RIGHT, FORWARD", "RIGHT, BACK", "LEFT, FORWARD", "LEFT, BACK"})
    void theEdgeLooksToTheViewersRightWhereThatIsItsWay(DrawHand hand, CarryPosition.Edge edge) {
        double viewersRightX = hand == DrawHand.RIGHT ? 1 : -1;
        double edgeX = edge == CarryPosition.Edge.FORWARD ? 1 : -1;
        assertThat(new CarryPosition(hand, edge, 0).edgeOnLeft()).isEqualTo(viewersRightX * edgeX < 0);
    }

    /** A handle that leans forward leans to where an edge that looks forward is, on either hip. */
    @ParameterizedTest
    @CsvSource({"RIGHT, FORWARD, 0.2", "RIGHT, BACK, -0.2", "LEFT, FORWARD, 0.2", "LEFT, BACK, -0.2"})
    void aHandleLeansForward(DrawHand hand, CarryPosition.Edge edge, double towardsEdgeRad) {
        assertThat(new CarryPosition(hand, edge, 0.2).towardsEdgeRad()).isEqualTo(towardsEdgeRad);
    }
}
