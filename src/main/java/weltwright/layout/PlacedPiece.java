package weltwright.layout;

import weltwright.geometry.Polyline;
import weltwright.geometry.RigidMotion;
import weltwright.layout.stock.LeatherPiece;

/**
 * A piece where it lies on stock.
 *
 * @param sheath the number of the sheath that it belongs to, from 0
 * @param motion from the frame of the piece to that of the stock
 */
public record PlacedPiece(LeatherPiece piece, int sheath, RigidMotion motion) {
    /** The cut, in the frame of the stock. */
    public Polyline outline() {
        return piece.outline().map(motion::apply);
    }
}
