package weltwright.sheath.spec;

import io.soabase.recordbuilder.core.RecordBuilder;

/**
 * The position in which a sheath is worn.
 *
 * @param hand the hand that draws, and so the hip that the sheath hangs on
 * @param edge the direction of the knife's edge
 * @param tiltRad angle by which the handle leans forward; negative where it leans back
 */
@RecordBuilder
public record CarryPosition(DrawHand hand, Edge edge, double tiltRad) implements CarryPositionBuilder.With {
    /** Upright on the right hip, the edge forward. */
    public static final CarryPosition USUAL = new CarryPosition(DrawHand.RIGHT, Edge.FORWARD, 0);

    /** The direction of the knife's edge. */
    public enum Edge {
        FORWARD,
        BACK
    }

    /**
     * Returns whether the edge is on the left of the face, tip down. On the right hip forward is on the right as one
     * sees the face; on the left hip, or with the edge back, it is the other way round.
     */
    public boolean edgeOnLeft() {
        return (hand == DrawHand.LEFT) != (edge == Edge.BACK);
    }

    /** Returns the angle by which the handle leans towards the edge's side. */
    public double towardsEdgeRad() {
        return edge == Edge.FORWARD ? tiltRad : -tiltRad;
    }
}
