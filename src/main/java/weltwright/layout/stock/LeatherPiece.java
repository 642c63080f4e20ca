package weltwright.layout.stock;

import weltwright.geometry.Polyline;
import weltwright.layout.search.AllowedTurns;

/**
 * One piece of leather to be cut.
 *
 * @param name what the maker calls it
 * @param thicknessMm of its leather
 * @param outline the cut, closed, in a frame of the piece, in mm
 * @param turns by which it may lie on stock, counter-clockwise from that frame
 */
public record LeatherPiece(String name, double thicknessMm, Polyline outline, AllowedTurns turns) {}
