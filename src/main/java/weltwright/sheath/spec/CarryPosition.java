package weltwright.sheath.spec;

/**
 * How a sheath is worn.
 *
 * @param hand the hand that draws, and so the hip that the sheath hangs on
 * @param edge where the knife's edge looks
 * @param tiltRad how far the handle leans forward; negative where it leans back
 */
public record CarryPosition(DrawHand hand, Edge edge, double tiltRad) {
    /** Upright on the right hip, the edge forward. */
    public static final CarryPosition USUAL = new CarryPosition(DrawHand.RIGHT, Edge.FORWARD, 0);

    /** Where the knife's edge looks. */
    public enum Edge {
        FORWARD,
        BACK
    }

    /**
     * Whether the edge is on the left of the face, tip down. On the right hip forward is to the right of one who looks
     * at the face; on the left hip, or with the edge back, it is the other way round.
     */
    public boolean edgeOnLeft() {
        return (hand == DrawHand.LEFT) != (edge == Edge.BACK);
    }

    /** How far the handle leans towards the edge's side. */
    public double towardsEdgeRad() {
        return edge == Edge.FORWARD ? tiltRad : -tiltRad;
    }
}
