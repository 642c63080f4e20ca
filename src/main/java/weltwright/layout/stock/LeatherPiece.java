package weltwright.layout.stock;

import weltwright.geometry.Polyline;
import weltwright.layout.search.AllowedTurns;
import weltwright.sheath.pattern.Piece;

/**
 * One piece of leather to be cut.
 *
 * @param piece of a pattern; its count does not matter
 * @param turns by which it may lie on stock, counter-clockwise from the frame of the piece
 * @param goodLeather whether it keeps clear of the stock's poorer leather
 */
public record LeatherPiece(Piece piece, AllowedTurns turns, boolean goodLeather) {
    /** A piece of good leather. */
    public LeatherPiece(Piece piece, AllowedTurns turns) {
        this(piece, turns, true);
    }

    /** The cut, in the frame of the piece. */
    public Polyline outline() {
        return piece.outline();
    }
}
